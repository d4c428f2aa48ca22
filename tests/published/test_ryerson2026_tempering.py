"""Ryerson tool steel W2 with 1.00 % C, as quoted in a toolmaker's handbook (issuhub.com 4752,
p. 114, read 2026): disc of 16 mm, 790 °C, water; time not stated, 1 h taken.

The catalogue's plain carbon tool steel is from W1 data of another house, from memory.
"""

import pytest

from tests.catalogued import AIM_HRC, AS_QUENCHED, mean_miss_hrc

TABLES = {
    "c105u": (1, {AS_QUENCHED: "67", 149: "65", 204: "62", 260: "59", 316: "55"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
