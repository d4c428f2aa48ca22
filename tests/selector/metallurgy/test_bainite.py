import numpy as np

from selector.metallurgy.bainite import austempered_hardness


def test_hotter_salt_and_less_carbon_leave_it_softer():
    falls = austempered_hardness(0.6, np.arange(230.0, 430.0, 10.0))
    assert (np.diff(falls) < 0).all()
    assert float(austempered_hardness(0.4, 300.0)) < float(austempered_hardness(0.8, 300.0))


def test_carbide_beyond_the_eutectoid_adds_nothing():
    assert float(austempered_hardness(1.0, 300.0)) == float(austempered_hardness(0.8, 300.0))
