"""Lucefin Group, technical card 1.2344, 2013 (read): round of 20 mm in oil from 1040 °C,
tempered in steps of 50 °C, the first of fourteen values as tempered at 50 °C, time not stated,
2 h taken; and gas nitriding by hours, heat not stated, 520 °C taken.

The catalogue takes composition and critical temperatures from this card, its curve from others.
"""

import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc
from tests.layer_forecast import inside, nitride_samples

TABLES = {
    "x40crmov5-1": (
        2,
        1040.0,
        {
            100: "54", 150: "53", 200: "52", 250: "51.5", 300: "52", 350: "53", 400: "54",
            450: "56", 500: "56", 550: "52", 600: "48", 650: "42", 700: "32",
        },
    ),
}  # fmt: skip
STEEL_WT_PCT = {"C": 0.385, "Cr": 5.15, "Mo": 1.35, "V": 1.0}
NITRIDED_C = 520.0
NITRIDED_MM = {10: "0.125", 20: "0.180", 40: "0.250", 60: "0.300"}


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, heat_c, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h, heat_c) <= AIM_HRC


@pytest.mark.parametrize("hours", NITRIDED_MM)
def test_a_layer_is_as_deep_as_the_card_says(hours):
    assert inside(NITRIDED_MM[hours], nitride_samples(STEEL_WT_PCT, NITRIDED_C, hours))
