"""Eastern Tool Steel Service, data sheets of L6, M2 and H13, easterntoolsteel.com, read 2026:
hardness after two tempers of 2 h; M2 hardened from 1204 °C.

The catalogue has the as-quenched hardness of these from here and their tempering curves from
other houses, so only the curves are compared. The order of the H13 rows is inferred from two
lists side by side.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "l6": (2, {149: "64", 204: "61", 260: "59", 316: "57", 371: "54"}),
    "hs6-5-2": (2, {538: "65", 552: "65", 566: "64"}),
    "x40crmov5-1": (2, {538: "52", 566: "50", 593: "47", 607: "41", 621: "36"}),
}
UNEXPLAINED = {
    "x40crmov5-1": "The table drops 11 HRC from 593 to 621 °C; no other sheet of H13 does.",
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
