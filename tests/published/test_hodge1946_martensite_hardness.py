"""J. M. Hodge and M. A. Orehoski, Relationship between hardenability and percentage of
martensite in some low-alloy steels, Trans. AIME 167, 1946, 627-642, as tabled in Timken,
Practical Data for Metallurgists (from memory).

Rows between the kept nodes are held to 0.2 HRC, a tenth of the scatter of the readings.
"""

import pytest

from selector.metallurgy.martensite import fraction_from_hardness, hardness
from tests.printed import agrees

NODES = [
    (0.10, 99.9, "38.5"), (0.10, 50, "26.2"), (0.16, 95, "37.6"), (0.28, 90, "43.4"),
    (0.34, 80, "43.4"), (0.40, 99.9, "56.1"), (0.40, 50, "42.4"), (0.60, 99.9, "64.3"),
]  # fmt: skip
BETWEEN = [
    (0.14, 99.9, "40.6"), (0.20, 80, "35.0"), (0.20, 50, "31.8"), (0.24, 95, "43.2"),
    (0.30, 99.9, "50.3"), (0.32, 90, "45.8"), (0.50, 99.9, "60.9"), (0.58, 95, "59.5"),
]  # fmt: skip


def case_id(case):
    return f"{case[0]:.2f} C, {case[1]} % martensite"


@pytest.mark.parametrize(
    ("carbon", "percent", "printed"), [pytest.param(*c, id=case_id(c)) for c in NODES]
)
def test_row_kept_as_node(carbon, percent, printed):
    assert agrees(float(hardness(carbon, percent / 100.0)), printed)


@pytest.mark.parametrize(
    ("carbon", "percent", "printed"), [pytest.param(*c, id=case_id(c)) for c in BETWEEN]
)
def test_row_between_nodes(carbon, percent, printed):
    assert agrees(float(hardness(carbon, percent / 100.0)), printed, scatter=0.21)


@pytest.mark.parametrize(
    ("carbon", "percent", "printed"), [pytest.param(*c, id=case_id(c)) for c in NODES]
)
def test_row_read_backwards(carbon, percent, printed):
    back = float(fraction_from_hardness(carbon, float(printed)))
    assert agrees(100.0 * back, str(percent))
