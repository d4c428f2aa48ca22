import itertools
from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from catalog import load_catalog
from catalog.medium import Agitation
from selector import sampling
from selector.heat.boiling import DELAY_S, Bath, bath_temperature_c
from selector.heat.operator import LIGHT, READING_C
from selector.job.process import (
    TEMPER_ERROR,
    hardening_heat,
    quench,
    reading_error,
    temper_peak_c,
)
from selector.job.treatment import NO_TEMPER, Temper
from tests.dog import asked, work

NORMALS = {**sampling.shared(), **sampling.of_steel("c45")}
OIL = load_catalog().media["oil"]
TORCH, FURNACE = work(), work(route="through-furnace", source="muffle-furnace")


def shop(**changes):
    return asked({f"workshop.{key}": value for key, value in changes.items()}).workshop


def spread(workshop, treatment=TORCH):
    error = reading_error(treatment, workshop)
    return np.hypot(error.bias_c, error.scatter_c)


@pytest.mark.parametrize("instrument", [name for name in READING_C if name != "eye"])
def test_any_instrument_reads_better_than_the_eye(instrument):
    assert spread(shop(measure=["eye", instrument])) < spread(shop(measure=["eye"]))


def test_the_best_instrument_counts_in_any_order():
    first = shop(measure=["eye", "thermocouple"])
    second = shop(measure=["thermocouple", "eye"])
    assert reading_error(TORCH, first) == reading_error(TORCH, second)


def test_brighter_light_reads_worse_and_never_colder():
    found = [reading_error(TORCH, shop(light=light)) for light in LIGHT]
    for darker, brighter in itertools.pairwise(found):
        assert darker.bias_c < brighter.bias_c
        assert darker.shift_c <= brighter.shift_c


def test_light_does_not_touch_a_thermocouple_or_a_furnace():
    sun, dim = shop(light="sun", measure=["thermocouple"]), shop(measure=["thermocouple"])
    assert reading_error(TORCH, sun) == reading_error(TORCH, dim)
    assert reading_error(FURNACE, shop(light="sun")) == reading_error(FURNACE, shop())


@given(st.floats(0.2, 5))
def test_skill_scales_the_eye(factor):
    usual, other = shop(), shop(skill={"bias": factor, "scatter": factor})
    assert spread(other) == pytest.approx(factor * spread(usual))


def test_hardening_heat_is_centred_on_the_steel_and_wider_by_eye():
    torch, furnace = (hardening_heat(w, shop(), NORMALS) for w in (TORCH, FURNACE))
    target = TORCH.steel.hardened.temperature_c.middle
    assert torch.target_c == furnace.target_c == target
    assert np.median(torch.peak_c) == pytest.approx(target, abs=3)
    assert torch.peak_c.std() > 2 * furnace.peak_c.std()
    assert torch.peak_c.shape == (sampling.COUNT, 1)
    assert torch.hold_s < furnace.hold_s
    assert torch.rate_c_per_s > furnace.rate_c_per_s


def test_steel_rich_in_carbon_is_held_as_long_as_the_flame_allows():
    held = {
        source: hardening_heat(work("115crv3", source=source), shop(), NORMALS).hold_s
        for source in ("oxy-acetylene", "oxy-propane", "forge")
    }
    assert held == {"oxy-acetylene": 120.0, "oxy-propane": 180.0, "forge": 600.0}
    assert hardening_heat(TORCH, shop(), NORMALS).hold_s == 90.0


def test_sun_overheats():
    sun, shade = (hardening_heat(TORCH, shop(light=at), NORMALS) for at in ("sun", "shade"))
    assert np.median(sun.peak_c) > np.median(shade.peak_c)


@pytest.mark.parametrize("route", ["as-bought", "subcontract-nitride", "case-compound"])
def test_no_hardening_heat_where_the_steel_itself_is_not_quenched(route):
    assert hardening_heat(work(route=route), shop(), NORMALS) is None


def test_annealed_tool_steel_is_spheroidised_and_prehard_bar_is_not():
    heat = hardening_heat(work("115crv3"), shop(), NORMALS)
    assert heat.structure == "spheroidised"
    heat = hardening_heat(work("42crmo4", "local-torch", condition="prehard"), shop(), NORMALS)
    assert heat.structure == "quenched and tempered"


@pytest.mark.parametrize(
    ("route", "above_c"),
    [
        ("through-furnace", 0),
        ("subcontract-flame", 50),
        ("subcontract-induction", 75),
        ("subcontract-laser", 200),
    ],
)
def test_what_is_hot_for_seconds_is_taken_hotter_than_in_a_furnace(route, above_c):
    steel = work("42crmo4", route, "polymer", None)
    heat = hardening_heat(steel, shop(), NORMALS)
    assert heat.target_c == steel.steel.hardened.temperature_c.middle + above_c


