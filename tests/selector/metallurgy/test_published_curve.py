import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.published_curve import (
    curve_sd_hrc,
    for_heat,
    from_as_quenched,
    hardens_again_c,
    tempered_from_curve,
)

HOUR_S = 3600.0
MAIN = [(200.0, 60.0), (400.0, 58.0), (540.0, 55.0), (650.0, 40.0)]
HOTTER = [(1065.0, [(200.0, 58.5), (400.0, 58.5), (525.0, 61.0)])]


def hrc_at(points, temper_c):
    return float(tempered_from_curve(points[:, 0], points[:, 1], HOUR_S, temper_c, HOUR_S))


def test_the_heat_of_a_curve_gives_it_back():
    points = for_heat(MAIN, HOTTER, 1010.0, 1010.0)
    for temper_c, hrc in MAIN:
        assert hrc_at(points, temper_c) == pytest.approx(hrc)


def test_the_heat_of_another_curve_gives_that():
    points = for_heat(MAIN, HOTTER, 1010.0, 1065.0)
    for temper_c, hrc in HOTTER[0][1]:
        assert hrc_at(points, temper_c) == pytest.approx(hrc)


@given(st.floats(1010.0, 1065.0), st.floats(200.0, 640.0))
def test_between_two_heats_lies_between_two_curves(heat_c, temper_c):
    between, cold, hot = (
        hrc_at(for_heat(MAIN, HOTTER, 1010.0, heat), temper_c)
        for heat in (heat_c, 1010.0, 1065.0)
    )
    assert min(cold, hot) - 1e-9 <= between <= max(cold, hot) + 1e-9


def test_a_heat_beyond_those_published_is_the_nearest():
    far, near = (for_heat(MAIN, HOTTER, 1010.0, heat) for heat in (1200.0, 1065.0))
    np.testing.assert_allclose(far, near)


def test_a_short_curve_is_carried_on_as_far_from_the_main_one():
    points = for_heat(MAIN, [(1100.0, [(540.0, 58.0)])], 1010.0, 1100.0)
    assert hrc_at(points, 200.0) == pytest.approx(63.0)
    assert hrc_at(points, 650.0) == pytest.approx(43.0)


def test_the_error_is_wider_where_the_curve_is_steep():
    temperatures_c, hrc = np.array(MAIN).T
    flat, steep = curve_sd_hrc(temperatures_c, hrc, HOUR_S, [300.0, 600.0], HOUR_S)
    assert steep > 1.2 * flat


@given(st.floats(100.0, 640.0), st.floats(600.0, 86400.0))
def test_a_longer_or_hotter_temper_past_the_end_is_never_harder(temper_c, time_s):
    temperatures_c, hrc = np.array([(200.0, 60.0), (400.0, 48.0), (600.0, 35.0)]).T
    here, hotter, longer = (
        float(tempered_from_curve(temperatures_c, hrc, HOUR_S, c, t))
        for c, t in ((temper_c, time_s), (temper_c + 20.0, time_s), (temper_c, 2.0 * time_s))
    )
    assert max(hotter, longer) <= here


def test_the_error_grows_past_the_end():
    temperatures_c, hrc = np.array(MAIN).T
    end, past = curve_sd_hrc(temperatures_c, hrc, HOUR_S, [650.0, 700.0], HOUR_S)
    assert past > 1.5 * end


def test_a_curve_that_begins_late_is_begun_at_the_hardness_as_quenched():
    points = from_as_quenched(MAIN, 63.0)
    assert hrc_at(points, 100.0) == 63.0
    assert 60.0 < hrc_at(points, 150.0) < 63.0
    for fresh_hrc in (None, 59.0):
        np.testing.assert_array_equal(from_as_quenched(MAIN, fresh_hrc), np.array(MAIN))
    early = [(100.0, 61.0), (300.0, 58.0)]
    np.testing.assert_array_equal(from_as_quenched(early, 63.0), np.array(early))


def test_only_past_its_softest_temper_may_a_steel_be_harder_than_quenched():
    assert hardens_again_c([(200.0, 60.0), (300.0, 58.0), (520.0, 61.0)]) == 300.0
    assert hardens_again_c([(200.0, 60.0), (300.0, 58.0), (520.0, 58.5)]) == float("inf")
