"""ASM International, Heat Treater's Guide, 2nd ed., 1995: 8620, surface of a carburised case
of 0.8 to 0.9 % C after 1 h (from memory, printed as ranges of 2 HRC).

Not used in a fit. The as-quenched hardness, 62 to 65 HRC, is given; the stated interval must
hold the middle of each range.
"""

import pytest

from selector.metallurgy.tempering import tempered_hardness

CASE = {"C": 0.85, "Mn": 0.80, "Si": 0.25, "Ni": 0.55, "Cr": 0.50, "Mo": 0.20}
PRINTED = {150: "61", 175: "60", 205: "59", 230: "57", 260: "56"}


@pytest.mark.parametrize("temperature_c", PRINTED)
def test_case_after_a_low_temper(temperature_c):
    found = tempered_hardness(CASE, temperature_c, 3600.0, 63.5)
    assert abs(float(found.hrc) - float(PRINTED[temperature_c])) <= 1.645 * found.sd_hrc
