"""Tool makers (common practice, no source): ends of carbon tool steel heated evenly at a torch.

Dissolution and section limits were set so that ends hold (12 mm of silver steel in two minutes)
and shells are those published; W1, O1 and C55 took no part.
"""

import numpy as np
import pytest

from tests.rounds import FURNACE, PLACES, hrc_across

HEATED_C_PER_S = 10.0


def across(slug, medium, diameter_mm, heat_c, hold_s):
    """Return the hardness from rim to axis of an end that was held evenly at heat."""
    return hrc_across(slug, medium, diameter_mm, heat_c, (hold_s, HEATED_C_PER_S))


@pytest.mark.parametrize("diameter_mm", [4.0, 6.0, 8.0, 12.0])
@pytest.mark.parametrize("slug", ["115crv3", "c105u"])
def test_an_end_held_a_minute_or_two_in_water_is_62_hrc(slug, diameter_mm):
    assert across(slug, "water", diameter_mm, 780.0, 90.0)[0] >= 62.0


def test_12_mm_of_o1_held_a_minute_in_oil_is_62_hrc_to_the_centre():
    assert across("100mncrw4", "oil", 12.0, 800.0, 60.0).min() >= 62.0


@pytest.mark.parametrize("hold_s", [20.0, 60.0, 120.0])
@pytest.mark.parametrize("diameter_mm", [4.0, 12.0])
def test_no_c55_comes_out_harder_than_w1(diameter_mm, hold_s):
    w1 = across("c105u", "water", diameter_mm, 780.0, hold_s)[0]
    assert across("c55", "water", diameter_mm, 830.0, hold_s)[0] < w1


def test_the_case_of_w1_at_25_mm_is_about_3_mm():
    hrc = hrc_across("c105u", "water", 25.0, 785.0, FURNACE)
    depth_mm = 12.5 * (1.0 - np.interp(55.0, hrc[::-1], PLACES[::-1]))
    assert depth_mm == pytest.approx(3.0, abs=0.5)


def test_seconds_at_heat_are_too_few_for_silver_steel():
    assert across("115crv3", "water", 8.0, 780.0, 5.0)[0] < 55.0
