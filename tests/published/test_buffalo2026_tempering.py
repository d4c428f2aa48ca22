"""Buffalo Precision Products, technical data sheet of O1, buffaloprecision.com, read 2026: 2 h
per 25 mm, specimens of 25 mm.

The catalogue's curve is from Eastern Tool Steel Service. The page has lost half of its tables;
what is left is compared. Its A2 is half of the catalogue's own curve.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "100mncrw4": (2, {371: "53"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
