import json
import math

import numpy as np
import pytest

from selector.flame.output import flame_out, map_of, schema, stretch_of
from selector.flame.plot import axial_text, figure, section_text
from selector.flame.record import FlameOut
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.once import flamed


@pytest.fixture(scope="module")
def shown():
    answer = flamed()
    return answer, flame_out(answer)


def test_the_answer_is_plain_data_that_reads_back(shown):
    _, out = shown
    text = json.dumps(out.model_dump(mode="json"), allow_nan=False)
    assert FlameOut.model_validate_json(text) == out


def test_the_schema_names_every_field(shown):
    _, out = shown
    assert set(schema()["properties"]) == set(out.model_dump())


def test_the_map_carries_hardness_and_hottest_place_along_and_across(shown):
    _, out = shown
    field = out.map
    assert len(field.hrc) == len(field.hottest_c) == len(field.across_mm)
    assert {len(row) for row in field.hrc} == {len(field.along_mm)}
    assert max(v for row in field.hottest_c for v in row if v is not None) > 800.0


def test_the_map_is_that_of_the_option(shown):
    """Its softest surface and its core are what the option forecasts at the middle."""
    answer, out = shown
    option, once = answer.best.option, answer.job.middle()
    meant = predict(prepare(option.treatment, once), option.choice.temper)
    along = np.array(out.map.along_mm)
    inside = (along >= out.map.zone_mm[0]) & (along <= out.map.zone_mm[1])
    softest = np.array(out.map.surface_hrc, float)[inside].min()
    assert softest == pytest.approx(meant.surface_hrc[0], abs=1.0)
    at = int(np.argmin(np.abs(along - 0.5 * sum(out.map.zone_mm))))
    assert out.map.core_hrc[at] == pytest.approx(meant.core_hrc[0], abs=1.5)


def test_the_set_up_says_heat_colour_hold_reach_and_way_in(shown):
    done = shown[1].families[0].option.set_up
    assert done.heat_c > 800.0
    assert done.colour
    assert done.hold_s > 0.0
    assert done.past_zone_mm > 0.0
    assert done.way_in.startswith("hot end first")
    assert done.medium == "warm-water"


def test_cautions_are_those_of_the_option(shown):
    _, out = shown
    listed = {caution.id for caution in out.cautions}
    assert set(out.families[0].option.cautions) <= listed


def test_the_map_is_said_in_characters_and_as_a_figure(shown):
    answer, _ = shown
    part, hard = (
        stretch_of(answer.job, answer.best.option),
        map_of(answer.job, answer.best.option),
    )
    lines = axial_text(part, hard)
    assert any("=" in line for line in lines)
    assert len(section_text(part, hard)) > 5
    assert len(figure(part, hard, "dog").axes) >= 3


def test_a_no_without_an_option_has_no_map_and_no_figures():
    out = flame_out(flamed(None, "S235JR"))
    assert out.map is None
    assert all(family.figures is None for family in out.families)


def test_figures_are_finite(shown):
    for family in shown[1].families:
        if family.figures is not None:
            assert math.isfinite(family.figures.hottest_c)
            assert family.figures.hard_to_mm >= family.figures.hard_from_mm
            assert family.figures.cooling[0].jominy_mm <= family.figures.cooling[1].jominy_mm
