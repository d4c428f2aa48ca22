"""ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1, unalloyed and
low-alloy steel and cast steel.

Rows that the project does not hold as nodes: read on a reprint by 51tongren.cn (DIN 50150 / ISO
18265 Table A.1), or from memory where marked.
"""

import pytest

from selector.hardness_scale import (
    hb_from_hv,
    hrc_from_hv,
    hv_from_hrc,
    hv_from_tensile_mpa,
    tensile_mpa_from_hv,
)
from tests.printed import agrees

# HV, HB, tensile strength in MPa (printed to 5), HRC.
ROWS = [
    pytest.param(85, "80.7", 270, None, id="HV 85"),
    pytest.param(130, "124", 415, None, id="HV 130"),
    pytest.param(160, "152", 510, None, id="HV 160"),
    pytest.param(200, "190", 640, None, id="HV 200"),
    pytest.param(245, "233", 785, "21.3", id="HV 245"),
    pytest.param(275, "261", 880, "26.4", id="HV 275"),
    pytest.param(310, "295", 995, "31.0", id="HV 310"),
    pytest.param(350, "333", 1125, "35.5", id="HV 350"),
    pytest.param(360, "342", 1155, "36.6", id="HV 360 (1155 MPa from memory)"),
    pytest.param(410, "390", 1320, "41.8", id="HV 410"),
    pytest.param(550, "523", 1810, "52.3", id="HV 550 (from memory)"),
    pytest.param(600, "570", 1995, "55.2", id="HV 600 (from memory)"),
    pytest.param(700, None, None, "60.1", id="HV 700 (from memory)"),
    pytest.param(860, None, None, "65.9", id="HV 860 (from memory)"),
]


@pytest.mark.parametrize(("hv", "hb", "tensile_mpa", "hrc"), ROWS)
def test_row_between_the_nodes(hv, hb, tensile_mpa, hrc):
    if hb is not None:
        assert agrees(float(hb_from_hv(hv)), hb)
        assert abs(float(tensile_mpa_from_hv(hv)) - tensile_mpa) <= 2.5
        assert hv_from_tensile_mpa(tensile_mpa) == pytest.approx(hv, abs=2.5 / 3.0)
    if hrc is not None:
        assert agrees(float(hrc_from_hv(hv, scale="ISO 18265")), hrc)
        assert hv_from_hrc(float(hrc), scale="ISO 18265") == pytest.approx(hv, abs=2.0)
