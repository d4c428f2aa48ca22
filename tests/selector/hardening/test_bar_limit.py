"""Refusals of bars, heats and steels that no model answers."""

import math

import pytest

from selector.errors import OutOfRangeError
from selector.hardening.bar_limit import alloy_wt_pct
from selector.hardening.quenched_bar import quenched_bar

C45 = {"C": 0.45, "Mn": 0.65, "Si": 0.25, "Cr": 0.1}


def test_iron_and_carbon_are_no_alloy():
    assert alloy_wt_pct({"Fe": 98.0, **C45}) == pytest.approx(1.0)


def test_steel_that_hardens_otherwise_is_refused():
    with pytest.raises(OutOfRangeError, match=r"composition_wt_pct .*15 % alloy.*28.5 %"):
        quenched_bar({"C": 0.05, "Cr": 18.0, "Ni": 9.0, "Mn": 1.5}, 20.0, "water", 1050.0)


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        ((C45, 0.0, "water", 840.0), "diameter_mm must be between 1 and 500 mm; got 0 mm"),
        ((C45, math.nan, "water", 840.0), "diameter_mm must be .*got nan mm"),
        ((C45, 20.0, "water", 300.0), "austenitise_c must be between 710 and 1300 °C; got 300"),
        ((C45, 20.0, "water", math.nan), "austenitise_c must be .*got nan °C"),
        ((C45, 20.0, "mercury", 840.0), "medium must be one of .*got mercury"),
        ((C45, 20.0, "water", 840.0, 150.0), "bath_temperature_c must be .*got 150 °C"),
        (
            ({"Mn": 0.7}, 20.0, "water", 840.0),
            "composition_wt_pct must be with carbon; got no C",
        ),
        (({"C": -0.4}, 20.0, "oil", 840.0), r"composition_wt_pct.C must be .*got -0.4 wt %"),
        (({"C": 0.4, "Mn": math.nan}, 20.0, "oil", 840.0), r"composition_wt_pct.Mn .*got nan"),
    ],
)
def test_what_no_model_answers_is_refused(arguments, message):
    with pytest.raises(OutOfRangeError, match=message):
        quenched_bar(*arguments)
