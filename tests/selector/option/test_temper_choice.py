import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER
from selector.option.prediction import embrittled
from selector.option.preparation import cooled_points, prepare
from selector.option.temper_choice import (
    SERVICE_MARGIN_C,
    STRUCK_AIM,
    STRUCK_LEAST_TEMPER_C,
    TAPPED_AIM,
    WEARING_AIM,
    aim_of,
    choice_of,
    choices,
)
from tests.dog import asked, work

CATALOG = load_catalog()
SHOP = {"oven": 250.0, "torch": 330.0}


def chosen(treatment, changes=None, ceilings=SHOP):
    """Return the tempers worth choosing, at the middle of all uncertainties."""
    once = resolved(asked(changes), CATALOG, count=1)
    return choices(prepare(treatment, once), ceilings, cooled_points(treatment, once))


def window(low, high):
    return {"zone.0.hardness": {"min": f"{low} HRC", "max": f"{high} HRC"}}


@pytest.mark.parametrize("steel", ["c45", "42crmo4", "115crv3", "100mncrw4", "c75s"])
def test_there_is_always_a_temper_and_no_ceiling_is_passed(steel):
    found = chosen(work(steel))
    assert found
    for choice in found:
        assert choice.temper.temperature_c <= SHOP.get(choice.temper.means, 330.0)


def test_the_middle_lies_in_the_window_where_a_draw_gives_it():
    best = [c for c in chosen(work("42crmo4"), window(53, 57)) if c.temper.means != "none"]
    assert all(53 <= choice.middle_hrc <= 57 for choice in best)
    for choice in best:
        low, high = choice.band_c
        assert low <= choice.temper.temperature_c <= high


def test_a_harder_window_is_drawn_cooler():
    def hottest(low, high):
        found = chosen(work("c60", medium="water"), window(low, high), {"furnace": 700.0})
        return max(choice.temper.temperature_c for choice in found)

    assert hottest(54, 58) < hottest(46, 50) < hottest(36, 40)


def test_a_window_out_of_reach_takes_the_nearest_draw():
    (*_, hottest) = sorted(
        chosen(work("c45"), window(24, 28), {"oven": 250.0}),
        key=lambda choice: choice.temper.temperature_c,
    )
    assert hottest.temper.temperature_c == 250
    assert hottest.band_c is None


def test_a_struck_part_is_drawn_further_where_it_can_be():
    struck = {**window(53, 58), "load.impact": "hammered"}
    drawn = [c for c in chosen(work("c60"), struck) if c.temper.means != "none"]
    assert drawn
    for choice in drawn:
        assert choice.temper.temperature_c >= STRUCK_LEAST_TEMPER_C


def test_a_part_that_gets_hot_in_service_is_tempered_hotter():
    # The window alone would have it cooler, and the heat of the service would go on with it.
    hot = {**window(53, 57), "limit.service_temperature": 350}
    furnace = {"furnace": 700.0}
    (cool,) = {c.temper.temperature_c for c in chosen(work("c60"), window(53, 57), furnace)
               if c.aimed and c.temper.means == "furnace"}  # fmt: skip
    assert cool < 350 + SERVICE_MARGIN_C
    for choice in chosen(work("c60"), hot, furnace):
        if choice.temper.means != "none":
            assert choice.temper.temperature_c >= 350 + SERVICE_MARGIN_C


def test_the_band_that_serves_a_struck_part_starts_where_it_may_be_struck():
    def lowest(changes):
        found = chosen(work("c60", medium="water"), changes, {"furnace": 700.0})
        return min(choice.band_c[0] for choice in found if choice.band_c)

    plain = window(50, 60)
    assert lowest({**plain, "load.impact": "hammered"}) >= STRUCK_LEAST_TEMPER_C > lowest(plain)


def test_the_embrittlement_window_is_kept_out_of_where_another_draw_serves():
    treatment = work("42crmo4")
    found = chosen(treatment, window(52, 57))
    assert not any(embrittled(treatment, choice.temper) for choice in found)


