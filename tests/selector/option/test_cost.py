from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from catalog import load_catalog
from selector import sampling
from selector.job.job import resolved
from selector.job.treatment import NO_TEMPER, Temper
from selector.option.cost import Mishaps, at_once, bark_mm, bill, order_of
from tests.dog import asked, work
from tests.examples import few

CATALOG = load_catalog()
NEVER = np.zeros(sampling.COUNT)
OVEN = Temper("oven", 200.0, 3600.0)


def of(changes=None, treatment=None, temper=OVEN, crack=NEVER, catalog=CATALOG, **given):
    mishaps = Mishaps(crack_rate=crack, **given)
    near = resolved(asked(changes), catalog)
    return bill(treatment or work(), temper, order_of(near), mishaps)


def middle(costed):
    return float(np.median(costed.cost))


def test_items_add_up_to_the_median_at_list_prices():
    costed = of()
    assert middle(costed) == pytest.approx(sum(costed.items.values()), rel=0.01)
    assert all(value >= 0 for value in costed.items.values())
    assert costed.currency == CATALOG.prices.currency
    assert costed.invented is CATALOG.prices.invented


def test_prices_scatter_with_the_shared_price_level_alone():
    level = sampling.shared()["price_level"]
    costed = np.log(of().cost)
    assert np.corrcoef(costed, level)[0, 1] == pytest.approx(1.0)


@given(st.floats(0, 0.4), st.floats(0.01, 0.4))
@settings(max_examples=few(20))
def test_more_cracking_costs_more(rate, more):
    low, high = (of(crack=np.full(sampling.COUNT, r)) for r in (rate, rate + more))
    assert (high.cost > low.cost).all()
    assert high.items["scrap"] > low.items["scrap"]


def test_half_of_the_parts_cracking_means_one_scrap_a_good_part():
    costed = of(crack=np.full(sampling.COUNT, 0.5))
    made = costed.items["bar"] + costed.items["machining"] + costed.items["treatment"]
    assert costed.items["scrap"] == pytest.approx(made)


@given(st.integers(1, 500), st.integers(1, 500))
@settings(max_examples=few(20))
def test_one_of_many_is_never_dearer(few, more):
    single, many = of({"part.quantity": few}), of({"part.quantity": few + more})
    assert middle(many) <= middle(single) + 1e-9


def test_a_load_saves_more_on_many_than_heating_one_after_the_other():
    saved = []
    for way in (work(), work("c45", "through-furnace", "oil", "muffle-furnace")):
        one, many = (of({"part.quantity": n}, treatment=way) for n in (1, 50))
        saved.append(many.items["treatment"] / one.items["treatment"])
    assert saved[1] < saved[0] < 1.0


def test_small_parts_lie_together_in_the_flame_and_thick_ones_do_not():
    sizes = {n: asked({f"part.section.{k}.size": n for k in (0, 1)}).part for n in (3.0, 25.0)}
    assert at_once(work(), sizes[3.0]) > 10
    assert at_once(work(), sizes[25.0]) == 1
    assert at_once(work("c45", "through-furnace", "oil", "muffle-furnace"), sizes[3.0]) == 1


def test_a_larger_part_costs_more_steel_and_cutting():
    small, large = of(), of({"part.section.1.length": 600})
    assert large.items["bar"] > small.items["bar"]
    assert large.items["machining"] > small.items["machining"]


def test_a_bar_in_the_rack_costs_what_it_is_bought_again_for_and_no_waiting():
    stock = asked({"workshop.stock": [{"steel": "C45"}]}).workshop.stock[0]
    racked = of(treatment=replace(work(), stock=stock))
    assert 0 < racked.items["bar"] < of().items["bar"]
    assert racked.days < of().days


def test_what_is_not_heated_has_no_treatment_no_coupon_no_rework():
    costed = of(treatment=work(route="as-bought", medium=None, source=None), temper=NO_TEMPER)
    assert [costed.items[name] for name in ("treatment", "coupon", "rework")] == [0, 0, 0]


def test_a_firm_charges_at_least_its_minimum_and_carriage():
    costed = of(treatment=work(route="subcontract-vacuum", source=None))
    least = CATALOG.prices.subcontract_minimum.get("subcontract-vacuum", 80.0)
    assert costed.items["treatment"] >= least + CATALOG.prices.carriage
    assert costed.items["coupon"] == 0


