import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.metallurgy.temper_curve import (
    accumulated_k,
    after,
    along,
    coefficients,
    parameter_k,
    place_of,
)

CR_MO = {"C": 0.40, "Mn": 0.85, "Si": 0.25, "Cr": 1.0, "Mo": 0.20}


def test_parameter_rises_with_temperature_and_time():
    parameter = parameter_k(np.array([[100.0], [400.0]]), np.array([1.0, 3600.0]))
    assert (np.diff(parameter, axis=0) > 0.0).all()
    assert (np.diff(parameter, axis=1) > 0.0).all()


def test_no_time_is_no_temper():
    assert parameter_k(400.0, 0.0) < coefficients().node_k[0]


@given(st.floats(100.0, 650.0), st.floats(1.0, 1e5), st.floats(1.0, 1e5))
def test_tempers_at_one_temperature_add_their_times(temperature_c, first_s, second_s):
    both = after(parameter_k(temperature_c, first_s), temperature_c, second_s)
    assert both == pytest.approx(parameter_k(temperature_c, first_s + second_s), abs=1e-6)


def test_a_history_adds_its_steps_one_by_one():
    history, time_s = [200.0, 400.0, 400.0, 300.0], [0.0, 10.0, 3600.0, 3700.0]
    first, second, third = accumulated_k(history, time_s)
    assert first == parameter_k(300.0, 10.0)
    assert second == after(first, 400.0, 3590.0)
    assert third == after(second, 350.0, 100.0)
    several = [k.tolist() for k in accumulated_k([history, history[::-1]], time_s)]
    assert [k[0] for k in several] == [first, second, third]


def test_a_cooler_temper_adds_next_to_nothing():
    hot = parameter_k(600.0, 3600.0)
    assert hot <= after(hot, 200.0, 3600.0) < hot + 0.01


@given(
    st.floats(0.1, 1.2),
    st.floats(0.0, 2.0),
    st.floats(0.0, 2.0),
    st.floats(0.0, 1.5),
    st.data(),
)
def test_curve_never_rises_and_alloy_never_softens(carbon, mn, si, cr, data):
    plain = {"C": carbon, "Mn": 0.3}
    rich = {
        "C": carbon,
        "Mn": 0.3 + mn,
        "Si": si,
        "Cr": cr,
        "Mo": data.draw(st.floats(0.0, 0.4)),
    }
    curve = coefficients().curve_hv(rich)
    assert (np.diff(curve) <= 0.0).all()
    assert (curve >= coefficients().curve_hv(plain) - 1e-9).all()


def test_carbon_hardens_up_to_its_limit():
    curve = coefficients().curve_hv({"C": np.array([0.2, 0.4, 0.6, 0.75, 1.0])})
    assert curve.shape == (5, coefficients().node_k.size)
    assert (np.diff(curve[:4], axis=0) > 0.0).all()
    np.testing.assert_array_equal(curve[3], curve[4])


def test_place_of_is_the_inverse_of_along():
    curve, node_k = coefficients().curve_hv(CR_MO), coefficients().node_k
    at_k = np.linspace(node_k[1] + 1.0, node_k[-1], 50)
    np.testing.assert_allclose(place_of(curve, node_k, along(curve, node_k, at_k)), at_k)


def test_out_of_reach_is_an_end_of_the_curve():
    curve, node_k = coefficients().curve_hv(CR_MO), coefficients().node_k
    assert place_of(curve, node_k, 900.0) == node_k[0]
    assert place_of(curve, node_k, 50.0) == node_k[-1]
    assert along(curve, node_k, 1000.0) == curve[0]
    assert along(curve, node_k, 30000.0) == pytest.approx(curve[-1])
