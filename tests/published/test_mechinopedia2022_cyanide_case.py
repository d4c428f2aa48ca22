"""Mechinopedia, cyaniding in heat treatment of metals, 2022 (read): a bath of one third sodium
cyanide gives 0.125 mm of case in about 15 minutes at 850 °C. Not used in a fit.
"""

from tests.layer_forecast import case_samples, inside


def test_a_quarter_of_an_hour_of_cyanide():
    assert inside("0.125", case_samples("liquid", 850.0, 0.25, core=0.15, total=True))
