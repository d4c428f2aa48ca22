"""Buffalo Precision Products, technical data sheets of A2 and O1, buffaloprecision.com, read
2026: 2 h per 25 mm, specimens of 25 mm.

The catalogue's curves of both are from Eastern Tool Steel Service. The page has lost half of
its tables; what is left is compared.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "x100crmov5": (2, {316: "56", 427: "56", 593: "50"}),
    "100mncrw4": (2, {371: "53"}),
}
UNEXPLAINED = {
    "x100crmov5": "Two sheets of A2 differ by 3 HRC at 316 °C and 2 at 427 °C.",
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
