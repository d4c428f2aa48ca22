import pytest

from selector.metallurgy.hardening_heat import STRUCTURE, structure_of
from selector.metallurgy.transformation import SPHEROIDISED_ABOVE_WT_PCT


@pytest.mark.parametrize("condition", ["annealed", "hot-rolled", "cold-drawn", "as found"])
def test_soft_bar_rich_in_carbon_is_spheroidised_and_lean_bar_is_not(condition):
    assert structure_of(condition, SPHEROIDISED_ABOVE_WT_PCT + 0.1) == "spheroidised"
    assert structure_of(condition, SPHEROIDISED_ABOVE_WT_PCT - 0.1) == "ferrite-pearlite"


@pytest.mark.parametrize("carbon", [0.4, 1.1])
def test_what_was_quenched_or_normalised_keeps_its_structure_whatever_its_carbon(carbon):
    for condition in ("normalised", "prehard", "solution-treated"):
        assert structure_of(condition, carbon) == STRUCTURE[condition]
