import pytest

from selector.advice.output import advice_out
from selector.advice.table import option_table


@pytest.fixture(scope="module")
def answer(advice):
    return advice_out(advice)


def test_every_option_is_one_row_in_order(answer):
    frame = option_table(answer)
    assert list(frame["id"]) == [option.id for option in answer.options]
    assert list(frame["place"]) == list(range(1, len(answer.options) + 1))


def test_numbers_are_those_of_the_advice_with_their_units_in_the_names(answer):
    frame, first = option_table(answer), answer.options[0]
    assert frame["surface_hrc"][0] == first.hardness.surface.p50
    assert frame["cost_eur_p95"][0] == first.cost.spread.p95
    assert frame["depth_mm_p05"][0] == first.hardness.depth_mm.p05
