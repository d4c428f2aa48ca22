from dataclasses import replace

import numpy as np
import pytest

from selector.decision.output import (
    cost_out,
    failing_out,
    failure_cost_out,
    movement_out,
    temper_out,
)
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.temper_choice import Choice
from tests.dog import asked


def chosen(temper):
    return Choice(temper, (200.0, 250.0), 55.0, 2.0)


@pytest.mark.parametrize(
    ("temper", "colour"),
    [(Temper("oven", 200.0, 3600.0), True), (Temper("furnace", 450.0, 3600.0), False)],
)
def test_a_temper_beyond_the_colours_shows_none(temper, colour):
    plain = temper_out(chosen(temper))
    assert (plain.colour is not None) == colour
    assert (plain.temperature_c, plain.time_min) == (temper.temperature_c, 60.0)
    assert plain.band_c == (200.0, 250.0)


def test_where_nothing_is_tempered_there_is_no_heat_to_tell():
    plain = temper_out(chosen(NO_TEMPER))
    assert (plain.label, plain.means, plain.cycles) == ("none", "none", 0)
    assert (plain.temperature_c, plain.time_min, plain.band_c, plain.colour) == (None,) * 4


def test_cost_and_movement_are_those_of_the_prediction(advice):
    for option in advice.options:
        known = option.judged.prediction
        assert cost_out(known.bill).p50 == pytest.approx(np.median(known.bill.cost), abs=1e-3)
        assert cost_out(known.bill).unit == known.bill.currency
        assert movement_out(known.movement).p50 == pytest.approx(
            np.median(known.movement.moved_mm), abs=1e-3
        )


def test_a_failure_costs_its_price_times_its_chance(advice):
    option, price = advice.options[0], {"load.failure_cost": 1000}
    chance = option.judged.failing_all
    assert failing_out(option).unit == "-"
    assert failure_cost_out(option, asked()) is None
    assert failure_cost_out(option, asked(price)).p50 == pytest.approx(1000 * chance, abs=1e-3)


def test_an_unknown_chance_of_failing_has_no_cost(advice):
    option = advice.options[0]
    judged = replace(option.judged, failing=np.full(4, np.nan))
    plain = failure_cost_out(replace(option, judged=judged), asked({"load.failure_cost": 10}))
    assert plain.p50 is None
    assert plain.inputs["chance"] == "unknown"
