import io
import re

import pytest
from rich.console import Console

from selector.advice.advise import advise
from selector.advice.output import advice_out
from selector.commands.full_page import print_whole
from tests.dog import asked, only


def page(answer, width=100):
    written = io.StringIO()
    print_whole(answer, Console(file=written, width=width))
    return written.getvalue()


@pytest.fixture(scope="module")
def record(advice):
    return advice_out(advice, 4)


def test_every_option_shown_has_its_lines_in_order(record):
    text = page(record)
    places = [text.index(f"{option.place}. {option.spoken}") for option in record.options]
    assert places == sorted(places)
    assert text.count("   surface ") == text.count("   cost ") == 4
    for option in record.options:
        assert option.id in text


def with_core(record, **ends):
    """Return the record with one option whose core hardness has these ends."""
    first = record.options[0]
    core = first.hardness.core.model_copy(update=ends)
    hardness = first.hardness.model_copy(update={"core": core})
    option = first.model_copy(update={"hardness": hardness})
    return record.model_copy(update={"options": (option,)})


def test_a_hardness_below_the_c_scale_is_shown_in_brinell(record):
    text = page(with_core(record, p05=8.0, p50=14.0, p95=22.0))
    assert re.search(r"core {7}\d{3} HB \(\d{3} to \d{3} HB\)", text)


def test_unknown_hardness_is_said_not_printed_as_a_number(record):
    assert "core       unknown" in page(with_core(record, p05=None, p50=None, p95=None))


def test_every_caution_and_assumption_is_there(record):
    text = page(record, width=2000)
    for caution in record.cautions:
        assert f"[{caution.id}]" in text
    for assumption in record.assumptions:
        assert assumption in text


@pytest.mark.parametrize("name", ["[/x]", "[bold]", "[/]", "a [red]b", "🔧 日本", "C[45]"])
def test_brackets_in_a_name_are_only_brackets(record, name):
    option = record.options[0].model_copy(update={"steel": name, "chief_risk": name})
    out = record.rejected[0].model_copy(update={"text": name, "steel": name})
    odd = {"part": name, "headline": name, "why_first": name, "rejected": (out,)}
    text = page(record.model_copy(update={**odd, "options": (option,)}))
    assert text.count(name) >= 6


def test_a_coupon_plan_is_numbered_and_says_what_to_find_out():
    rack = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    answer = advice_out(advise(asked(rack), only("c45", "unknown")))
    text = page(answer, width=2000)
    assert "1. " in text
    assert "Apart: cannot be judged yet" in text
    assert "Find out the grade" in text


def test_misses_are_said_where_nothing_is_left():
    hard = {"zone.0.hardness": {"min": "67 HRC", "must": True}}
    text = page(advice_out(advise(asked(hard), only("c45", "42crmo4"))))
    assert "Nearest misses" in text
    assert "Out, and by which gate" in text


def test_what_was_predicted_is_said_before_what_is_not_there():
    """Of 30 silver steel in oil its owner wants to know that it stays soft."""
    rack = {
        "zone.0.hardness": {"min": "60 HRC"},
        "workshop.bath": [{"medium": "oil"}],
        "workshop.only_stock": True,
        "workshop.stock": [{"steel": "115CrV3", "evidence": "receipt"}],
    }
    text = page(advice_out(advise(asked(rack))), width=2000)
    first = text.split("Out, and by which gate\n")[1].splitlines()[:3]
    assert all(line.startswith("   hard_enough: ") for line in first)
    assert all("115CrV3" in line for line in first)
    assert sum("reaches about " in line for line in first) == 2
