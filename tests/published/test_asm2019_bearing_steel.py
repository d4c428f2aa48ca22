"""ASM International, One Minute Mentor: Martensitic heat treating, news item of 12 June 2019:
52100 bearing steel after 2 h, the two ends of its range.

The catalogue's curve is measured by Lucefin Group; its as-quenched hardness is from here.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc

TABLES = {
    "100cr6": (2, {150: "64", 260: "58"}),
}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h) <= AIM_HRC
