"""Diamond Metals, data sheets of O1, L6 and H13 tool steel, diamondmetals.com, read 2026:
tempering tables in °F, specimens of 12.7 mm, so 1 h by its rule of 2 h per 25 mm.

Its L6 curve and the part of H13 below 500 °C are the catalogue's own and are left out here; the
rest of the catalogue's O1, L6 and H13 is from three other houses. Beyond 600 °C its H13,
hardened from 1010 °C, falls off sooner than that of the catalogue (1020 to 1050 °C).
"""

import pytest

from tests.catalogued import AIM_HRC, AS_QUENCHED, mean_miss_hrc

TABLES = {
    "100mncrw4": (
        1,
        {
            AS_QUENCHED: "65.0",
            149: "63.0",
            177: "62.5",
            204: "62.0",
            260: "60.0",
            316: "57.0",
            371: "53.0",
            427: "50.0",
            482: "47.0",
            538: "44.0",
        },
    ),
    "l6": (1, {AS_QUENCHED: "65.0"}),
    "x40crmov5-1": (1, {AS_QUENCHED: "54.0", 538: "53.0", 593: "46.0"}),
}
UNEXPLAINED = {
    "x40crmov5-1": "Sheets of H13 differ: 46 and 47 HRC at 593 °C, 48.5 to 50 at 600 °C.",
}


@pytest.mark.parametrize(
    "slug",
    [
        pytest.param(slug, marks=pytest.mark.xfail(strict=True, reason=UNEXPLAINED[slug]))
        if slug in UNEXPLAINED
        else slug
        for slug in TABLES
    ],
)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
