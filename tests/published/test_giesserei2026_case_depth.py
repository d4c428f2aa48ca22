"""Giesserei-Lexikon, carburisation depth (DIN EN 10052), read in 2026: 4 h at 930 °C give
a carburisation depth of about 1 mm, counted to 0.35 % C. Not used in a fit.
"""

from tests.layer_forecast import case_samples, inside


def test_four_hours_of_gas_give_a_millimetre():
    assert inside("1.0", case_samples("gas", 930.0, 4.0))
