"""Akrostal, product pages of tool steel, akrostal.pl, read 2026: X40CrMoV5-1 in oil from 1020
°C and C45U in water from 810 °C, tempering time not stated, 1 h taken.

Neither is the source of a curve, nor was it used in a fit.
"""

import numpy as np
import pytest

from tests.catalogued import AIM_HRC, mean_miss_hrc
from tests.tempered_by_composition import SCATTER_HRC, miss_and_sd_hrc

TABLES = {
    "x40crmov5-1": (
        1,
        1020.0,
        {350: "53", 400: "54", 450: "55.5", 500: "56", 550: "52.5", 600: "48", 650: "43"},
    ),
}
C45U = ({"C": 0.46, "Si": 0.28, "Mn": 0.70}, (200, 250, 300, 350, 400, 450, 500))
C45U_HRC = "54 52 48 45 42 39 35"


@pytest.mark.parametrize("slug", TABLES)
def test_catalogue_agrees_with_the_table(slug):
    time_h, heat_c, table = TABLES[slug]
    assert mean_miss_hrc(slug, table, time_h, heat_c) <= AIM_HRC


def test_carbon_tool_steel_by_composition():
    miss, sd = miss_and_sd_hrc(*C45U, 1.0, C45U_HRC)
    assert np.abs(miss).mean() <= SCATTER_HRC
    assert (np.abs(miss) <= 1.645 * sd).all()
