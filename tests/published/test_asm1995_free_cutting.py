"""ASM, Heat Treater's Guide, 2nd ed., 1995, p. 222, 1141 (two pages reprinted, read in 2026):
"for full hardness, oil quench sections under 9.525 mm"; as quenched about 52 HRC with carbon
near the high side, 48 to 52 over the range. None of it was used in a fit.
"""

import numpy as np
import pytest

from catalog import load_catalog
from selector.requirement.part import Section
from selector.specimen.specimen import specimen

KNOWN = load_catalog()


def in_oil(diameter_mm):
    """Return a round of 1141 as quenched in oil."""
    bar = Section(shape="round", size=diameter_mm, length=10.0 * diameter_mm)
    return specimen(KNOWN, KNOWN.steels["1141"], bar, KNOWN.media["oil"])


LEANEST = pytest.mark.xfail(
    strict=True,
    reason="one heat in eight of the grade's limits is less than half hard in the middle; the \
handbook speaks of bar as it usually comes",
)


@pytest.mark.parametrize("diameter_mm", [6.0, 8.0, pytest.param(9.5, marks=LEANEST)])
def test_a_section_that_oil_hardens_is_hard_through(diameter_mm):
    assert in_oil(diameter_mm).through().mean() >= 0.9


def test_a_section_three_times_as_thick_is_not():
    assert in_oil(28.5).through().mean() < 0.5


@pytest.mark.parametrize("printed_hrc", [pytest.param(52.0, id="52")])
def test_hardness_as_quenched(printed_hrc):
    low, high = np.quantile(in_oil(9.5).fresh.hrc[:, 0], (0.05, 0.95))
    assert low <= printed_hrc <= high
