"""Baths: level against published figures, motion, temperature, refusals."""

import itertools
import math

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.boiling import Bath, bath_temperature_c, boiling_curve, hottest_in_use_c
from selector.heat.exchange import SURFACE_C

MEDIA = ("water", "warm-water", "brine", "oil", "fast-oil", "vegetable-oil", "polymer", "air")
MOTIONS = ("none", "mild", "moderate", "good", "strong", "violent")


def coefficient(bath, surface_c, state="wet"):
    curve = boiling_curve(bath)
    flux = np.interp(surface_c, SURFACE_C, getattr(curve, state))
    return float(flux) / (surface_c - curve.bath_c)


# Published regimes of heat transfer, from memory: medium, motion, bath, surface, low, high.
REGIMES = [
    ("water", "none", 20.0, 300.0, 8000.0, 15000.0),
    ("water", "strong", 20.0, 700.0, 3000.0, 8000.0),
    ("water", "strong", 20.0, 300.0, 12000.0, 25000.0),
    ("brine", "moderate", 20.0, 700.0, 5000.0, 12000.0),
    ("brine", "moderate", 20.0, 300.0, 15000.0, 30000.0),
    ("oil", "moderate", 50.0, 535.0, 1500.0, 3000.0),
    ("oil", "moderate", 50.0, 240.0, 150.0, 400.0),
    ("polymer", "moderate", 30.0, 500.0, 1500.0, 4000.0),
    ("air", "none", 20.0, 850.0, 60.0, 110.0),
    ("air", "none", 20.0, 400.0, 20.0, 40.0),
    ("air", "strong", 20.0, 600.0, 60.0, 150.0),
]


@pytest.mark.parametrize("case", REGIMES, ids=lambda c: f"{c[0]} {c[1]} at {c[3]:g} °C")
def test_wetted_surface_within_published_regimes(case):
    medium, motion, bath_c, surface_c, low, high = case
    assert low <= coefficient(Bath(medium, bath_c, motion), surface_c) <= high


@pytest.mark.parametrize(
    ("bath_c", "surface_c", "low", "high"),
    [(20.0, 700.0, 500.0, 2000.0), (40.0, 650.0, 300.0, 1000.0), (60.0, 600.0, 200.0, 600.0)],
)
def test_film_of_still_water_within_published_regimes(bath_c, surface_c, low, high):
    still = Bath("water", bath_c, "none")
    assert low <= coefficient(still, surface_c, "film") <= high


def test_oil_behind_vapour_is_the_measured_one():
    """500 W/(m² K) at 800 °C in two oils: Buczek and Telejko 2013, abstract; radiation here."""
    assert coefficient(Bath("oil"), 800.0, "film") == pytest.approx(500.0, rel=0.2)


@pytest.mark.parametrize("medium", MEDIA)
def test_motion_never_slows_a_bath(medium):
    curves = [boiling_curve(Bath(medium, None, motion)) for motion in MOTIONS]
    for calm, brisk in itertools.pairwise(curves):
        hot = calm.bath_c + 1.0 < SURFACE_C
        assert np.all(brisk.wet[hot] >= calm.wet[hot] * (1 - 1e-9))
        assert brisk.film_s <= calm.film_s


def test_warm_water_hides_longer_and_boils_less():
    cold, hot = (boiling_curve(Bath("water", at, "none")) for at in (20.0, 60.0))
    assert hot.film_s > 10.0 * cold.film_s
    assert np.interp(300.0, SURFACE_C, hot.wet) < 0.7 * np.interp(300.0, SURFACE_C, cold.wet)
    assert boiling_curve(Bath("warm-water")).bath_c == 55.0


def test_brine_hardly_hides_at_all():
    assert boiling_curve(Bath("brine")).film_s < 0.2 * boiling_curve(Bath("water")).film_s


@pytest.mark.parametrize("medium", MEDIA)
def test_nothing_warms_in_its_bath(medium):
    curve = boiling_curve(Bath(medium))
    hotter = curve.bath_c < SURFACE_C
    assert np.all(curve.wet[hotter] > 0.0)
    assert np.all(curve.film[hotter] > 0.0)
    assert np.all(curve.film <= curve.wet + 0.8 * 5.67e-8 * (SURFACE_C + 273.15) ** 4)


@pytest.mark.parametrize(
    ("bath", "message"),
    [
        (Bath("mercury"), "medium must be one of water, .*got mercury"),
        (Bath("plates"), "medium must be one of water, .*got plates"),
        (Bath("oil", None, "lazy"), "agitation must be one of none, .*got lazy"),
        (Bath("water", 120.0), "bath_temperature_c must be between 0 and 99 °C.*got 120 °C"),
        (Bath("oil", math.nan), "bath_temperature_c must be between 0 and 200 °C.*got nan °C"),
    ],
)
def test_bath_that_cannot_be_is_refused(bath, message):
    with pytest.raises(OutOfRangeError, match=message):
        bath_temperature_c(bath)


@pytest.mark.parametrize("motion", MOTIONS)
@pytest.mark.parametrize("quicker", ["fast-oil", "vegetable-oil"])
def test_a_quicker_oil_never_grips_less_than_plain_oil(quicker, motion):
    quick, plain = (boiling_curve(Bath(oil, None, motion)) for oil in (quicker, "oil"))
    hot = SURFACE_C > 150.0
    assert np.all(quick.wet[hot] >= plain.wet[hot])
    assert quick.film_s < plain.film_s


@pytest.mark.parametrize("medium", MEDIA)
def test_a_wetted_surface_gives_up_more_the_more_the_bath_moves(medium):
    flux = [coefficient(Bath(medium, None, motion), 500.0) for motion in MOTIONS]
    assert np.all(np.diff(flux) > 0.0)


@pytest.mark.parametrize("medium", [name for name in MEDIA if name != "air"])
def test_the_hottest_in_use_is_a_bath_with_a_curve(medium):
    hottest = hottest_in_use_c(medium)
    assert bath_temperature_c(Bath(medium)) < hottest
    assert bath_temperature_c(Bath(medium, hottest)) == hottest


@pytest.mark.parametrize("medium", ["air", "plates", "tar"])
def test_only_a_liquid_has_a_hottest(medium):
    with pytest.raises(OutOfRangeError, match=f"medium must be one of .*; got {medium}"):
        hottest_in_use_c(medium)


@pytest.mark.parametrize("medium", MEDIA)
def test_a_keener_bath_exchanges_more_in_proportion_and_keeps_its_film_as_long(medium):
    usual, keen = boiling_curve(Bath(medium)), boiling_curve(Bath(medium, keenness=1.7))
    np.testing.assert_allclose(keen.wet, 1.7 * usual.wet)
    np.testing.assert_allclose(keen.film, 1.7 * usual.film)
    assert keen.film_s == usual.film_s
    assert keen.bath_c == usual.bath_c
