import json
import subprocess
import sys
from importlib.util import find_spec

import pytest

from selector.advice.record import AdviceOut
from selector.commands import cli as commands
from tests.dog import TEXT, varied
from tests.once import advise_once, changes_once

# A furnace is sooner worked out than a torch, and so is each change of it.
FURNACE = {"workshop.heat": [{"source": "muffle-furnace"}]}
NO_STEEL_DOES_THIS = {"zone.0.hardness": {"min": "67 HRC", "must": True}, **FURNACE}


@pytest.fixture
def run(cli, tmp_path, monkeypatch):
    monkeypatch.setattr("selector.advice.advise.advise", advise_once)
    monkeypatch.setattr("selector.advice.output.changes", changes_once)

    def advise(*args, changes=None):
        path = tmp_path / "dog.json"
        path.write_text(json.dumps(varied(changes)), encoding="utf-8")
        return cli.invoke(commands, ["advise", str(path), "--steel", "EN19A", *args])

    return advise


def test_the_page_holds_part_headline_and_ids(run):
    done = run()
    assert done.exit_code == 0, done.output
    assert done.stdout.startswith("drive dog\n")
    assert "42crmo4/" in done.stdout
    assert "HRC" in done.stdout
    assert "Cautions" in done.stdout
    assert done.stderr == ""


def test_json_is_the_whole_record(run):
    done = run("--json", "--top", "1")
    answer = AdviceOut.model_validate_json(done.stdout)
    assert len(answer.options) > 1
    assert {option.steel_slug for option in answer.options} == {"42crmo4"}


def test_top_says_how_many_are_shown(run):
    assert run("--top", "2").stdout.count("   id   ") == 2


def test_explain_names_relation_and_source(run):
    said = run("--top", "1", "--explain").stdout
    assert "Where the numbers come from" in said
    assert "options 1.hardness.surface: " in said
    assert "options 2." not in said


def test_toml_is_read_too(cli, tmp_path):
    path = tmp_path / "dog.toml"
    path.write_text(TEXT, encoding="utf-8")
    args = ["advise", str(path), "--steel", "42CrMo4", "--route", "local-torch"]
    assert cli.invoke(commands, args).exit_code == 0


def test_exit_is_one_where_no_option_is_left_and_misses_and_no_helping_change_are_said(run):
    done = run(changes=NO_STEEL_DOES_THIS)
    assert done.exit_code == 1
    assert "What came nearest" in done.stdout
    assert "What binds" in done.stdout
    assert "No single change lets in" in " ".join(done.stdout.split())
    whole = run("--all", changes=NO_STEEL_DOES_THIS).stdout
    assert "Nearest misses" in whole
    assert "Out, and by which gate" in whole


def test_the_page_leaves_the_rest_to_all(run):
    page, whole = run().stdout, run("--all").stdout
    assert page.count("42crmo4/") == 1
    assert whole.count("   id   ") > 1
    assert whole.count("\nHow\n") == whole.count("\nCautions\n") == 1
    assert "--all" not in whole
    assert "[oil-fire]" in whole
    assert "[oil-fire]" not in page


def test_every_caution_is_printed_on_demand(run):
    answer = AdviceOut.model_validate_json(run("--json").stdout)
    said = run("--cautions", "all").stdout
    assert all(f"[{item.id}]" in said for item in answer.cautions)


def test_exit_is_nought_for_a_referral_and_for_a_coupon_plan(run):
    referral = run(changes={"safety_use": "lifting"})
    assert referral.exit_code == 0
    assert "qualified people" in referral.stdout
    rack = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    coupon = run("--steel", "unknown", changes=rack)
    assert coupon.exit_code == 0
    assert "Coupon first" in coupon.stdout


def test_a_folder_of_the_user_counts(run, tmp_path):
    from catalog.load import SHIPPED  # noqa: PLC0415

    prices = (SHIPPED / "prices.toml").read_text(encoding="utf-8")
    mine = tmp_path / "mine"
    mine.mkdir()
    (mine / "prices.toml").write_text(prices.replace('"EUR"', '"SEK"'), encoding="utf-8")
    done = run("--catalog", str(mine), "--top", "1")
    assert done.exit_code == 0, done.output
    assert "SEK" in done.stdout


def test_help_needs_no_heavy_import():
    script = (
        "import sys; from selector.commands import cli; "
        "print(sorted({'numpy', 'scipy', 'pandas', 'skcriteria', 'pint', 'pydantic'}"
        " & set(sys.modules)))"
    )
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stdout == "[]\n"


def test_compare_ranks_by_other_families_and_says_how_firm(run):
    # With a furnace besides the torch there is a third option, which can be made worse.
    fire = {"workshop.heat": [{"source": "oxy-propane"}, {"source": "muffle-furnace"}]}
    page = run("--compare", changes=fire).stdout
    assert "By methods of other families" in page
    assert "outranking (ELECTRE II): " in page
    assert "made worse" in page
    answer = AdviceOut.model_validate_json(run("--compare", "--json", changes=fire).stdout)
    assert answer.comparison is not None
    assert len(answer.comparison.methods) == 4
    for method in answer.comparison.methods:
        assert set(method.order) == {option.id for option in answer.options[:8]}
    plain = run("--json", changes=fire).stdout
    assert AdviceOut.model_validate_json(plain).comparison is None


