"""Metals Handbook, ASM, vol. 1, 1990, and tool steel selection tables like it: usual working
hardness of tools and parts. From memory.

The window derived for a duty is to be the one a toolmaker asks for: both ends within 2 HRC.
"""

import pytest

from selector.job.demand import demands
from tests.dog import GONE, asked

# Wear, severity, impact of the duty; the hardness printed.
TOOLS = [
    ("wood chisels and plane irons", "abrasive", "medium", "none", (58, 62)),
    ("cold work punches and dies", "abrasive", "medium", "none", (58, 62)),
    ("gauges, measuring tools", "abrasive", "heavy", "none", (60, 64)),
    ("shear blades", "edge-impact", "light", "light", (54, 58)),
    ("cold chisel cutting edge", "edge-impact", "medium", "hammered", (53, 60)),
    ("centre punch or drift tip", "edge-impact", "light", "hammered", (54, 60)),
    ("hammer face, engineer", "edge-impact", "heavy", "hammered", (50, 58)),
    ("cold chisel, heavy", "edge-impact", "heavy", "hammered", (53, 59)),
    ("rivet snap, header", "edge-impact", "heavy", "hammered", (54, 59)),
    ("blanking punch, thin sheet", "abrasive", "medium", "light", (58, 62)),
    ("gear teeth, carburised", "rolling-contact", "medium", "none", (58, 62)),
]
HARDER = pytest.mark.xfail(
    strict=True,
    reason="printed for what flame and induction give; the window asks for what wears best",
)


def window(wear, severity, impact):
    duty = {"zone.0.wear": wear, "zone.0.severity": severity, "load.impact": impact}
    computed = demands(asked({"zone.0.hardness": GONE, **duty}))[0]
    return computed.low_hrc, computed.high_hrc


@pytest.mark.parametrize(
    ("wear", "severity", "impact", "printed"),
    [
        *(pytest.param(*row[1:], id=row[0]) for row in TOOLS),
        pytest.param(
            "sliding", "medium", "none", (50, 58), id="spindle seats, induction hardened",
            marks=HARDER,
        ),
        pytest.param("sliding", "medium", "none", (50, 60), id="wear plates"),
    ],
)  # fmt: skip
def test_a_derived_window_is_the_usual_working_hardness(wear, severity, impact, printed):
    assert window(wear, severity, impact) == pytest.approx(printed, abs=2)


def test_shafts_and_spanners_of_38_to_45_hrc_fit_a_driving_end():
    square = {"shape": "square", "size": 12.7, "length": 15}
    computed = demands(asked({"zone.1.section": [2], "part.section.1": square}))[1]
    assert computed.low_hrc == pytest.approx(38, abs=2)
    assert computed.high_hrc >= 45
