from itertools import pairwise
from typing import get_args

import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.quench import Agitation, Medium, bath_end_c, grossmann_h


@pytest.mark.parametrize("medium", get_args(Medium))
def test_agitation_never_makes_a_bath_milder(medium):
    ladder = [grossmann_h(medium, agitation).severity for agitation in get_args(Agitation)]
    assert all(low <= high for low, high in pairwise(ladder))


@pytest.mark.parametrize("medium", get_args(Medium))
def test_severity_lies_in_its_band_and_names_its_source(medium):
    answer = grossmann_h(medium, "moderate")
    assert answer.low <= answer.severity <= answer.high
    assert 0.1 <= answer.log_sd < 0.5
    assert "memory" in answer.source or "estimated" in answer.source


def test_the_order_of_media_is_the_published_one():
    order = ("air", "oil", "fast-oil", "water", "brine")
    ladder = [grossmann_h(medium, "moderate").severity for medium in order]
    assert ladder == sorted(ladder)


def test_water_loses_severity_as_it_warms_most_when_still():
    def kept(agitation):
        warm = grossmann_h("water", agitation, 50.0).severity
        return warm / grossmann_h("water", agitation, 20.0).severity

    assert kept("none") < kept("moderate") < kept("strong") < 1


def test_a_warm_bath_is_only_looked_at_for_water():
    assert grossmann_h("oil", "none", 60.0) == grossmann_h("oil", "none")


@pytest.mark.parametrize(
    ("medium", "agitation", "words"),
    [
        ("mercury", "none", "medium must be one of water.*got mercury"),
        ("oil", "wild", "agitation must be one of none.*got wild"),
    ],
)
def test_an_unknown_bath_is_refused(medium, agitation, words):
    with pytest.raises(OutOfRangeError, match=words):
        grossmann_h(medium, agitation)


def test_one_kilogram_warms_eight_litres_of_water_by_sixteen_degrees():
    assert float(bath_end_c(1.0, 850.0, 8.0)) - 20 == pytest.approx(16, abs=0.5)


def test_oil_warms_more_than_water_and_a_large_bath_hardly():
    small, large = bath_end_c(1.0, 850.0, [4.0, 400.0], 40.0, "oil")
    assert small > bath_end_c(1.0, 850.0, 4.0, 40.0, "water")
    assert large == pytest.approx(40.0, abs=1.0)


def test_air_ends_at_its_own_temperature():
    assert np.all(bath_end_c([1.0, 5.0], 850.0, 1.0, 18.0, "air") == 18.0)


def test_a_bath_without_known_heat_capacity_is_refused():
    with pytest.raises(OutOfRangeError, match=r"medium must be one of water.*got salt"):
        bath_end_c(1.0, 850.0, 8.0, 20.0, "salt")
