"""S. Timoshenko, S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., 1959 (memory): a
thin plate bent over one axis has (5 + 3 ν)/(3 + ν) of its stress at a small hole. A hole small
beside the thickness has the 3 of a plate that is pulled: G. Kirsch, 1898.
"""

import pytest

from selector.mechanics.notch import plate_hole_factor

POISSON = 0.3


def test_a_hole_wide_beside_the_thickness_has_that_of_the_thin_plate():
    thin = (5 + 3 * POISSON) / (3 + POISSON)
    assert float(plate_hole_factor(1.0, 1e6, 1e-3)) == pytest.approx(thin, rel=0.005)


def test_a_hole_small_beside_the_thickness_has_that_of_a_plate_that_is_pulled():
    assert float(plate_hole_factor(1.0, 1e6, 1e4)) == pytest.approx(3.0, rel=0.01)


def test_a_narrow_plate_bears_no_more_than_its_net_section():
    for share in (0.1, 0.3, 0.6, 0.9):
        factor = float(plate_hole_factor(share, 1.0, 0.1))
        assert factor > 1 / (1 - share)
