import math

import numpy as np
import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

from selector.errors import OutOfRangeError
from selector.heat.bar_equivalent import (
    CLAMP_MM,
    HALF_TIME,
    INCH_MM,
    cooling_time_700_500_s,
    ideal_diameter_mm,
    jominy_distance_mm,
)


def half_temperature_fourier(biot):
    """Fourier number at which a cylinder's centre is half way, from the series solution."""
    zeros, peaks = jn_zeros(0, 20), np.concatenate(([0.0], jn_zeros(1, 19)))
    roots = np.array(
        [
            brentq(lambda x: x * j1(x) - biot * j0(x), low + 1e-9, high)
            for low, high in zip(peaks, zeros, strict=True)
        ]
    )
    weight = 2 * j1(roots) / (roots * (j0(roots) ** 2 + j1(roots) ** 2))
    return brentq(lambda fo: np.sum(weight * np.exp(-(roots**2) * fo)) - 0.5, 1e-3, 1e3)


@pytest.mark.parametrize("biot", [0.01, 0.1, 0.5, 1.0, 2.0, 5.0, 20.0])
def test_the_half_temperature_rule_follows_the_series_solution(biot):
    rule = math.log(2) / (2 * biot) + HALF_TIME
    assert rule == pytest.approx(half_temperature_fourier(biot), rel=0.025)


def test_the_ideal_bar_takes_the_same_half_temperature_time():
    severity, bar = 0.5, 40.0
    ideal = float(ideal_diameter_mm(bar, severity))
    time = HALF_TIME * bar**2 / 4 + math.log(2) * (bar / 4) * INCH_MM / (2 * severity)
    assert HALF_TIME * ideal**2 / 4 == pytest.approx(time)


def test_an_ideal_quench_leaves_the_diameter_alone():
    assert float(ideal_diameter_mm(50.0, math.inf)) == pytest.approx(50.0)


def test_the_distance_never_rises_with_severity_nor_falls_with_size_or_depth():
    """Over all of the range at once, also between water and the ideal quench."""
    size = np.geomspace(5.1, 170.2, 90)[:, None, None]
    place = np.linspace(0.0, 1.0, 21)[None, :, None]
    severity = np.append(np.geomspace(0.02, 20.0, 300), math.inf)[None, None, :]
    distance = np.log(jominy_distance_mm(size, place, severity))
    assert np.diff(distance, axis=0).min() > -1e-9
    assert np.diff(distance, axis=1).max() < 1e-9
    assert np.diff(distance, axis=2).max() < 1e-9


@given(st.floats(5.1, 170.2), st.floats(0.0, 1.0), st.floats(0.02, 20.0), st.floats(1.0, 3.0))
@example(diameter=28.0, position=0.75, severity=4.0, more=1.1)
def test_a_thicker_bar_and_a_milder_quench_never_cool_faster(
    diameter, position, severity, more
):
    here = jominy_distance_mm(diameter, position, severity)
    assert jominy_distance_mm(diameter * more, position, severity) >= here * (1.0 - 1e-9)
    assert jominy_distance_mm(diameter, position, severity * more) <= here * (1.0 + 1e-9)


@given(st.floats(5.1, 170.2), st.floats(0.02, 20.0), st.floats(0.0, 0.95))
def test_nearer_the_surface_never_cools_slower(diameter, severity, position):
    inner, outer = jominy_distance_mm(diameter, [position, position + 0.05], severity)
    assert outer <= inner * (1.0 + 1e-9)


def test_between_water_and_the_ideal_quench_it_leaves_neither_end():
    water, keen, ideal = jominy_distance_mm(40.0, 0.75, [1.05, 1.05 * (1 + 1e-9), math.inf])
    assert keen == pytest.approx(water, rel=1e-6)
    assert jominy_distance_mm(40.0, 0.75, 1e9) == pytest.approx(ideal, rel=1e-6)


def test_a_thin_bar_in_air_is_even_and_cools_like_the_far_end_quench():
    centre, surface = jominy_distance_mm(6.0, [0.0, 1.0], 0.02)
    assert surface == pytest.approx(centre, rel=0.01)
    assert 20 < centre < 30


def test_what_cools_faster_than_any_end_quench_is_clamped():
    assert float(jominy_distance_mm(6.0, 1.0, 2.0)) == CLAMP_MM


def test_diameter_position_and_severity_broadcast():
    answer = jominy_distance_mm(np.full((5, 1), 25.0), [0.0, 0.75, 1.0], 0.35)
    assert answer.shape == (5, 3)
    assert jominy_distance_mm(25.0, 0.0, math.inf) < jominy_distance_mm(25.0, 0.0, 5.0)


@given(st.floats(1.0, 60.0))
def test_cooling_time_grows_along_the_end_quench_bar(distance):
    assert cooling_time_700_500_s(distance * 1.05) > cooling_time_700_500_s(distance)


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        ((0.0, 0.0, 1.0), "diameter_mm must be above 0; got 0"),
        ((20.0, 1.2, 1.0), "position_fraction must be between 0 and 1; got 1.2"),
        ((20.0, 0.0, -1.0), "severity must be above 0; got -1"),
    ],
)
def test_impossible_input_is_refused(arguments, words):
    with pytest.raises(OutOfRangeError, match=words):
        jominy_distance_mm(*arguments)