@pytest.mark.parametrize("slug", sorted(load_catalog().media))
def test_more_motion_never_quenches_less(slug):
    medium = load_catalog().media[slug]
    found = [
        quench(medium, shop(bath=[{"medium": slug, "agitation": motion}]), 0.5).severity
        for motion in get_args(Agitation)
        if motion in medium.severity_per_in
    ]
    assert found == sorted(found)


def moved(slug):
    """Yield each motion with the quench in a medium so moved."""
    for motion in get_args(Agitation):
        bath = [{"medium": slug, "agitation": motion}]
        yield motion, quench(load_catalog().media[slug], shop(bath=bath), 0.5)


@pytest.mark.parametrize("slug", sorted(load_catalog().media))
def test_every_medium_has_a_bath_to_simulate_or_keeps_to_the_charts(slug):
    for motion, found in moved(slug):
        assert (found.bath is None) == (slug in {"plates", "hot-salt", "hot-oil"}), motion
        assert found.severity > 0, motion
        assert 0.13 <= found.log_sd < 1, motion
        if found.bath is not None:
            assert found.bath.agitation == motion
            assert 0 < bath_temperature_c(found.bath) < 100, motion


@pytest.mark.parametrize("slug", sorted({m.kind for m in load_catalog().media.values()}))
def test_the_medium_that_a_kind_is_named_after_is_as_keen_as_its_boiling_curve(slug):
    for motion, found in moved(slug):
        assert found.bath is None or found.bath.keenness == 1.0, motion


def severed(medium, **by_motion):
    """Return a medium with other severities, each a number."""
    span = next(iter(medium.severity_per_in.values()))
    table = {m: span.model_copy(update={"min": h, "max": h}) for m, h in by_motion.items()}
    return medium.model_copy(update={"severity_per_in": table})


def test_a_medium_of_ones_own_is_keener_by_its_severity_over_the_shipped_one():
    usual = quench(OIL, shop(bath=[]), 0.5)
    harsh = quench(severed(OIL, moderate=3 * usual.severity), shop(bath=[]), 0.5)
    assert harsh.bath.keenness == pytest.approx(3.0)
    assert harsh.severity == pytest.approx(3 * usual.severity)
    # A motion that is not stated goes by the one that is, in both tables.
    strong = shop(bath=[{"medium": "oil", "agitation": "strong"}])
    still = quench(OIL, shop(bath=[{"medium": "oil", "agitation": "none"}]), 0.5)
    found = quench(severed(OIL, none=2 * still.severity), strong, 0.5)
    assert found.bath.keenness == pytest.approx(2.0)
    assert found.bath.agitation == "strong"


def test_a_bath_nobody_described_is_moved_moderately():
    assert quench(OIL, shop(bath=[]), 0.5).bath == Bath("oil", None, "moderate")


def test_air_is_still_in_a_workshop_and_blown_at_a_firm():
    air = load_catalog().media["air"]
    assert quench(air, shop(bath=[]), 0.5).bath == Bath("air", None, "none")
    assert quench(air, shop(bath=[]), 0.5, sent_out=True).bath == Bath("air", None, "violent")


def test_a_firm_does_not_use_the_bath_of_the_workshop():
    still = shop(bath=[{"medium": "oil", "agitation": "none", "temperature": 20}])
    assert quench(OIL, still, 0.5).bath == Bath("oil", 20.0, "none")
    assert quench(OIL, still, 0.5, sent_out=True).bath == Bath("oil", None, "moderate")


def test_a_small_bath_is_warmed_by_the_part_but_never_past_its_boiling():
    water = load_catalog().media["water"]

    def warm_c(mass_kg, **bath):
        described = shop(bath=[{"medium": "water", "agitation": "mild", **bath}])
        return bath_temperature_c(quench(water, described, mass_kg).bath)

    assert warm_c(0.5, temperature=50) == 50
    assert warm_c(0.5, temperature=20) == 20
    # Half of the 16 °C by which 1 kg warms 8 litres.
    assert warm_c(1.0, temperature=20, volume=8) == pytest.approx(28, abs=1)
    assert 20 < warm_c(0.2, volume=5) < warm_c(2.0, volume=5)
    assert warm_c(50.0, volume=2) <= 98


def test_a_slow_hand_is_late():
    assert quench(OIL, shop(skill={"delay": 2}), 0.5).delay_s == 2 * DELAY_S


@pytest.mark.parametrize("means", [name for name in TEMPER_ERROR if name != "none"])
def test_a_temper_is_centred_on_its_aim_and_an_oven_thermometer_helps(means):
    temper = Temper(means, 250.0, 3600.0)
    found = temper_peak_c(temper, shop(), NORMALS)
    assert np.median(found) == pytest.approx(250.0, abs=2)
    better = temper_peak_c(temper, shop(measure=["eye", "oven-thermometer"]), NORMALS)
    assert better.std() < found.std()


def test_no_temper_has_no_error():
    assert temper_peak_c(NO_TEMPER, shop(), NORMALS).std() == 0
