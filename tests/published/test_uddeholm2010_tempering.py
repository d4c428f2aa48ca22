"""Uddeholm, brochures of Arne, Rigor, Sverker 21, Compax, Regin 3, Orvar Supreme and Vidar 1,
about 2010 (from memory, within about 1 HRC): tempering charts, two tempers of 2 h.

Written down before they were compared; no curve of the catalogue is from them.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc
from tests.unexplained import marked

# Time of all tempers in h, hardening heat where the catalogue has curves of several, table.
TABLES = {
    "100mncrw4": (
        4,
        None,
        {
            150: "63.5",
            200: "61.5",
            250: "59.5",
            300: "57",
            350: "54",
            400: "51",
            500: "45",
            600: "38",
        },
    ),
    "x100crmov5": (
        4,
        None,
        {
            150: "63",
            200: "61",
            250: "59.5",
            300: "58",
            400: "57",
            500: "57.5",
            550: "54.5",
            600: "49",
        },
    ),
    "x153crmov12": (
        4,
        1020.0,
        {
            200: "61",
            250: "59",
            300: "58",
            400: "58",
            500: "59.5",
            525: "58.5",
            550: "56",
            600: "48",
        },
    ),
    "50crmov13-15": (
        4,
        None,
        {200: "57", 250: "55.5", 300: "54.5", 400: "53.5", 500: "53", 550: "50.5", 600: "45.5"},
    ),
    "s1": (4, None, {200: "57", 300: "54.5", 400: "52", 500: "49", 600: "44.5"}),
    "x40crmov5-1": (
        4,
        1025.0,
        {
            250: "52.5",
            400: "53",
            500: "54.5",
            525: "54",
            550: "52.5",
            575: "50",
            600: "46.5",
            625: "42",
            650: "37",
            700: "28",
        },
    ),
    "x37crmov5-1": (4, None, {500: "54", 550: "51", 575: "48.5", 600: "45", 650: "35.5"}),
}
UNEXPLAINED = {
    "x37crmov5-1": "Two houses, from 1000 and from 1020 °C, differ by 2 HRC at 600 °C.",
}


@pytest.mark.parametrize(
    "case",
    marked(TABLES, UNEXPLAINED),
)
def test_catalogue_agrees_with_the_table(case):
    time_h, heat_c, table = TABLES[case]
    assert mean_miss_hrc(case.split()[0], table, time_h, heat_c) <= AIM_HRC
