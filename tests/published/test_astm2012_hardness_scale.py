"""ASTM E140-12b, Standard hardness conversion tables for metals, 2012, Table 1, non-austenitic
steels (Rockwell C range), as reprinted by Encore Metals; from memory where marked.
"""

import pytest

from selector.hardness_scale import hb_from_hv, hrc_from_hv, hv_from_hb, hv_from_hrc
from tests.printed import agrees

ROWS = [
    pytest.param("68", "940", None, id="68 HRC"),
    pytest.param("65", "832", "739", id="65 HRC (HB from memory)"),
    pytest.param("60", "697", "654", id="60 HRC (HB from memory)"),
    pytest.param("55", "595", "560", id="55 HRC"),
    pytest.param("50", "513", "481", id="50 HRC"),
    pytest.param("48", "484", "455", id="48 HRC (HB from memory)"),
    pytest.param("45", "446", "421", id="45 HRC"),
    pytest.param("40", "392", "371", id="40 HRC"),
    pytest.param("35", "345", "327", id="35 HRC (from memory)"),
    pytest.param("30", "302", "286", id="30 HRC"),
    pytest.param("20", "238", "226", id="20 HRC"),
]


@pytest.mark.parametrize(("hrc", "hv", "hb"), ROWS)
def test_row(hrc, hv, hb):
    assert agrees(float(hv_from_hrc(float(hrc))), hv)
    assert agrees(float(hrc_from_hv(float(hv))), hrc)
    if hb is not None:
        assert agrees(float(hb_from_hv(float(hv), scale="ASTM E140")), hb)
        assert agrees(float(hv_from_hb(float(hb), scale="ASTM E140")), hv)


# Bracketed rows below the normal range, from memory.
@pytest.mark.parametrize(("hrc", "hv"), [("18", "230"), ("10", "196"), ("0", "160")])
def test_bracketed_row_serves_arithmetic_only(hrc, hv):
    assert agrees(float(hv_from_hrc(float(hrc), outside="extend")), hv)
    assert agrees(float(hrc_from_hv(float(hv), outside="extend")), hrc)
