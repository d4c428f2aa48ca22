from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from catalog import load_catalog
from selector import draws
from selector.cost import bill
from selector.surroundings import surroundings
from selector.treatment import NO_TEMPER, Temper
from tests.dog import asked, work

CATALOG = load_catalog()
NEVER = np.zeros(draws.COUNT)
OVEN = Temper("oven", 200.0, 3600.0)


def of(changes=None, treatment=None, temper=OVEN, crack=NEVER):
    return bill(treatment or work(), temper, surroundings(asked(changes), CATALOG), crack)


def middle(found):
    return float(np.median(found.cost))


def test_items_add_up_to_the_median_at_list_prices():
    found = of()
    assert middle(found) == pytest.approx(sum(found.items.values()), rel=0.01)
    assert all(value >= 0 for value in found.items.values())
    assert found.currency == CATALOG.prices.currency
    assert found.invented is CATALOG.prices.invented


def test_prices_scatter_with_the_shared_price_level_alone():
    level = draws.shared()["price_level"]
    found = np.log(of().cost)
    assert np.corrcoef(found, level)[0, 1] == pytest.approx(1.0)


@given(st.floats(0, 0.4), st.floats(0.01, 0.4))
@settings(max_examples=20)
def test_more_cracking_costs_more(rate, more):
    low, high = (of(crack=np.full(draws.COUNT, r)) for r in (rate, rate + more))
    assert (high.cost > low.cost).all()
    assert high.items["scrap"] > low.items["scrap"]


def test_half_of_the_parts_cracking_means_one_scrap_a_good_part():
    found = of(crack=np.full(draws.COUNT, 0.5))
    made = found.items["bar"] + found.items["machining"] + found.items["treatment"]
    assert found.items["scrap"] == pytest.approx(made)


@given(st.integers(1, 500), st.integers(1, 500))
@settings(max_examples=20)
def test_one_of_many_is_never_dearer(few, more):
    single, many = of({"part.quantity": few}), of({"part.quantity": few + more})
    assert middle(many) <= middle(single) + 1e-9


def test_a_larger_part_costs_more_steel_and_cutting():
    small, large = of(), of({"part.section.1.length": 600})
    assert large.items["bar"] > small.items["bar"]
    assert large.items["machining"] > small.items["machining"]


def test_a_bar_in_the_rack_costs_no_steel_and_no_waiting():
    stock = asked({"workshop.stock": [{"steel": "C45"}]}).workshop.stock[0]
    racked = of(treatment=replace(work(), stock=stock))
    assert racked.items["bar"] == 0
    assert racked.days < of().days


def test_what_is_not_heated_has_no_treatment_no_coupon_no_rework():
    found = of(treatment=work(route="as-bought", medium=None, source=None), temper=NO_TEMPER)
    assert [found.items[name] for name in ("treatment", "coupon", "rework")] == [0, 0, 0]


def test_a_firm_charges_at_least_its_minimum_and_carriage():
    found = of(treatment=work(route="subcontract-vacuum", source=None))
    least = CATALOG.prices.subcontract_minimum.get("subcontract-vacuum", 80.0)
    assert found.items["treatment"] >= least + CATALOG.prices.carriage
    assert found.items["coupon"] == 0


def test_oven_time_is_paid_for():
    assert of().items["treatment"] > of(temper=Temper("torch", 200.0, 300.0)).items["treatment"]
    twice = of(temper=Temper("oven", 200.0, 3600.0, 2))
    assert twice.items["treatment"] > of().items["treatment"]


def test_as_json_rounds_to_cents():
    found = of()
    assert found.as_json() == {name: round(value, 2) for name, value in found.items.items()}
