import re

import pytest

from selector.procedure.quenching import bath_c, quenched
from tests.procedure import KILN, at, doing, steps_of


def test_salt_is_held_minutes_and_a_normalised_part_hangs_in_air():
    salt = {**KILN, "workshop.bath": [{"medium": "hot-salt", "temperature": "220 degC"}]}
    (quench,) = at(steps_of("42crmo4", "marquench", "hot-salt", salt), "quench")
    assert quench.temperature_c == 220
    assert 1 <= quench.minutes <= 10
    assert "still air" in at(steps_of("c45", "normalise", "air", KILN), "quench")[0].action


@pytest.mark.parametrize(("kept", "at_c"), [({"temperature": "150 degC"}, 150), ({}, 160)])
def test_martempering_oil_is_held_minutes_and_the_part_cools_on_in_air(kept, at_c):
    oil = {**KILN, "workshop.bath": [{"medium": "hot-oil", **kept}]}
    steps = steps_of("42crmo4", "marquench-oil", "hot-oil", oil)
    (quench,) = at(steps, "quench")
    assert quench.temperature_c == at_c
    assert 1 <= quench.minutes <= 10
    assert f"hot oil at {at_c} °C, bone dry" in quench.action
    assert "still air to hand-warm" in quench.action
    assert not re.search(r"\bsalt\b", f"{quench.action} {quench.short} {quench.check}")
    assert {"oil-fire", "oil-flash-point", "oil-over-water"} <= set(quench.cautions)
    assert [step.stage for step in steps].index("temper") > steps.index(quench)


def test_a_run_back_is_told_by_dip_and_colour():
    quiet = {"load.impact": "none"}
    steps = steps_of("c45", "residual-heat", "water", quiet)
    (dip,), (temper,) = at(steps, "quench"), at(steps, "temper")
    assert dip.length_mm < 128
    assert "Dip" in dip.action
    assert "quench all of it out" in temper.action
    assert temper.colour in temper.action


def test_the_bath_is_the_workshops_own():
    kept = {"medium": "oil", "volume": "7 l", "temperature": "45 degC"}
    do = doing("42crmo4", "local-torch", "oil", {"workshop.bath": [kept]})
    assert bath_c(do) == 45
    step = quenched(do)
    assert (step.volume_l, step.temperature_c) == (7, 45)
    assert "oil, 7 l at 45 °C" in step.action


def test_foil_is_left_on_only_where_it_was_put_on():
    for protect, on in ((["foil"], True), (["coat"], False)):
        changes = {**KILN, "workshop.protect": protect}
        (out,) = at(steps_of("x100crmov5", "through-furnace", "air", changes), "quench")
        assert ("foil" in out.action) == on
        assert ("foil" in out.means) == on


@pytest.mark.parametrize(
    ("width", "length", "edged", "words"),
    [(50.0, 180.0, True, "on edge"), (25.0, 180.0, True, "point or cutting end first"),
     (20.0, 200.0, False, "end first"), (60.0, 80.0, False, "on edge")],
)  # fmt: skip
def test_a_broad_blade_goes_in_on_edge_and_a_narrow_one_by_its_point(
    width, length, edged, words
):
    flat = {"shape": "flat", "size": 3.0, "width": width, "length": length}
    blade = {
        "part.section": [flat],
        "part.feature": [{"kind": "edge", "at": "0 mm"}] if edged else [],
        "zone": [{"section": [1], "wear": "abrasive", "severity": "medium"}],
        "load": {"impact": "none", "cycles": "static"},
    }
    (quench,) = at(steps_of("100mncrw4", "through-torch", "oil", blade), "quench")
    assert f": {words}, straight down" in quench.action
