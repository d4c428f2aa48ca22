import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.strength import (
    combined_factor,
    fatigue_factor,
    fatigue_limit,
    impact_force_n,
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


def test_below_50_hrc_the_notch_is_free_and_above_56_it_counts():
    def factor(hardness_hv, notch):
        return float(static_factor(300.0, hardness_hv, "torsion", 1.33, notch))

    assert factor(500.0, 2.0) == factor(500.0, 1.0)
    assert factor(620.0, 2.0) == pytest.approx(factor(620.0, 1.0) / 2)
    assert factor(620.0, 1.0) == pytest.approx(float(strength(620.0).shear_yield_mpa) / 300)
    assert factor(570.0, 2.0) < factor(513.0, 2.0)


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


FACTOR = st.floats(0.1, 50.0)


@given(FACTOR, FACTOR, FACTOR)
def test_loads_together_leave_less_than_the_least_and_more_than_their_sum(torsion, bend, axial):
    together = float(combined_factor(torsion, bend, axial))
    assert together <= min(torsion, bend, axial)
    assert 1 / together <= (1 / torsion + 1 / bend + 1 / axial) * (1 + 1e-12)


@given(FACTOR)
def test_a_load_alone_keeps_its_factor(factor):
    assert float(combined_factor(factor)) == pytest.approx(factor)
    assert float(combined_factor(np.inf, factor)) == pytest.approx(factor)


def test_at_yield_it_is_the_distortion_energy():
    sigma, tau, yielding = 200.0, 150.0, 600.0
    equivalent = np.sqrt(sigma**2 + 3 * tau**2)
    together = combined_factor(yielding / np.sqrt(3) / tau, yielding / sigma)
    assert float(together) == pytest.approx(yielding / equivalent)


@given(st.floats(0.1, 1000.0), st.floats(1.0, 500.0), st.floats(1.0, 5000.0))
def test_a_blow_grows_with_the_root_of_its_energy_and_of_the_stiffness(energy, length, area):
    force = float(impact_force_n(energy, [length], [area]))
    assert float(impact_force_n(4 * energy, [length], [area])) == pytest.approx(2 * force)
    assert float(impact_force_n(energy, [length], [4 * area])) == pytest.approx(2 * force)
    assert float(impact_force_n(energy, [length / 2] * 2, [area] * 2)) == pytest.approx(force)
