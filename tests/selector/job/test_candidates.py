from collections import Counter
from dataclasses import replace

from catalog import load_catalog
from selector.job.bench import bench
from selector.job.candidates import like_conditions_merged, screened
from tests.dog import asked, only, work

KNOWN = load_catalog()


def answer(changes=None, catalog=None):
    wanted, known = asked(changes), catalog or load_catalog()
    return list(screened(wanted, known, bench(wanted, known)))


def test_no_treatment_is_thought_of_twice():
    labels = Counter(item.treatment.label for item in answer())
    assert {label for label, times in labels.items() if times > 1} == set()


def test_adding_steels_changes_nothing_for_the_others():
    before = [(i.treatment.label, i.gate) for i in answer(catalog=only("c45", "42crmo4"))]
    after = [(i.treatment.label, i.gate) for i in answer(catalog=only("c45", "42crmo4", "c60"))]
    assert [row for row in after if not row[0].startswith("c60/")] == before


def test_every_condition_is_one_the_route_takes():
    for item in answer(catalog=only("c45", "42crmo4", "linear-shaft")):
        assert item.treatment.condition.name in item.treatment.route.conditions


def test_only_baths_of_the_workshop_are_used_at_home():
    home = [i.treatment for i in answer() if i.treatment.route.place == "workshop"]
    used = {work.medium.slug for work in home if work.medium}
    assert used <= {"warm-water", "oil", "air"}


def test_the_measured_source_goes_before_the_judged_one():
    sources = {"workshop.heat": [{"source": "forge"}, {"source": "heat-treat-oven"}]}
    through = [i.treatment for i in answer(sources) if i.treatment.route.slug == "normalise"]
    assert {work.source.slug for work in through} == {"heat-treat-oven"}


def test_an_unknown_bar_counts_only_where_it_lies_in_the_rack():
    assert not [i for i in answer() if i.treatment.steel.kind == "unknown"]
    racked = [
        i
        for i in answer({"workshop.stock": [{"steel": "unknown"}]})
        if i.treatment.steel.kind == "unknown"
    ]
    assert racked
    hardening = [i for i in racked if i.treatment.route.process != "none"]
    assert {i.gate.verdict for i in hardening} == {"unknown"}


def test_a_racked_bar_goes_with_its_own_condition():
    stock = {"workshop.stock": [{"steel": "42CrMo4", "condition": "prehard"}]}
    mine = [i.treatment for i in answer(stock, only("42crmo4"))]
    assert {work.stock is not None for work in mine if work.condition.name == "prehard"} == {
        True
    }
    assert {work.stock is not None for work in mine if work.condition.name != "prehard"} == {
        False
    }


def test_conditions_the_heat_wipes_out_are_merged_and_others_kept():
    rolled, cold_drawn = work(condition="hot-rolled"), work(condition="cold-drawn")
    assert like_conditions_merged([rolled, cold_drawn]) == like_conditions_merged(
        [cold_drawn, rolled]
    )
    assert len(like_conditions_merged([rolled, cold_drawn])) == 1
    bought = [
        work(route="as-bought", medium=None, source=None, condition=name)
        for name in ("hot-rolled", "cold-drawn")
    ]
    assert like_conditions_merged(bought) == bought


def test_a_bar_in_the_rack_is_kept_before_any():
    bar = asked({"workshop.stock": [{"steel": "C45"}]}).workshop.stock[0]
    for name, other in (("hot-rolled", "cold-drawn"), ("cold-drawn", "hot-rolled")):
        racked = replace(work(condition=name), stock=bar)
        assert like_conditions_merged([work(condition=other), racked]) == [racked]


def test_a_bar_in_a_condition_not_listed_for_its_steel_is_a_treatment_of_its_own():
    rack = asked({"workshop.stock": [{"steel": "C45+QT", "size": "30 mm"}]})
    found = screened(rack, KNOWN, bench(rack, KNOWN), lambda steel, _: steel.slug == "c45")
    (prehard,) = {
        item.treatment.condition
        for item in found
        if item.treatment.condition.name == "prehard" and item.treatment.stock is not None
    }
    assert prehard.hardness_hb is not None
    assert (prehard.hardness_hb.low, prehard.hardness_hb.high) == (193, 238)


def test_a_bar_named_by_a_near_equivalent_has_its_composition():
    rack = asked({"workshop.stock": [{"steel": "4140"}]})
    found = screened(rack, KNOWN, bench(rack, KNOWN), lambda steel, _: steel.slug == "42crmo4")
    steels = {item.treatment.stock is None: item.treatment.steel for item in found}
    assert {steel.assumed is None for steel in steels.values()} == {False}


def of_rack(*bars, **changes):
    """Return what stock the treatments of C45 are made of, and the gates that stopped them."""
    given = {"workshop.stock": [{"steel": "C45", "condition": "cold-drawn", **b} for b in bars]}
    found = answer({**given, **changes}, only("c45"))
    drawn = [item for item in found if item.treatment.condition.name == "cold-drawn"]
    return {i.treatment.stock.size if i.treatment.stock else "bought" for i in drawn}, drawn


def test_a_bar_too_thin_for_the_part_is_bought_instead():
    assert of_rack({"size": 10})[0] == {"bought"}
    assert of_rack({"size": 10}, {"size": 30})[0] == {30.0}
    assert of_rack({"size": 25})[0] == {25.0}
    assert of_rack({})[0] == {None}


def test_a_rack_of_thin_bars_alone_says_that_they_are_thin():
    stock, drawn = of_rack({"size": 10}, **{"workshop.only_stock": True})
    assert stock == {10.0}
    assert {i.gate.text for i in drawn if i.gate.name == "stock"} == {
        "the bar in the rack is 10 mm; the part takes 25 mm"
    }
    assert all(i.gate is not None for i in drawn)
