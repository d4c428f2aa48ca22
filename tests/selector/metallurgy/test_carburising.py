import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.linalg import solve_banded

from selector.metallurgy.carburising import (
    MEDIA,
    carbon_at_depth,
    carbon_diffusivity,
    carbon_potential,
    depth_of_carbon,
    time_to_depth_h,
)

HEATS, HOURS = st.floats(850.0, 980.0), st.floats(0.25, 30.0)
ANY = st.sampled_from(sorted(MEDIA))


def diffused(heat_c, hours, core, potential, transfer):
    """Return depths and carbon of a numerical solution with a diffusivity by local carbon."""
    edges = 5.0 * np.linspace(0, 1, 301) ** 1.5
    at, wide = 0.5 * (edges[1:] + edges[:-1]), np.diff(edges)
    carbon, times = np.full(at.size, core), 3600 * hours * np.linspace(0, 1, 401) ** 2
    for step in np.diff(times):
        local = carbon_diffusivity(carbon, heat_c)
        flow = step * np.sqrt(local[1:] * local[:-1]) / np.diff(at)
        enters = step / (1 / transfer + 0.5 * wide[0] / local[0])
        bands, right = np.zeros((3, at.size)), carbon.copy()
        bands[1] = 1.0
        bands[1, :-1] += flow / wide[:-1]
        bands[1, 1:] += flow / wide[1:]
        bands[0, 1:], bands[2, :-1] = -flow / wide[:-1], -flow / wide[1:]
        bands[1, 0] += enters / wide[0]
        right[0] += enters / wide[0] * potential
        carbon = solve_banded((1, 1), bands, right)
    return at, carbon


@pytest.mark.parametrize("medium", ["gas", "energised", "liquid"])
@pytest.mark.parametrize(("heat_c", "hours"), [(880.0, 2.0), (925.0, 1.0), (925.0, 9.0)])
@pytest.mark.parametrize(("carbon", "within"), [(0.35, 0.10), (0.25, 0.13)])
def test_the_closed_form_meets_a_numerical_solution(medium, heat_c, hours, carbon, within):
    potential = float(carbon_potential(heat_c, medium))
    transfer = MEDIA[medium].transfer_mm_per_s
    at, held = diffused(heat_c, hours, 0.18, potential, transfer)
    depth = float(depth_of_carbon(carbon, 0.18, potential, heat_c, hours, medium))
    assert depth == pytest.approx(float(np.interp(-carbon, -held, at)), rel=within)
    surface = float(carbon_at_depth(0.0, 0.18, potential, heat_c, hours, medium))
    assert surface == pytest.approx(float(held[0]), abs=0.12)


@given(HEATS, HOURS, ANY)
def test_depth_time_and_carbon_are_one_relation(heat_c, hours, medium):
    potential = float(carbon_potential(heat_c, medium))
    depth = depth_of_carbon(0.35, 0.18, potential, heat_c, hours, medium)
    if depth > 0:
        again = time_to_depth_h(depth, 0.35, 0.18, potential, heat_c, medium)
        assert float(again) == pytest.approx(hours, rel=1e-6)
        there = carbon_at_depth(depth, 0.18, potential, heat_c, hours, medium)
        assert float(there) == pytest.approx(0.35, abs=1e-6)


@given(HEATS, HOURS, ANY)
def test_hotter_and_longer_is_deeper_and_four_times_as_long_less_than_twice(
    heat_c, hours, medium
):
    def depth(heat, time):
        return float(depth_of_carbon(0.25, 0.18, 1.0, heat, time, medium))

    here = depth(heat_c, hours)
    assert here <= depth(heat_c + 10, hours)
    assert here <= depth(heat_c, 1.5 * hours)
    # The way in costs the first hours most, so depth catches up on the root of time.
    assert depth(heat_c, 4 * hours) >= 2 * here * (1 - 1e-9)


@given(HEATS, HOURS)
def test_media_stand_in_the_order_of_their_trade(heat_c, hours):
    depths = [
        float(
            depth_of_carbon(0.35, 0.18, carbon_potential(heat_c, medium), heat_c, hours, medium)
        )
        for medium in ("charcoal", "energised", "compound")
    ]
    assert depths == sorted(depths)
