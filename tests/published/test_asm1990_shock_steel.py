"""ASM Handbook, Volume 1, 1990, nominal mechanical properties of group S tool steels, as
reprinted by Compraco (read 2026): S7 cooled in moving air from 940 °C, single temper.

The catalogue's curve is from Eastern Tool Steel Service; 650 °C lies beyond it.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "50crmov13-15": (1, {205: "58", 315: "55", 425: "53", 540: "51"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
