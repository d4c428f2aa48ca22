"""A colour scale under a step holds the step's own figures, in the order of the tables."""

from itertools import pairwise

import pytest

from selector.handover.colour_scale import scale_of
from selector.heat.colour import heat_colour, temper_colour
from selector.record import StepOut

HEAT = StepOut(
    stage="heat", action="x", temperature_c=840.0, band_c=(820.0, 860.0), colour="cherry"
)
TEMPER = StepOut(
    stage="temper",
    action="x",
    temperature_c=225.0,
    band_c=(200.0, 225.0),
    colour="purple",
    minutes=60.0,
)


@pytest.mark.parametrize("step", [HEAT, TEMPER])
def test_cells_lie_side_by_side_from_end_to_end(step):
    scale = scale_of(step)
    cells = scale["cells"]
    assert cells[0]["from"] == scale["low"] < step.band_c[0]
    assert cells[-1]["to"] == scale["high"] > step.band_c[1]
    assert all(a["to"] == b["from"] for a, b in pairwise(cells))
    assert scale["band"] == list(step.band_c)


def test_the_words_are_those_that_the_colours_are_told_by():
    for cell in scale_of(HEAT)["cells"]:
        assert heat_colour(0.5 * (cell["from"] + cell["to"])).name == cell["name"]
    for cell in scale_of(TEMPER)["cells"][1:-1]:
        middle = 0.5 * (cell["from"] + cell["to"])
        assert temper_colour(middle, 3600.0).name == cell["name"]
    held = next(c for c in scale_of(TEMPER)["cells"] if c["from"] <= 225.0 <= c["to"])
    assert held["name"] == TEMPER.colour


def test_a_temper_says_its_time_and_a_heat_its_magnet():
    assert scale_of(TEMPER)["said"] == "200 to 225 °C serves after 60 min"
    assert scale_of(TEMPER)["magnet"] is None
    assert scale_of(HEAT)["magnet"] == 770.0


@pytest.mark.parametrize(
    "changes",
    [{"colour": None}, {"temperature_c": None}, {"stage": "quench"}, {"band_c": None}],
)
def test_what_nobody_judges_by_colour_has_no_scale(changes):
    assert scale_of(HEAT.model_copy(update=changes)) is None
