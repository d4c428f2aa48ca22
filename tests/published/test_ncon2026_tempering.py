"""NCON Turbo Tech, technical delivery condition of EN24 (817M40), read 2026: tempering heat and
Brinell range of conditions T, U and V; at least 1 h. Converted by ASTM E140; not used in a fit.
"""

import pytest

from selector.metallurgy.tempering import tempered_hardness

EN24 = {"C": 0.40, "Mn": 0.60, "Si": 0.25, "Ni": 1.50, "Cr": 1.20, "Mo": 0.28}
CONDITIONS = {
    "T": (660, "24.2", "32.1"),
    "U": (630, "27.7", "35.4"),
    "V": (610, "30.8", "37.9"),
}


@pytest.mark.parametrize("condition", CONDITIONS)
def test_tempered_to_its_condition(condition):
    temperature_c, low, high = CONDITIONS[condition]
    assert float(low) <= tempered_hardness(EN24, temperature_c, 3600.0).hrc <= float(high)