def test_a_draw_by_colour_is_the_more_sensitive():
    shop = {"torch": 600.0, "furnace": 600.0}
    found = {
        c.temper.means: c
        for c in chosen(work("c45", medium="water"), window(40, 44), shop)
        if c.temper.means == "torch" or c.temper.means == "furnace"
    }
    assert found["torch"].sensitivity_hrc > found["furnace"].sensitivity_hrc > 0


def test_a_heat_judged_by_eye_adds_to_the_sensitivity():
    """Silver steel falls off outside its narrow range; a furnace does not miss it by 25 °C."""

    def in_oven(route, source):
        found = chosen(work("115crv3", route, "water", source), window(62, 66))
        (lowest, *_) = (c for c in found if c.temper.means == "oven")
        return lowest.sensitivity_hrc

    by_eye = in_oven("through-torch", "oxy-propane")
    assert by_eye > 2 * in_oven("through-furnace", "muffle-furnace")


@pytest.mark.parametrize("route", ["as-bought", "subcontract-nitride"])
def test_nothing_is_tempered_that_was_not_quenched(route):
    (only,) = chosen(work("42crmo4", route, None, None))
    assert only.temper == NO_TEMPER
    assert only.sensitivity_hrc == 0
    assert only.band_c is None


def test_no_temper_hotter_than_a_published_curve_is_offered():
    found = chosen(work("115crv3"), window(40, 44), {"furnace": 700.0})
    end = CATALOG.steels["115crv3"].tempered.curve_hrc.points[-1][0]
    assert max(choice.temper.temperature_c for choice in found) <= end


def test_a_zone_without_a_window_is_tried_low_springy_and_tough():
    plain = {"zone.0.wear": "none", "zone.0.hardness": None}
    found = chosen(work("c45"), plain, {"furnace": 700.0})
    heats = {choice.temper.temperature_c for choice in found if choice.temper.means != "none"}
    assert heats == {200, 400, 550}
    hrc = [c.middle_hrc for c in sorted(found, key=lambda c: c.temper.temperature_c)]
    assert (np.diff(hrc) <= 0).all()


def test_a_struck_part_without_a_window_is_tried_no_cooler_than_a_blow_allows():
    struck = {"zone.0.wear": "none", "zone.0.hardness": None, "load.impact": "hammered"}
    found = chosen(work("c45"), struck, {"furnace": 700.0})
    heats = {choice.temper.temperature_c for choice in found if choice.temper.means != "none"}
    assert heats == {STRUCK_LEAST_TEMPER_C, 400, 550}


@pytest.mark.parametrize("steel", ["c45", "42crmo4"])
def test_a_temper_looked_up_alone_is_the_one_of_the_grid(steel):
    once = resolved(asked(), CATALOG, count=1)
    treatment = work(steel)
    ready, points = prepare(treatment, once), cooled_points(treatment, once)
    for choice in chosen(treatment):
        alone = choice_of(ready, choice.temper, points)
        assert alone.middle_hrc == pytest.approx(choice.middle_hrc)
        assert alone.sensitivity_hrc == pytest.approx(choice.sensitivity_hrc)


def test_a_case_is_chosen_by_its_own_hardness_not_by_that_of_the_bar():
    case = work("c15", "case-compound", medium="water")
    found = chosen(case, window(56, 60), {"oven": 250.0})
    drawn = [choice for choice in found if choice.temper.means == "oven"]
    assert len(drawn) <= 3
    assert all(56 <= choice.middle_hrc <= 60 for choice in drawn)
    softest = max(drawn, key=lambda choice: choice.temper.temperature_c)
    assert softest.middle_hrc == min(choice.middle_hrc for choice in drawn)
    assert all(choice.sensitivity_hrc > 0 for choice in drawn)


