import pytest

from selector.versus.axis import QUANTITIES, at_prices, bar_per_kg, lines, of_quantity
from tests.selector.versus.test_side import CAREFUL, CATALOG, JOB, PAIR, side


def axes(*pair):
    return {line.axis: line for line in lines(pair, JOB)}


def test_every_axis_begins_where_the_part_stands():
    for line in axes(*PAIR).values():
        assert line.ends[0] <= line.now <= line.ends[1]
        _, there = line.at(line.now)
        assert there.catalog.prices.currency == JOB.catalog.prices.currency
    assert axes(*PAIR)["quantity"].ends[1] == QUANTITIES[-1]


def test_a_place_on_an_axis_changes_that_alone():
    assert of_quantity(JOB, 7.2).asked.part.quantity == 7
    dear = at_prices(JOB, {"labour_per_h": 90.0})
    assert dear.catalog.prices.labour_per_h == 90.0
    assert (
        dear.catalog.prices.model_copy(update={"labour_per_h": JOB.catalog.prices.labour_per_h})
        == JOB.catalog.prices
    )
    assert dear.asked == JOB.asked


def test_the_bar_of_the_second_alone_gets_dearer():
    (_, there), second = axes(*PAIR)["bar price"].at(4.0), PAIR[1].treatment
    first = bar_per_kg(PAIR[0].treatment, there.catalog.prices)
    assert first == bar_per_kg(PAIR[0].treatment, CATALOG.prices)
    assert bar_per_kg(second, there.catalog.prices) / first == pytest.approx(4.0)


def test_the_same_bar_twice_has_no_price_ratio():
    twin = side(CAREFUL.replace("200c", "225c"), JOB)
    assert "bar price" not in axes(PAIR[0], twin)


def test_what_is_not_quenched_has_no_crack_rate_to_turn():
    plain = [side(f"{s}/as-bought/none", JOB) for s in ("c45/cold-drawn", "s235/cold-drawn")]
    assert "crack rate" not in axes(*plain)
