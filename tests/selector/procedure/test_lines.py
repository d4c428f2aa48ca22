import pytest

from selector.procedure.lines import short_lines
from selector.record import StepOut
from tests.procedure import steps_of


def test_two_lines_of_a_torch_and_an_oven():
    first, then = short_lines(steps_of("42crmo4", "local-torch", "oil"))
    assert first.startswith("heat to 8")
    assert "(cherry in the shade, past where the magnet lets go)" in first
    assert ", zone and 12 mm past it, hold " in first
    assert first.endswith("at 50 °C, hot end first, moving")
    assert then.startswith("temper ")
    assert "min at " in then


@pytest.mark.parametrize(
    ("steel", "route", "medium", "begins"),
    [
        ("c45", "as-bought", None, "leave it as bought"),
        ("linear-shaft", "buy-hard-element", None, "buy it hard"),
        ("16mncr5", "subcontract-carburise", "oil", "order: carburise"),
    ],
)
def test_one_line_of_what_has_no_temper_of_its_own(steel, route, medium, begins):
    (line,) = short_lines(steps_of(steel, route, medium))
    assert line.startswith(begins)


def test_steps_without_a_short_form_are_left_out():
    assert short_lines([StepOut(stage="bar", action="Be sure of the bar")]) == ()