def test_compare_with_one_option_or_none_is_a_sentence(run):
    done = run("--compare", "--route", "local-torch")
    assert done.stdout.count("   id   ") == 1
    assert "There is only one option: nothing to compare." in done.stdout
    none = run("--compare", "--route", "as-bought", changes=FURNACE)
    assert none.exit_code == 1
    assert "There is no option: nothing to compare." in none.stdout


def test_advice_is_given_without_loading_the_library_of_methods(tmp_path):
    path = tmp_path / "dog.json"
    path.write_text(json.dumps(varied(FURNACE)), encoding="utf-8")
    script = (
        "import sys\nfrom selector.commands import cli\n"
        f"arguments = ['advise', {str(path)!r}, '--steel', '42CrMo4']\n"
        "cli(arguments, standalone_mode=False)\n"
        "print(*sorted({'numpy', 'skcriteria'} & set(sys.modules)), file=sys.stderr)"
    )
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert done.stderr.splitlines()[-1] == "numpy"
    assert find_spec("skcriteria")


def test_why_not_is_answered_in_words_and_as_data(run):
    said = run("--why", "EN19A")
    assert said.exit_code == 0
    assert "number 1" in " ".join(said.stdout.split())
    data = json.loads(run("--why", "EN19A", "--json").stdout)
    assert {"treatment", "place", "gate", "text", "share", "change"} == set(data[0])


def test_the_worth_of_a_piece_goes_beside_the_advice_without_it(run):
    done = run("--without", "file", "--json")
    assert "file makes no difference" in done.stderr
    assert json.loads(done.stdout)["options"]
    wrong = run("--without", "kiln")
    assert wrong.exit_code == 2
    assert "It has" in wrong.stderr


def test_how_firm_is_a_page_of_its_own_and_a_line_of_the_advice(run):
    firm, page = run("--firm").stdout, run().stdout
    assert "over outcomes and weights" in firm
    assert "in three" in firm
    assert "over outcomes and weights" in page
    assert "in three" not in page


def test_weights_of_the_command_line_take_the_place_of_those_of_the_file(run):
    plain = AdviceOut.model_validate_json(run("--json").stdout)
    other = AdviceOut.model_validate_json(run("--json", "--weights", "cost=1").stdout)
    weighs = [{row.criterion: row.weight for row in answer.ranges} for answer in (plain, other)]
    assert weighs[0]["hardness"] > 0.0
    assert weighs[1] == {name: float(name == "cost") for name in weighs[0]}


def test_weights_that_cannot_be_read_are_refused(run):
    done = run("--weights", "beauty")
    assert done.exit_code == 2
    assert "--weights must be a preset" in " ".join(done.output.split())


def test_comparisons_that_contradict_each_other_are_warned_of(run):
    circle = "hardness/cost=3, cost/days=3, days/hardness=3"
    done = run("--weights", circle)
    assert done.exit_code == 0
    assert "contradict each other" in done.stderr
    assert "contradict each other" not in done.stdout


def test_csv_holds_shares_and_regret(run):
    head = run("--csv").stdout.splitlines()[0].split(",")
    assert {"first_fraction", "top_three_fraction", "regret_eur"} <= set(head)


def test_one_piece_more_is_worth_a_sentence_and_its_advice(run):
    done = run("--with", "kiln")
    assert done.exit_code == 0, done.output
    assert "kiln" in done.stderr
    assert done.stdout.startswith("drive dog\n")


def test_a_piece_that_nobody_knows_is_refused(run):
    done = run("--with", "magic")
    assert done.exit_code == 2
    assert "--with must be a piece" in " ".join(done.output.split())


def test_all_missing_pieces_make_a_table(run, monkeypatch):
    # Water cracks it, so that oil is worth something.
    short = {"workshop.bath": [{"medium": "water"}], **FURNACE}
    # Which pieces are tried is no matter of the table.
    tried = ("kiln", "oil", "subcontract")
    monkeypatch.setattr("selector.advice.missing.missing", lambda *_: tried)
    answer = AdviceOut.model_validate_json(run("--with", "any", "--json", changes=short).stdout)
    assert answer.pieces
    # A table of the same pieces, which are not weighed again.
    monkeypatch.setattr("selector.advice.missing.worths", lambda _: answer.pieces)
    table = run("--with", "any", "--csv", changes=short).stdout.splitlines()
    assert table[0].startswith("piece,id,")
    assert len(table) == 1 + len(answer.pieces)


def test_what_is_out_is_let_in_by_the_least_change(run):
    said = " ".join(run("--why", "through-furnace").stdout.split())
    assert "What lets it in: With a small electric muffle furnace" in said
