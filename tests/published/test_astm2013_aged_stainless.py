"""ASTM A564/A564M, 2013, Hot-rolled and cold-finished age-hardening stainless steel bars (from
memory): least hardness of type 630 (17-4PH) by condition, in HRC. None of it was used in a fit.
"""

import pytest

from catalog import load_catalog
from selector.specimen.aged import aged

CATALOG = load_catalog()
# Ageing in °C and HRC at least, by condition.
LEAST = {
    "H900": (482, 40), "H925": (496, 38), "H1025": (552, 35),
    "H1075": (579, 32), "H1100": (593, 31), "H1150": (621, 28),
}  # fmt: skip


@pytest.mark.parametrize("condition", LEAST)
def test_bar_is_as_hard_as_its_condition_asks(condition):
    aged_c, least_hrc = LEAST[condition]
    (row,) = aged(CATALOG, CATALOG.steels["x5crnicunb16-4"], at_c=[float(aged_c)]).rows
    assert least_hrc <= row.hrc.p05 <= row.hrc.p50 < least_hrc + 7.0
