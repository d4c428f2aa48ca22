"""F. D. Garland, O1 tool steel, newsletter of the Upper Midwest Blacksmiths Association 17,
no. 1, after sheets of Carpenter Technology and a lecture of 1994 (artmetal.com, read 2026):
middle of the printed ranges, at least 1 h.

The catalogue's O1 curve is from Eastern Tool Steel Service.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "100mncrw4": (
        1,
        {
            149: "64",
            177: "63",
            204: "61.5",
            232: "61",
            260: "59",
            316: "56",
            371: "53",
            427: "49",
        },
    ),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