@pytest.mark.parametrize(
    ("changes", "aim"),
    [
        ({"zone.0.wear": "abrasive", "load.impact": "none"}, WEARING_AIM),
        ({"zone.0.wear": "abrasive", "load.impact": "light"}, TAPPED_AIM),
        ({"zone.0.wear": "edge-impact", "load.impact": "hammered"}, STRUCK_AIM),
        (
            {
                "zone.0.wear": "sliding", "zone.0.severity": "light", "zone.0.hardness": None,
                "part.name": "Quoin key", "part.section.0.shape": "square",
                "load.impact": "none", "load.torque": "12 N m",
            },
            0.5,
        ),
    ],
    ids=["wears", "knocked", "struck", "turns"],
)  # fmt: skip
def test_wear_is_tempered_at_the_hard_end_and_blows_at_the_tough_one(changes, aim):
    wanted = asked(changes)
    assert aim_of(wanted, resolved(wanted, CATALOG).leading) == aim


@pytest.mark.parametrize(
    ("steel", "medium"),
    [("115crv3", "water"), ("100mncrw4", "oil"), ("60wcrv8", "oil"), ("c60", "water")],
)
def test_a_struck_edge_is_drawn_to_purple_or_blue_whatever_its_steel(steel, medium):
    """In an hour that is 225 to 300 °C, as the trade draws chisels and punches."""
    struck = {
        "zone.0.hardness": None, "zone.0.wear": "edge-impact", "load.impact": "hammered",
        "part.name": "Chisel", "part.feature": [{"kind": "edge", "at": 0}],
        "part.section.0.size": "8 mm",
    }  # fmt: skip
    found = chosen(work(steel, medium=medium), struck, {"furnace": 700.0})
    aimed = [c.temper.temperature_c for c in found if c.aimed and c.temper.means == "furnace"]
    assert aimed
    assert all(225 <= heat <= 300 for heat in aimed)


def test_a_means_that_ends_far_from_what_the_duty_is_best_at_is_the_way_out_alone():
    rubs = {
        "part.section": [{"shape": "flat", "size": "3 mm", "width": "8 mm", "length": "30 mm"}],
        "part.feature": [], "load": {"impact": "light", "cycles": "fatigue"},
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium"}],
    }  # fmt: skip
    o1 = work("100mncrw4", "through-torch", medium="vegetable-oil")
    found = chosen(o1, rubs, {"oven": 250.0, "blaze": 400.0})
    aimed = {choice.temper.means: choice.aimed for choice in found if choice.middle_hrc > 0}
    assert aimed["oven"]
    # Burning oil is so hot that it leaves the soft end of the window.
    blazed = [choice for choice in found if choice.temper.means == "blaze"]
    assert blazed
    assert not any(choice.aimed for choice in blazed)
    # Alone, it is what there is.
    alone = chosen(o1, rubs, {"blaze": 400.0})
    assert any(choice.aimed for choice in alone if choice.temper.means == "blaze")


def test_the_soft_end_of_a_wide_window_serves_and_is_not_aimed_at():
    rubs = {"zone.0.wear": "sliding", "zone.0.severity": "medium", "load.impact": "light",
            "zone.0.hardness": None}  # fmt: skip
    once = resolved(asked(rubs), CATALOG, count=1).leading
    assert once.high_hrc - once.low_hrc > 7
    found = chosen(work("c105u", "through-furnace", medium="water"), rubs, {"furnace": 700.0})
    (aim,) = [c.middle_hrc for c in found if c.aimed and c.temper.means == "furnace"]
    assert aim == pytest.approx(once.high_hrc - 0.4 * 7, abs=0.8)


def test_a_temper_a_hair_past_the_window_is_not_given_up_for_one_far_inside_it():
    held = {"zone.0.wear": "sliding", "load.impact": "none", "part.feature": []}
    plate = work("42crmo4", medium="oil")
    cool = next(
        c.middle_hrc
        for c in chosen(plate, {**held, **window(44, 66)}, {"furnace": 225.0})
        if c.temper.means == "furnace" and c.temper.temperature_c == 225.0
    )
    tight = {**held, **window(44, round(cool - 0.2, 1))}
    aimed = [c for c in chosen(plate, tight, {"furnace": 700.0}) if c.aimed]
    assert min(abs(c.middle_hrc - cool) for c in aimed) < 1.0
