import io
import re

import pytest
from rich.console import Console

from catalog import load_catalog
from selector.commands.flame_page import print_flame
from selector.flame.output import flame_out
from tests.dog import FEW, asked, only
from tests.once import flame_once

CATALOG = load_catalog()


def printed(found, answer, width=110):
    text = io.StringIO()
    print_flame(found, answer, Console(file=text, width=width))
    return text.getvalue()


def page(changes=None, steel=None, *, catalog=CATALOG, width=110, changed=False):
    answer = flame_once(asked(changes), catalog, steel, changed=changed)
    return printed(flame_out(answer), answer, width)


def changed(steel="C45", *, figures=None, option=None, **family):
    """The page of the dog after a change of what is said of its best steel."""
    answer = flame_once(asked(), CATALOG, steel, changed=False)
    found = flame_out(answer)
    lead = found.families[0]
    figures = lead.figures.model_copy(update=figures or {})
    option = lead.option.model_copy(update=option or {})
    lead = lead.model_copy(update={**family, "figures": figures, "option": option})
    return printed(found.model_copy(update={"families": (lead,)}), answer)


@pytest.fixture(scope="module")
def whole():
    return page(catalog=only(*FEW, "080m40", "c80u"))


def test_what_the_owner_asks_is_there(whole):
    for word in ("hard ", "heat ", "gas ", "soft ring", "edges", "temper", "bow ", "N m"):
        assert f"\n   {word}" in whole or word in whole


def test_other_steels_take_a_line_each(whole):
    lines = whole.split("Other steels")[1].split("Assumed")[0]
    assert re.search(r"42CrMo4, (annealed|prehard) in oil: ", lines)
    assert "no: " in lines
    assert ".." not in lines


def test_a_condition_follows_its_if_and_its_change_is_said():
    still = {"workshop.turns_part": False, "workshop.held_by": "tongs"}
    text = page(still, "42CrMo4", changed=True)
    assert "Flame hardening: yes, if it is turned in the flame" in text
    assert "if         it is turned in the flame" in text
    assert "change     hold and turn the part" in text


def test_a_condition_that_many_steels_share_is_said_once():
    answer = flame_once(asked(), only(*FEW, "080m40", "c80u"), changed=False)
    found = flame_out(answer)
    condition = "it is held in tongs (nothing holds it)"
    update = {"verdict": "yes_if", "why": condition, "conditions": (condition,)}
    held = [f.model_copy(update=update) if f.option else f for f in found.families]
    found = found.model_copy(update={"families": tuple(held)})
    others = printed(found, answer).split("Other steels")[1].split("Assumed")[0]
    assert others.count("yes, if it is held in tongs:") == 1
    assert others.count(" in oil: ") > 1


def test_what_the_operator_reads_with_an_eye_is_said_in_colours(whole):
    assert "colour     cherry in shade (printed tables 700 to 902 °C), read by eye" in whole
    assert "; shows " in whole


def test_the_window_is_said_as_it_was_written(whole):
    assert (
        "asked      50 HRC (48 with slack), at most 56 HRC (59 with slack), 0.1 mm deep"
        in whole
    )


def test_cracking_and_what_was_assumed_are_said(whole):
    assert "cracking   " in whole
    assert "hearth of firebricks" in whole.split("Assumed")[1]


def test_a_line_that_is_too_long_for_the_terminal_goes_on_under_its_start():
    lines = page(steel="C45", width=80).split("Cautions")[0].splitlines()
    assert max(map(len, lines)) <= 80
    figures = lines[lines.index(next(x for x in lines if x.startswith("   hard"))) :]
    assert all(line.startswith("   ") for line in figures[: figures.index("")])


def test_a_zone_that_is_too_soft_is_said_where_it_is_hard_enough():
    partly = changed(figures={"hard_from_mm": 0.0, "hard_to_mm": 4.0})
    assert "from 0 to 4 mm" in partly
    none = changed(figures={"hard_from_mm": 15.0, "hard_to_mm": 15.0})
    assert "nowhere hard enough" in none


def test_places_at_the_far_end_are_said_to_count_from_there():
    text = changed(figures={"from_the_other_end": True})
    assert "places     are counted from the other end" in text


def test_where_no_change_serves_that_is_said():
    text = changed(verdict="no", change=None, conditions=())
    assert "change     no single one serves: a furnace, another steel" in text


@pytest.mark.parametrize("drawn_c", [175.0, 450.0])
def test_a_temper_without_a_colour_shows_none(drawn_c):
    lead = flame_out(flame_once(asked(), CATALOG, "C45", changed=False)).families[0]
    temper = lead.option.temper.model_copy(update={"temperature_c": drawn_c, "colour": None})
    text = changed(option={"temper": temper})
    (line,) = [row for row in text.splitlines() if row.startswith("   temper ")]
    assert f"{drawn_c:.0f} °C" in line
    assert "shows" not in line


def test_a_no_without_figures_is_said_among_the_steels():
    text = page({"safety_use": "brake", "zone.0.hardness": {"min": "50 HRC"}}, "C45")
    assert "Flame hardening: no. brake: have it hardened by qualified people" in text
    assert "C45" not in text
    assert "Cautions" not in text


def test_what_heat_a_torch_gives_is_said_where_it_is_never_enough():
    big = {f"part.section.{n}.size": 76 for n in (0, 1)}
    text = page({**big, "workshop.heat": [{"source": "hand-torch"}]}, "C45")
    assert "brings the zone to about" in text
    assert "too little to harden" in text
    assert "nan" not in text


def test_what_is_sold_hard_is_named_beside_the_verdict():
    answer = flame_once(asked(), CATALOG, "42CrMo4", changed=False)
    found = flame_out(answer).model_copy(update={"bought_hard": "C75S: prehard bar is 48 HRC"})
    assert "Sold hard, to use without any heat: C75S" in printed(found, answer)
