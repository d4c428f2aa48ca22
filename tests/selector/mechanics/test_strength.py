import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.strength import (
    fatigue_factor,
    fatigue_limit,
    static_factor,
    strength,
    surface_factor,
)


@given(st.floats(90.0, 850.0))
def test_harder_is_stronger_and_yield_stays_below_tensile(hardness):
    soft, hard = strength([hardness, hardness * 1.05]).yield_mpa
    assert soft < hard
    at = strength(hardness)
    assert at.shear_yield_mpa < at.yield_mpa < at.tensile_mpa
    assert at.shear_ultimate_mpa < at.tensile_mpa


def test_below_45_hrc_the_notch_is_free_and_above_50_it_counts():
    def factor(hardness_hv, notch):
        return float(static_factor(300.0, hardness_hv, "torsion", 1.33, notch))

    assert factor(400.0, 2.0) == factor(400.0, 1.0)
    assert factor(600.0, 2.0) == pytest.approx(factor(600.0, 1.0) / 2)
    assert factor(600.0, 1.0) == pytest.approx(float(strength(600.0).shear_yield_mpa) / 300)
    assert factor(480.0, 2.0) < factor(446.0, 2.0)


def test_a_notched_square_gains_nothing_from_60_hrc():
    at_45, at_60 = static_factor(500.0, [440.0, 697.0], "torsion", 1.6, 2.0)
    assert at_60 < at_45


def test_bending_uses_the_tensile_yield():
    assert float(static_factor(100.0, 300.0, "bending")) == pytest.approx(
        float(strength(300.0).yield_mpa) / 100
    )


def test_fatigue_is_linear_to_400_hv_and_uncertain_above():
    limit = fatigue_limit([200.0, 400.0, 700.0])
    assert limit.limit_mpa[1] == 2 * limit.limit_mpa[0]
    assert limit.limit_mpa[2] == limit.limit_mpa[1]
    assert limit.sd_mpa[2] == pytest.approx(0.25 * limit.limit_mpa[2])
    assert limit.sd_mpa[1] == pytest.approx(0.07 * limit.limit_mpa[1])


def test_torsion_fatigue_lies_in_the_published_band():
    ratio = fatigue_limit(300.0, "torsion").limit_mpa / fatigue_limit(300.0).limit_mpa
    assert 0.52 <= ratio <= 0.68


def test_a_rough_surface_costs_most_on_strong_steel():
    finishes = ("polished", "ground", "machined", "hot-rolled", "forged")
    at_1500 = [float(surface_factor(finish, 1500.0)) for finish in finishes]
    assert at_1500 == sorted(at_1500, reverse=True)
    assert surface_factor("hot-rolled", 600.0) > surface_factor("hot-rolled", 1500.0)


@given(st.floats(1.0, 3.0), st.floats(150.0, 400.0))
def test_fatigue_always_counts_the_notch(notch, hardness):
    smooth, notched = fatigue_factor(100.0, hardness, "bending", np.array([1.0, notch]))
    assert notched == pytest.approx(smooth / notch)
