"""Crucible, data sheets of D2, S7, A6, S5, P20 and O6, about 1990 (from memory, within about 1
HRC): two tempers of 2 h in D2, else 2 h.

Written down before they were compared; no curve of the catalogue is from them.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

# Time of all tempers in h, hardening heat where the catalogue has curves of several, table.
TABLES = {
    "x153crmov12": (
        4,
        1010.0,
        {204: "60", 260: "58", 316: "58", 427: "57", 482: "58", 538: "55", 593: "49"},
    ),
    "50crmov13-15": (
        2,
        None,
        {
            149: "58.5",
            204: "57",
            260: "55.5",
            316: "54.5",
            427: "53.5",
            482: "52.5",
            538: "51",
            593: "47",
        },
    ),
    "a6": (2, None, {149: "60", 204: "58.5", 260: "57", 316: "55", 427: "52.5", 538: "48.5"}),
    "s5": (
        2,
        None,
        {
            149: "60.5",
            204: "60",
            260: "59",
            316: "58",
            371: "55",
            427: "52.5",
            482: "50",
            538: "47.5",
        },
    ),
    "p20": (2, None, {204: "50", 316: "48", 427: "45", 538: "40", 593: "36", 649: "30"}),
    "o6": (2, None, {149: "63", 204: "62", 260: "60", 316: "57", 371: "54"}),
}


@pytest.mark.parametrize("case", TABLES)
def test_catalogue_agrees_with_the_table(case):
    time_h, heat_c, table = TABLES[case]
    assert mean_miss_hrc(case.split()[0], table, time_h, heat_c) <= AIM_HRC
