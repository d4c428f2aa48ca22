import numpy as np
import pytest

from selector.errors import SelectorError
from selector.metallurgy.reading import LEAST_READINGS, enough, readings

HEADING = "tempered_hrc,steel,c_wt,source,tempering_time_s,tempering_temperature_c,mo_wt"
ROW = "50.5,X,0.4,Y,3600,204.4,"


def test_readings_are_read_by_name_and_a_missing_element_is_none():
    given = readings([HEADING, ROW])
    assert given.hrc.tolist() == [50.5]
    assert given.composition_wt_pct["Mo"].tolist() == [0.0]
    assert given.composition_wt_pct["V"].tolist() == [0.0]
    assert given.where(np.array([False])).hrc.size == 0


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        ([], r"line 1 must be a heading with source, steel, .*; got nothing"),
        ([HEADING.replace("c_wt,", "")], r"line 1 must be a heading with c_wt as well; got temp"),
        ([HEADING, ROW.replace("50.5", "hard")], r"line 2, tempered_hrc .* got 'hard'"),
        ([HEADING, ROW.replace("50.5", "nan")], r"line 2, tempered_hrc .* got 'nan'"),
        ([HEADING, ROW, ROW.replace("204.4", "1200")], r"line 3, .*20 and 800; got '1200'"),
        ([HEADING, ROW.replace("3600", "-5")], r"line 2, tempering_time_s .* got '-5'"),
        ([HEADING, ROW + "ten"], r"line 2, mo_wt .*between 0 and 30; got 'ten'"),
        ([HEADING, ROW.replace("X", " ")], r"line 2, steel must be given; got ' '"),
        ([HEADING, "50.5,X"], r"line 2, source must be given; got ''"),
        ([HEADING, ROW + ",1"], r"line 2 must be as long as the heading; got more cells"),
        ([HEADING, '"50.5'], r"line 2 must be a row of the table; got unexpected end"),
    ],
    ids=[
        "empty", "column", "text", "nan", "hot", "time", "alloy", "blank", "short", "long",
        "quote",
    ],
)  # fmt: skip
def test_a_fault_is_told_with_its_place_and_value(lines, told):
    with pytest.raises(SelectorError, match=told):
        readings(lines)


def test_no_more_than_ten_faults_are_told():
    with pytest.raises(SelectorError, match=r"line 2, tempered_hrc .* got 'x'") as caught:
        readings([HEADING, *[ROW.replace("50.5", "x")] * 40])
    assert len(caught.value.problems) == 10


def test_a_fit_wants_readings_enough_of_two_steels():
    one = readings([HEADING, *[ROW] * LEAST_READINGS])
    with pytest.raises(SelectorError, match=r"readings must be 24 or more, .*got 24 of 1"):
        enough(one)
    two = readings([HEADING, *[ROW] * LEAST_READINGS, ROW.replace("X", "Z")])
    assert enough(two) is two
