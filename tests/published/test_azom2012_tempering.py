"""AZoM, D2 Tool Steel: High-Carbon, High-Chromium, Cold-Work Steel (UNS T30402), article 6214,
2012: hardened from 1010 °C in air; time not stated, 2 h taken.

The catalogue's curve is from US producers' sheets, from memory.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "x153crmov12": (2, {204: "61", 537: "54"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
