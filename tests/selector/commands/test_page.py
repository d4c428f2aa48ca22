import re
from pathlib import Path

import pytest

from catalog.example import example_names, example_text
from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.commands.page import Block, procedure_lines
from selector.requirement import read_requirement
from tests.dog import asked, only
from tests.page_text import assert_one_page, page


@pytest.fixture(scope="module")
def record(advice):
    return advice_out(advice, 8)


def sections(text):
    return re.findall(r"^([A-Z][^.\n]*)$(?=\n {3})", text, re.MULTILINE)


def test_the_parts_of_a_page_stand_in_their_order(record):
    heads = sections(page(record))
    order = ["How", "Instead", "On your rack", "What would change the answer", "Cautions"]
    assert [head for head in order if head in heads] == [h for h in heads if h in order]
    assert {"How", "Instead", "What would change the answer", "Cautions"} <= set(heads)


def test_the_id_of_the_first_alone_is_printed_and_no_id_of_a_caution(record):
    text = page(record)
    assert f"id {record.options[0].id}" in text
    assert not any(option.id in text for option in record.options[1:])
    assert not any(f"[{item.id}]" in text for item in record.cautions)


def test_the_cautions_of_the_first_screen_are_printed_the_worst_first(record):
    text = page(record)
    first = sorted((c for c in record.cautions if c.first_screen), key=lambda c: c.rank)
    places = [text.index(item.brief) for item in first]
    assert places == sorted(places)
    assert f"{len(record.cautions) - len(first)} more, each at its step" in text


def test_what_is_straightened_is_said_to_be(record):
    first = record.options[0]
    allowed = first.permitted_movement_mm
    for bow, words in ((allowed, "straightened to "), (0.5 * allowed, "bows ")):
        moved = first.movement_mm.model_copy(update={"p50": bow})
        bent = first.model_copy(update={"movement_mm": moved})
        said = page(record.model_copy(update={"options": (bent, *record.options[1:])}))
        assert f"; {words}" in said.replace("\n", " ")


def test_every_caution_in_full_is_printed_on_demand(record):
    text = page(record, 2000, every_caution=True)
    assert all(item.text in text for item in record.cautions)


@pytest.mark.parametrize("name", example_names())
def test_the_examples_fit_one_page(name, tmp_path):
    path = tmp_path / f"{name}.toml"
    path.write_text(example_text(name), encoding="utf-8")
    few = only("42crmo4", "c45", "115crv3", "100mncrw4", "c75s", "linear-shaft", "s235")
    assert_one_page(advice_out(advise(read_requirement(Path(path)), few), 8))


def test_a_referral_has_no_steps_to_point_to():
    found = advise(asked({"safety_use": "lifting"}), only("42crmo4"))
    assert "each at its step" not in page(advice_out(found, 8))


def test_a_referral_ranks_nothing_and_says_whom_to_ask():
    found = advise(asked({"safety_use": "lifting"}), only("42crmo4", "817m40", "c45"))
    text = page(advice_out(found))
    heads = sections(text)
    assert "Whom to ask" in heads
    assert not {"How", "Instead", "On your rack"} & set(heads)
    assert "inspection certificate" in text


def test_an_unknown_bar_gets_its_coupon_plan_and_no_procedure():
    rack = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    text = page(advice_out(advise(asked(rack), only("unknown"))))
    assert "Coupon first" in sections(text)
    assert "How" not in sections(text)


def test_a_bar_outdone_by_a_near_equal_is_not_said_to_be_out():
    rack = {"workshop.stock": [{"steel": name, "size": "30 mm"} for name in ("C45", "EN8")]}
    text = " ".join(page(advice_out(advise(asked(rack), only("c45", "080m40")))).split())
    assert "a near-equal, does the same better: number 1" in text
    assert "out: " not in text.partition("On your rack")[2].partition("does the same")[0]


def test_misses_and_gates_are_said_where_nothing_is_left():
    hard = {"zone.0.hardness": {"min": "67 HRC", "must": True}}
    text = page(advice_out(advise(asked(hard), only("c45", "42crmo4"))))
    assert {"What came nearest", "What binds"} <= set(sections(text))


def test_a_long_paragraph_is_cut_inside_the_width():
    block = Block("", ("word " * 60,), 2, 2)
    for width in range(20, 60):
        lines = block.lines(width)
        assert len(lines) == 2
        assert lines[-1].endswith(" …")
        assert max(map(len, lines)) <= width


def test_a_long_paragraph_loses_whole_clauses_before_its_reason():
    said = "heat the end, 57 HRC. Not first: 10 fewer in 100 come out right; seldom used; but "
    block = Block("", (said + "softer " * 30,), 8, 2)
    text = " ".join(block.lines(60))
    assert text.endswith("seldom used.")
    assert "…" not in text


def test_a_narrow_terminal_is_kept_to(record):
    assert max(map(len, page(record, 80).split("\n"))) <= 80


@pytest.mark.parametrize("name", ["[/x]", "[bold]", "[/]", "a [red]b", "🔧 日本", "C[45]"])
def test_brackets_in_a_name_are_only_brackets(record, name):
    text = page(record.model_copy(update={"part": name, "headline": name}))
    assert text.count(name) >= 2


def test_a_bar_as_bought_is_only_machined(record):
    as_bought = record.options[0].model_copy(
        update={"route_kind": "as-bought", "procedure": (), "layer": None}
    )
    (line,) = procedure_lines(as_bought)
    assert "nothing to heat" in line
