"""Polymetal (Pune), page of 410 and 420, read 2026: 420 as quenched from 980 to 1065 °C in HB,
and both tempered at 205 to 370 °C. CTW Steel, page of 420, read 2026: tempered at 150 to 205
°C.

None is the source of a curve; the hardness of 410 as quenched has this page among its sources.
"""

import pytest

from selector.hardness_scale import hrc_from_hb
from tests.catalogued import AIM_HRC, AS_QUENCHED, catalogued_hrc

AS_QUENCHED_420_HB = ("448", "564")
TEMPERED_HRC = {"x12cr13": ("38", "47"), "x30cr13": ("48", "56")}


@pytest.mark.parametrize("slug", ["x20cr13", "x30cr13"])
def test_420_as_quenched(slug):
    low, high = (float(hrc_from_hb(float(hb))) for hb in AS_QUENCHED_420_HB)
    assert low <= catalogued_hrc(slug, AS_QUENCHED, 0.0) <= high


@pytest.mark.parametrize("slug", TEMPERED_HRC)
@pytest.mark.parametrize("temper_c", [205.0, 370.0])
def test_tempered_cold(slug, temper_c):
    low, high = map(float, TEMPERED_HRC[slug])
    assert low <= catalogued_hrc(slug, temper_c, 1) <= high


def test_420_tempered_for_the_most_hardness():
    assert abs(catalogued_hrc("x30cr13", 180.0, 1) - float("52")) <= AIM_HRC
