"""EN ISO 4957, Tool steels, 1999, table of hot-work steels (one page, scribd.com 367943640,
read 2026): the least hardness after the tempering test. Its holding time is not on the page;
an hour is taken.

A least hardness, so the catalogue lies at or above it, and by no more than a sound heat does.
50CrMoV13-15, 56 HRC at 510 °C, is left out: tested from 1010 °C, where the catalogue hardens it
from 940 to 970 °C as S7, which tempers to 52.
"""

import pytest

from tests.catalogued import catalogued_hrc

# Tempering temperature, least HRC.
LEAST_HRC = {
    "55nicrmov7": (500.0, 42.0),
    "x37crmov5-1": (550.0, 48.0),
    "x40crmov5-1": (550.0, 50.0),
    "x30wcrv9-3": (600.0, 48.0),
}
# The standards ask of a sound heat no more than what it is sure to reach.
MOST_ABOVE_HRC = 5.0


@pytest.mark.parametrize("slug", LEAST_HRC)
def test_a_tempered_test_piece_is_as_hard_as_the_standard_asks(slug):
    temper_c, least = LEAST_HRC[slug]
    assert least <= catalogued_hrc(slug, temper_c, 1.0) <= least + MOST_ABOVE_HRC
