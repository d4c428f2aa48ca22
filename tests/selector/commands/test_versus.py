import json

import pytest

from selector.commands import cli as commands
from selector.versus.record import VersusOut
from tests.dog import varied

FIRST = "c45/cold-drawn/through-torch.oil/oven-200c-60min"
SECOND = "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min"


pytestmark = pytest.mark.usefixtures("few_steels")


@pytest.fixture
def run(cli, tmp_path):
    def versus(first, second, *args):
        path = tmp_path / "dog.json"
        changes = {"workshop.subcontract": True, "load.failure_cost": 200}
        path.write_text(json.dumps(varied(changes)), encoding="utf-8")
        return cli.invoke(commands, ["versus", str(path), first, second, *args])

    return versus


def test_both_sides_stand_beside_each_other_and_every_axis_below(run):
    done = run(FIRST, SECOND)
    assert done.exit_code == 0, done.output
    assert done.stdout.startswith("drive dog\n")
    for word in (
        "C45, cold-drawn",
        "4140 (42CrMo4), annealed",
        "failures",
        "Prices are invented",
    ):
        assert word in done.stdout
    for axis in ("quantity", "hourly rate", "bar price", "crack rate", "failure cost"):
        assert f"   {axis}: " in done.stdout


def test_json_is_the_whole_record_and_the_plot_a_file(run, tmp_path):
    path = tmp_path / "cost.svg"
    answer = VersusOut.model_validate_json(
        run(FIRST, SECOND, "--json", "--plot", str(path)).stdout
    )
    assert answer.first.id == FIRST
    assert "swap at" in path.read_text(encoding="utf-8")


def test_explain_names_relation_and_source(run):
    said = " ".join(run(FIRST, SECOND, "--explain").stdout.split())
    assert "first.cost: " in said
    assert "by sum over good, reworked, scrapped; from bar " in said
    assert "source: price list" in said


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("c46/x/y/z", SECOND), "option must be the id of a known option; got 'c46/x/y/z'"),
        (
            (FIRST, SECOND, "--plot", "a.gif"),
            "--plot must be a .png, .svg or .pdf file; got 'a.gif'",
        ),
    ],
)
def test_bad_input_ends_with_exit_two(run, args, said):
    done = run(*args)
    assert done.exit_code == 2
    assert said in done.stderr
