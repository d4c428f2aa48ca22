"""EN 10025-2:2004, Hot rolled products of structural steels, Table 9: least temperature at
which a grade is warranted to take 27 J (Charpy V). From memory.

A warranty is a bound, not a mean: the relation must put the transition at or below it, for the
composition the grade is sold to.
"""

import pytest

from selector.mechanics.cold import TRANSITION_SD_C, pearlitic_transition_c

# Carbon and silicon of the grade, free nitrogen and grain (aluminium binds it and refines J2).
GRADES = [
    pytest.param(0.17, 0.25, 0.004, 0.02, "20", id="S235JR"),
    pytest.param(0.17, 0.25, 0.004, 0.02, "0", id="S235J0"),
    pytest.param(0.15, 0.25, 0.001, 0.012, "-20", id="S235J2"),
    pytest.param(0.20, 0.45, 0.001, 0.010, "-20", id="S355J2"),
    pytest.param(0.20, 0.25, 0.004, 0.02, "20", id="S275JR"),
]


@pytest.mark.parametrize(("carbon", "silicon", "nitrogen", "grain", "printed"), GRADES)
def test_a_grade_keeps_its_warranty(carbon, silicon, nitrogen, grain, printed):
    computed = pearlitic_transition_c(carbon, silicon, nitrogen, grain)
    assert computed <= float(printed) + TRANSITION_SD_C
    assert computed >= float(printed) - 80.0
