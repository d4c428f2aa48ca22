import numpy as np
import pytest

from selector.metallurgy.band_curve import MIDDLE_LOG, coefficients, heat_coefficients


def hrc_of(curve, carbon, product, distance_mm):
    return curve.initial_hrc(carbon) * curve.kept(product, distance_mm)


def test_the_product_is_that_of_the_powers():
    curve = coefficients()
    product = curve.log_product(
        {"C": np.array([6.0]), "Cr": np.array(2.0), "grain": np.array(1.1)}
    )
    power = curve.power
    wanted = power["C"] * np.log(6.0) + power["Cr"] * np.log(2.0) + np.log(1.1) - MIDDLE_LOG
    assert product == pytest.approx([wanted])


def test_a_richer_product_is_never_softer_and_the_curve_falls():
    curve, distance = coefficients(), np.geomspace(1.0, 80.0, 60)
    lean, rich = (hrc_of(curve, np.array(0.4), np.array(at), distance) for at in (-0.5, 0.5))
    assert np.all(rich >= lean)
    assert np.all(np.diff(lean) < 0.0)


def test_carbon_beyond_the_bands_hardens_no_more():
    curve = coefficients()
    some, more = hrc_of(curve, np.array([0.62, 0.9]), np.array(0.0), np.array(1.0))
    assert some == more


def test_the_curve_of_a_heat_rises_with_the_product_however_lean_and_falls_with_distance():
    curve, distance = heat_coefficients(), np.geomspace(1.0, 80.0, 60)
    products = np.arange(-4.0, 3.0, 0.1)[:, None]
    hrc = hrc_of(curve, np.array(0.4), products, distance)
    assert np.all(np.diff(hrc, axis=0) >= 0.0)
    assert np.all(np.diff(hrc, axis=1) < 0.0)


def test_a_heat_falls_more_steeply_than_the_midline_of_many():
    near, far = np.array(3.0), np.array(7.0)
    fall = [
        hrc_of(by, np.array(0.45), np.array(-0.2), near)
        - hrc_of(by, np.array(0.45), np.array(-0.2), far)
        for by in (coefficients(), heat_coefficients())
    ]
    assert fall[1] > fall[0] + 3.0


def test_a_heat_has_no_harder_end_than_martensite_of_rich_carbon():
    curve = heat_coefficients()
    ends = hrc_of(curve, np.array([0.2, 0.4, 0.55, 0.62]), np.array(1.5), np.array(1.0))
    assert np.all(np.diff(ends) > 0.0)
    assert 64.0 < ends[-1] < 65.1


def test_a_shallow_steel_gives_way_more_abruptly_than_a_deep_one():
    curve, distance = heat_coefficients(), np.geomspace(1.0, 80.0, 200)

    def spread(product):
        """Return the distance at a quarter of the fall over that at three quarters."""
        hrc = hrc_of(curve, np.array(0.45), np.array(product), distance)
        share = (hrc - hrc[-1]) / (hrc[0] - hrc[-1])
        return np.interp([-0.25, -0.75], -share, distance)

    (shallow_far, shallow_near), (deep_far, deep_near) = spread(-0.5), spread(0.8)
    assert shallow_far / shallow_near < deep_far / deep_near
