import pytest

from selector.procedure.first_heat import softened
from tests.procedure import KILN, doing

HARD, WELDED = {"part.condition": "hard"}, {"part.condition": "welded"}


def first(changes, *treatment):
    return softened(doing(*(treatment or ("42crmo4", "through-torch", "oil")), changes))


def test_a_plain_bar_needs_no_first_heat():
    assert first({}) == []


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