def test_oven_time_is_paid_for():
    assert of().items["treatment"] > of(temper=Temper("torch", 200.0, 300.0)).items["treatment"]
    twice = of(temper=Temper("oven", 200.0, 3600.0, 2))
    assert twice.items["treatment"] > of().items["treatment"]


def test_as_json_rounds_to_cents():
    costed = of()
    assert costed.as_json() == {name: round(value, 2) for name, value in costed.items.items()}


@pytest.mark.parametrize("path", ["bent", "too_hard", "too_soft"])
def test_each_path_that_goes_wrong_costs_its_own_item(path):
    item = {"bent": "straightening"}.get(path, "rework")
    straight, wrong = of(), of(**{path: np.ones(sampling.COUNT)})
    assert wrong.items[item] > straight.items[item]
    others = {name for name in straight.items if name != item}
    assert all(wrong.items[name] == straight.items[name] for name in others)


def test_hardening_again_costs_the_treatment_again_and_tempering_again_less():
    soft, hard = of(too_soft=np.ones(sampling.COUNT)), of(too_hard=np.ones(sampling.COUNT))
    assert soft.items["rework"] == pytest.approx(soft.items["treatment"])
    assert hard.items["rework"] < soft.items["rework"]


def test_only_what_is_heated_is_checked_for_hardness():
    assert of().items["inspection"] > 0
    plain = of(treatment=work(route="as-bought", medium=None, source=None), temper=NO_TEMPER)
    assert plain.items["inspection"] == 0


@pytest.mark.parametrize(
    ("figure", "item"),
    [
        ("setup_h", "machining"),
        ("inspect_h", "inspection"),
        ("heat_by_flame_h", "treatment"),
        ("rework_workshop_fraction", "rework"),
        ("coupon_bar_fraction", "coupon"),
    ],
)
def test_every_figure_of_practice_is_the_users_own(figure, item):
    practice = CATALOG.prices.practice
    more = practice.model_copy(update={figure: 2 * getattr(practice, figure)})
    mine = replace(CATALOG, prices=CATALOG.prices.model_copy(update={"practice": more}))
    assert of(catalog=mine).items[item] > of().items[item]


@pytest.mark.parametrize(("condition", "factor"), [("prehard", "removal_prehard_factor")])
def test_hard_bar_is_slower_to_cut(condition, factor):
    bar = work("42crmo4", "prehard-bar", None, None, condition)
    practice = CATALOG.prices.practice.model_copy(update={factor: 1.0})
    easy = replace(CATALOG, prices=CATALOG.prices.model_copy(update={"practice": practice}))
    hard = of(treatment=bar, temper=NO_TEMPER).items["machining"]
    assert hard > of(treatment=bar, temper=NO_TEMPER, catalog=easy).items["machining"]


def test_tool_steel_bar_has_the_thicker_bark():
    steels = CATALOG.steels
    assert bark_mm(steels["c45"], 20.0) == 1.0
    assert bark_mm(steels["x153crmov12"], 20.0) == pytest.approx(1.143)
    assert bark_mm(steels["x153crmov12"], 60.0) > bark_mm(steels["x153crmov12"], 20.0)


def test_a_short_piece_is_paid_by_its_own_length_and_the_cut():
    ring = {"part.section": [{"shape": "tube", "size": 70, "bore": 32, "length": 22}],
            "part.feature": [], "zone": [{"section": [1], "wear": "sliding"}]}  # fmt: skip
    price, plain = CATALOG.prices, work(route="as-bought", medium=None, source=None)
    costed = of(ring, plain, NO_TEMPER)
    per_kg = price.steel_per_kg[plain.steel.slug]
    # By hand: 27 mm of bar with the cut, at 7.85 kg a litre.
    weight = 0.00785 * np.pi / 4 * 7.0**2 * 2.7
    assert costed.items["bar"] == pytest.approx(weight * per_kg + price.cut_charge, rel=0.01)
    longer = replace(CATALOG, prices=price.model_copy(update={"minimum_length_mm": 270.0}))
    dearer = of(ring, plain, NO_TEMPER, catalog=longer).items["bar"] - price.cut_charge
    assert dearer == pytest.approx(10 * weight * per_kg, rel=0.01)
