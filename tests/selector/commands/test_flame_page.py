import io

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


def page(changes=None, steel=None, catalog=CATALOG, width=110):
    answer = flame_once(asked(changes), catalog, steel)
    return printed(flame_out(answer, catalog), answer, width)


def changed(change, steel="C45"):
    """The page of the dog after a change of what is told of its best steel."""
    answer = flame_once(asked(), CATALOG, steel)
    found = flame_out(answer, CATALOG)
    lead = found["families"][0]
    change(lead, {check["name"]: check for check in lead["figures"]["checks"]})
    return printed(found, answer)


@pytest.fixture(scope="module")
def whole():
    return page(catalog=only(*FEW, "080m40", "c80u"))


def test_what_the_owner_asks_is_there(whole):
    for word in ("hard ", "heat ", "gas ", "soft ring", "corners", "temper", "bow ", "N m"):
        assert f"\n   {word}" in whole or word in whole


def test_other_steels_take_a_line_each(whole):
    lines = whole.split("Other steels")[1].split("Assumed")[0]
    assert "817M40" in lines
    assert "no: " in lines
    assert ".." not in lines


def test_a_condition_follows_its_if_and_its_change_is_told():
    text = page({"workshop.turns_part": False, "workshop.held_by": "tongs"}, "C45")
    assert "Flame hardening: yes, if you hold and turn the part in the flame" in text
    assert "change     hold and turn the part" in text


def test_a_condition_that_many_steels_share_is_told_once():
    catalog = only(*FEW, "080m40", "c80u")
    answer = flame_once(asked(), catalog)
    found = flame_out(answer, catalog)
    for family in found["families"]:
        if family["figures"] is not None:
            family["verdict"] = "yes_if"
            family["why"] = "yes if you hold it in tongs; as it is, nothing holds it"
    others = printed(found, answer).split("Other steels")[1].split("Assumed")[0]
    assert others.count("yes, if you hold it in tongs; as it is, nothing holds it:") == 1
    assert others.count(" in oil: ") > 1


def test_what_the_operator_reads_with_an_eye_is_told_in_colours(whole):
    assert "colour     cherry in shade (printed tables 700 to 902 °C), read by eye" in whole
    assert "; shows " in whole


def test_the_window_is_told_as_it_was_written(whole):
    assert (
        "asked      50 HRC (48 with slack), at most 56 HRC (59 with slack), 0.1 mm deep"
        in whole
    )


def test_cracking_and_what_was_assumed_are_told(whole):
    assert "cracking   " in whole
    assert "hearth of firebricks" in whole.split("Assumed")[1]


def test_a_line_that_is_too_long_for_the_terminal_goes_on_under_its_start():
    lines = page(steel="C45", width=80).split("Cautions")[0].splitlines()
    assert max(map(len, lines)) <= 80
    figures = lines[lines.index(next(x for x in lines if x.startswith("   hard"))) :]
    assert all(line.startswith("   ") for line in figures[: figures.index("")])


def test_a_zone_that_is_too_soft_is_told_where_it_is_hard_enough():
    def soften(lead, checks, hard_mm):
        checks["hard"]["met"] = False
        low, high = hard_mm
        lead["figures"] |= {"surface_hrc": 44.0, "hard_from_mm": low, "hard_to_mm": high,
                            "depth_mm": 0.0, "hard_through": False}  # fmt: skip

    partly = changed(lambda *told: soften(*told, (0.0, 4.0)))
    assert (
        "hard       44 HRC at the softest place; hard enough only from 0 to 4 mm; core"
        in partly
    )
    none = changed(lambda *told: soften(*told, (15.0, 15.0)))
    assert (
        "44 HRC at the softest place, nowhere in the zone 50 HRC (48 with slack); core" in none
    )


def test_places_at_the_far_end_are_said_to_count_from_there():
    def turn(lead, _checks):
        lead["figures"]["from_the_other_end"] = True

    assert "places     are counted from the other end" in changed(turn)


def test_more_depth_than_there_is_steel_is_no_matter_of_another_furnace():
    def deepen(lead, checks):
        lead |= {"verdict": "no", "change": None}
        lead["figures"]["hard_through"] = True
        checks["depth"]["met"] = False

    assert "change     none helps: more depth is asked than there is steel" in changed(deepen)


@pytest.mark.parametrize(("drawn_c", "words"), [(175.0, "short of"), (450.0, "past")])
def test_a_draw_without_a_colour_is_said_to_have_none(drawn_c, words):
    def redraw(lead, _checks):
        lead["figures"]["temper"] |= {"temperature_c": drawn_c, "colour": None}

    assert f"min; {words} the temper colours; as quenched" in changed(redraw)


def test_what_is_ground_off_and_what_goes_soft_are_told():
    def grind(lead, _checks):
        lead["figures"] |= {"ground_off_mm": 0.5, "soft_skin_mm": 0.03}

    text = changed(grind)
    assert "skin       0.03 mm goes soft in the flame" in text
    assert "ground     0.5 mm a side comes off" in text


def test_a_no_without_figures_is_told_among_the_steels():
    text = page({"safety_use": "brake", "zone.0.hardness": {"min": "50 HRC"}}, "C45")
    assert "Flame hardening: no. brake: have it hardened by qualified people" in text
    assert "C45" not in text
    assert "Cautions" not in text


def test_a_ceiling_is_told_where_the_heat_is_never_reached():
    big = {f"part.section.{n}.size": 76 for n in (0, 1)}
    text = page({**big, "workshop.heat": [{"source": "hand-torch"}]}, "C45")
    assert "stops at" in text
    assert "nan" not in text
