import numpy as np
import pytest

from selector.errors import SelectorError
from selector.metallurgy.fitting.reading import LEAST_READINGS, enough, readings

HEADING = "tempered_hrc,steel,c_wt,source,tempering_time_s,tempering_temperature_c,mo_wt"
ROW = "50.5,X,0.4,Y,3600,204.4,"


def test_readings_are_read_by_name_and_a_missing_element_is_none():
    given = readings([HEADING, ROW])
    assert given.hrc.tolist() == [50.5]
    assert given.composition_wt_pct["Mo"].tolist() == [0.0]
    assert given.composition_wt_pct["V"].tolist() == [0.0]
    assert given.where(np.array([False])).hrc.size == 0


def test_a_fault_is_said_with_its_place_and_value():
    with pytest.raises(SelectorError, match=r"line 2, tempered_hrc .*30 and 70; got 'hard'"):
        readings([HEADING, ROW.replace("50.5", "hard")])
    with pytest.raises(SelectorError, match=r"line 3, .*20 and 800; got '1200'"):
        readings([HEADING, ROW, ROW.replace("204.4", "1200")])


def test_a_fit_wants_readings_enough_of_two_steels():
    one = readings([HEADING, *[ROW] * LEAST_READINGS])
    with pytest.raises(SelectorError, match=r"readings must be 24 or more, .*got 24 of 1"):
        enough(one)
    two = readings([HEADING, *[ROW] * LEAST_READINGS, ROW.replace("X", "Z")])
    assert enough(two) is two
