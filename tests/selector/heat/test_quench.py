import numpy as np
import pytest

from selector.errors import OutOfRangeError
from selector.heat.quench import bath_end_c


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
