from dataclasses import replace

import pytest

from selector.option.cost import bar_per_kg
from selector.requirement.workshop import Stock
from selector.versus.axis import QUANTITIES, lines
from selector.versus.side import Pair
from tests.selector.versus.test_side import CAREFUL, CATALOG, here, pair, side


def axes(two):
    return {line.axis: line for line in lines(two)}


def test_every_axis_begins_where_the_part_stands():
    for line in axes(pair()).values():
        assert line.ends[0] <= line.now <= line.ends[1]
        there = line.at(line.now).job
        assert there.catalog.prices.currency == here().catalog.prices.currency
    assert axes(pair())["quantity"].ends[1] == QUANTITIES[-1]


def test_a_place_on_an_axis_changes_that_alone():
    assert pair().of_quantity(7.2).job.asked.part.quantity == 7
    dear = pair().at_prices({"labour_per_h": 90.0}).job
    assert dear.catalog.prices.labour_per_h == 90.0
    assert (
        dear.catalog.prices.model_copy(
            update={"labour_per_h": here().catalog.prices.labour_per_h}
        )
        == here().catalog.prices
    )
    assert dear.asked == here().asked


def test_the_bar_of_the_second_alone_gets_dearer():
    prices, (first, second) = axes(pair())["bar price"].at(4.0).job.catalog.prices, pair().sides
    price = bar_per_kg(first.treatment, prices)
    assert price == bar_per_kg(first.treatment, CATALOG.prices)
    assert bar_per_kg(second.treatment, prices) / price == pytest.approx(4.0)


def test_the_same_bar_twice_has_no_price_ratio():
    twin = side(CAREFUL.replace("200c", "225c"), here())
    assert "bar price" not in axes(Pair(pair().first, twin, here()))


def test_a_bar_that_lies_in_the_rack_is_bought_at_no_price():
    one = pair().first
    work = replace(one.treatment, stock=Stock(steel="C45"))
    held = replace(one, ready=replace(one.ready, treatment=work))
    assert "bar price" not in axes(Pair(held, pair().second, here()))


def test_the_crack_rate_is_that_of_the_side_that_cracks_though_the_other_is_cheaper():
    bought = side("s235/cold-drawn/as-bought/none", here())
    assert axes(Pair(bought, pair().first, here()))["crack rate"].unit == "of the second"
    assert axes(Pair(pair().first, bought, here()))["crack rate"].unit == "of the first"


def test_what_is_not_quenched_has_no_crack_rate_to_turn():
    plain = [side(f"{s}/as-bought/none", here()) for s in ("c45/cold-drawn", "s235/cold-drawn")]
    assert "crack rate" not in axes(Pair(*plain, here()))
