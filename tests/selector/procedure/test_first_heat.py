from dataclasses import replace

import pytest

from selector.procedure.bar import proved
from selector.procedure.first_heat import softened
from selector.requirement.workshop import Stock
from tests.procedure import KILN, doing

FIRES = [{"source": "forge"}, {"source": "oxy-propane"}]
HARD, WELDED = {"part.condition": "hard"}, {"part.condition": "welded"}


def first(changes, *treatment):
    return softened(doing(*(treatment or ("42crmo4", "through-torch", "oil")), changes))


def test_a_plain_bar_needs_no_first_heat():
    assert first({}) == []


def test_a_head_is_forged_out_of_a_thinner_bar_and_normalised():
    square = {"part.section.0.shape": "square", "part.section.0.size": 22, "part.feature": []}
    do = doing("42crmo4", "local-torch", "oil", {**square, "workshop.heat": FIRES})
    work = replace(do.work, stock=Stock(steel="42CrMo4", size=26.0, evidence="receipt"))
    forged = replace(do, prediction=replace(do.prediction, treatment=work))
    (step,) = softened(forged)
    assert step.action.startswith("Forge the head to shape")
    assert "normalise" in step.action
    assert "forged to shape out of the 26 mm bar" in proved(forged).action


@pytest.mark.parametrize(
    ("changes", "words", "minutes"),
    [(HARD, "bury it in dry ash", 5), ({**HARD, **KILN}, "leave it in to cool", 60)],
    ids=["torch", "kiln"],
)
def test_hard_steel_is_softened_by_an_hour_in_a_furnace_or_a_night_in_ash(
    changes, words, minutes
):
    (step,) = first(changes)
    assert step.action.startswith("Soften it first: 700 °C")
    assert words in step.action
    assert step.minutes == minutes


def test_plating_comes_off_and_a_weld_is_normalised_before_the_hardening_heat():
    (plated,) = first({"part.condition": "plated"})
    assert "Strip the plating" in plated.action
    (welded,) = first(WELDED, "c55", "through-torch", "water")
    assert "Normalise the weld first: 855 °C" in welded.action
    assert first(WELDED, "c45", "as-bought", None) == []
