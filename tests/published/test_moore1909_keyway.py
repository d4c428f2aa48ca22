"""H. F. Moore, The effect of keyways on the strength of shafts, University of Illinois
Engineering Experiment Station Bulletin 42, 1909 (from memory): 1 - 0.2 w/D - 1.1 h/D of the
elastic strength is left.
"""

import pytest

from selector.mechanics.net_section import keyway_share
from tests.printed import agrees


@pytest.mark.parametrize(
    ("width", "printed"),
    [
        pytest.param(0.25, "0.81", id="width a quarter, depth an eighth of the shaft"),
        pytest.param(0.50, "0.62", id="width a half, depth a quarter of the shaft"),
    ],
)
def test_share_of_a_shaft_with_a_keyway(width, printed):
    # 0.8125 and 0.625 by the formula, cut to two digits.
    assert agrees(keyway_share(20.0 * width, 20.0).torsion, printed)
