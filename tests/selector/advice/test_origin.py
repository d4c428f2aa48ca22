from typing import get_args

import pytest

from catalog import load_catalog
from catalog.values import SEEN_WORDS, Seen
from selector.advice.origin import origins
from selector.advice.output import advice_out
from selector.need.need import need
from tests.dog import asked


def test_every_predicted_figure_has_relation_inputs_and_source(advice):
    answer = advice_out(advice, top=1)
    lines = origins(answer)
    surface = next(line for line in lines if line.startswith("options 1.hardness.surface: "))
    assert "HRC" in surface
    assert "; by " in surface
    assert "; from steel " in surface
    assert "; source: " in surface
    assert any(line.startswith("options 1.cost.spread: ") for line in lines)


def test_a_limit_that_is_left_is_said(advice):
    answer = advice_out(advice, top=1)
    option = answer.options[0]
    beyond = option.hardness.surface.model_copy(update={"validity": ("Cr above 2 wt %",)})
    lines = origins(option.hardness.model_copy(update={"surface": beyond}))
    assert "outside its range: Cr above 2 wt %" in lines[0]


def test_what_is_unknown_is_said_to_be(advice):
    option = advice_out(advice, top=1).options[0]
    gone = option.hardness.surface.model_copy(update={"p50": None})
    assert origins(option.hardness.model_copy(update={"surface": gone}))[0].startswith(
        "surface: unknown; by "
    )


@pytest.mark.parametrize("seen", get_args(Seen))
def test_a_catalogue_value_has_place_and_how_it_was_seen(seen):
    steel = load_catalog().steels["115crv3"]
    carbon = steel.composition_wt_pct["C"].model_copy(update={"seen": seen})
    held = steel.model_copy(update={"composition_wt_pct": {"C": carbon}})
    (said,) = [line for line in origins(held) if line.startswith("composition_wt_pct.C: ")]
    assert said.endswith(f"source: {carbon.source}, {carbon.at}, {SEEN_WORDS[seen]}")


def test_a_soft_figure_is_said_in_brinell():
    lines = origins(need(asked()))
    least = next(line for line in lines if line.startswith("sections 1.least: "))
    assert "HB" in least
    assert "torque 122" in least
