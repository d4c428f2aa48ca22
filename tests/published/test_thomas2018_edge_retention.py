"""L. Thomas, Which steel has the best edge retention? Part 2, knifesteelnerds.com, 26 November
2018: the equation and its examples as quoted in his Can CATRA predict rope cutting
performance?, 11 February 2019 (read).

S90V holds 13 % of chromium carbide rich in vanadium, at 14.6 mm a percent, which no steel of
ours has: it is entered as M7C3 of the same effect.
"""

import pytest

from selector.mechanics.wear import card_cut_mm
from tests.printed import agrees


@pytest.mark.parametrize(
    ("hardness", "carbides", "printed"),
    [
        pytest.param(62.0, {"M7C3": 13 * 14.6 / 11.2, "MC": 9.0}, "714", id="S90V"),
        pytest.param(56.0, {"M7C3": 3.0}, "227", id="420HC"),
    ],
)
def test_card_cut_at_an_edge_of_30_degrees(hardness, carbides, printed):
    assert agrees(float(card_cut_mm(hardness, 30.0, carbides)), printed)
