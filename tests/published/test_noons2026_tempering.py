"""Noon's Knives, A2 tool steel, UNS T30102 (noonsknives.blogspot.ca, read 2026), after a
producer's sheet: hardened from 960 °C in air, 2 h.

The catalogue's curve is from Eastern Tool Steel Service.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "x100crmov5": (2, {177: "62", 538: "56"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
