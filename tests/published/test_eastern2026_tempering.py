"""Eastern Tool Steel Service, data sheets of L6 and M2, easterntoolsteel.com, read 2026:
hardness after two tempers of 2 h; M2 hardened from six temperatures.

The catalogue has the as-quenched hardness of both from here, and M2 from 1066, 1121 and
1177 °C; its main curves are from other houses. Compared is what it does not hold: L6, and M2
from 1093, 1149 and 1204 °C.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "l6": (2, None, {149: "64", 204: "61", 260: "59", 316: "57", 371: "54"}),
    "hs6-5-2 from 1093 °C": (2, 1093.0, {538: "61", 552: "60", 566: "60"}),
    "hs6-5-2 from 1149 °C": (2, 1149.0, {538: "63", 552: "63", 566: "62"}),
    "hs6-5-2 from 1204 °C": (2, 1204.0, {538: "65", 552: "65", 566: "64"}),
}


@pytest.mark.parametrize("case", TABLES)
def test_catalogue_agrees_with_the_table(case):
    time_h, heat_c, table = TABLES[case]
    assert mean_miss_hrc(case.split()[0], table, time_h, heat_c) <= AIM_HRC
