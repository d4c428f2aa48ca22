import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.case_curve import case_curve


@given(st.floats(1.5, 12.0))
def test_a_case_is_harder_with_more_carbon_and_softer_in_a_milder_quench(distance_mm):
    near = case_curve({"Mn": 1.15, "Cr": 0.95, "Si": 0.25}, distance_mm)
    far = case_curve({"Mn": 1.15, "Cr": 0.95, "Si": 0.25}, distance_mm + 3.0)
    assert (np.diff(near.hrc) >= 0).all()
    assert (far.hrc <= near.hrc + 1e-9).all()
    np.testing.assert_array_equal(near.at(near.carbon_wt_pct), near.hrc)


def test_mild_steel_in_oil_has_no_case_of_550_hv_in_a_thick_bar():
    mild = {"Mn": 0.7, "Si": 0.2}
    assert case_curve(mild, 1.6).carbon_for(52.3) == pytest.approx(0.35, abs=0.03)
    assert case_curve(mild, 8.0).carbon_for(52.3) is None
