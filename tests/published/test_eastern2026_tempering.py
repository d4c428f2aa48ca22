"""Eastern Tool Steel Service, data sheet of M2, easterntoolsteel.com, read 2026: hardness after
two tempers of 2 h, 4 h in all, hardened from six temperatures.

The catalogue has the as-quenched hardness from here, and M2 from 1066, 1121 and 1177 °C; its
main curve is from another house. Compared is what it does not hold: M2 from 1093, 1149 and 1204
°C. As quenched, the fall of the six from the hottest to the coldest set what each degree under
the range takes; the level is the check.
"""

import pytest

from tests.catalogued import AIM_HRC, AS_QUENCHED, catalogued_hrc, mean_miss_hrc

TABLES = {
    "hs6-5-2 from 1093 °C": (4, 1093.0, {538: "61", 552: "60", 566: "60"}),
    "hs6-5-2 from 1149 °C": (4, 1149.0, {538: "63", 552: "63", 566: "62"}),
    "hs6-5-2 from 1204 °C": (4, 1204.0, {538: "65", 552: "65", 566: "64"}),
}
M2_AS_QUENCHED_HRC = {1066: 62, 1093: 63, 1121: 64, 1149: 65, 1177: 65, 1204: 66}


@pytest.mark.parametrize("case", TABLES)
def test_catalogue_agrees_with_the_table(case):
    time_h, heat_c, table = TABLES[case]
    assert mean_miss_hrc(case.split()[0], table, time_h, heat_c) <= AIM_HRC


@pytest.mark.parametrize("heat_c", M2_AS_QUENCHED_HRC)
def test_a_high_speed_steel_hardens_far_under_its_range(heat_c):
    hrc = catalogued_hrc("hs6-5-2", AS_QUENCHED, 0.0, float(heat_c))
    assert abs(hrc - M2_AS_QUENCHED_HRC[heat_c]) <= AIM_HRC
