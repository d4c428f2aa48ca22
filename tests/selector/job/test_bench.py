import pytest

from catalog import load_catalog
from selector.errors import RequirementError
from selector.job.bench import bench
from tests.dog import asked

CATALOG = load_catalog()


def of(changes):
    return bench(asked(changes), CATALOG)


def test_names_become_catalogue_records_in_order():
    things = of({})
    assert [source.slug for source in things.sources] == ["oxy-propane", "kitchen-oven"]
    assert [medium.slug for medium in things.media] == ["warm-water", "oil", "air"]


def test_air_is_there_once_also_when_named():
    things = of({"workshop.bath": [{"medium": "air"}]})
    assert [medium.slug for medium in things.media] == ["air"]


def test_a_stated_ceiling_replaces_the_catalogued_one_here_alone():
    things = of({"workshop.heat": [{"source": "kitchen-oven", "ceiling": "230 degC"}]})
    assert things.sources[0].ceiling_c.value == pytest.approx(230)
    assert CATALOG.heat_sources["kitchen-oven"].ceiling_c.value != pytest.approx(230)


def test_stock_is_found_by_any_of_its_names():
    things = of({"workshop.stock": [{"steel": "EN 8"}, {"steel": "silver steel"}]})
    assert [racked.steel.slug for racked in things.stock] == ["080m40", "115crv3"]
    assert things.unclear == ()


def test_a_name_of_several_steels_stands_apart():
    name = next(
        name
        for steel in CATALOG.steels.values()
        for name in steel.names()
        if len({found.family for found in CATALOG.find(name)}) > 1
    )
    things = of({"workshop.stock": [{"steel": name}]})
    assert things.stock == ()
    assert len(things.unclear[0].steels) > 1


def test_a_name_of_near_equals_is_the_one_that_people_buy():
    things = of({"workshop.stock": [{"steel": "blue tempered strip"}]})
    assert [racked.steel.slug for racked in things.stock] == ["c75s"]


def test_all_unknown_names_are_said_at_once_with_what_is_known():
    changes = {
        "workshop.heat": [{"source": "dragon"}],
        "workshop.bath": [{"medium": "soup"}],
        "workshop.stock": [{"steel": "mithril"}],
    }
    with pytest.raises(RequirementError, match="a known heat source; got 'dragon'") as refused:
        of(changes)
    said = [(problem.field, problem.got) for problem in refused.value.problems]
    assert said == [
        ("workshop.heat.1.source", "'dragon'"),
        ("workshop.bath.1.medium", "'soup'"),
        ("workshop.stock.1.steel", "'mithril'"),
    ]
    assert "oxy-propane" in refused.value.problems[0].next_step


def test_every_fault_of_the_workshop_is_said_at_once():
    baths = [{"medium": "oil", "temperature": "900 degC"}, {"medium": "whale-oil"}]
    with pytest.raises(RequirementError) as refused:
        bench(asked({"workshop.bath": baths}), load_catalog())
    assert {problem.field for problem in refused.value.problems} == {
        "workshop.bath.1.temperature",
        "workshop.bath.2.medium",
    }


def test_a_bar_harder_than_its_steel_is_listed_names_the_conditions_there_are():
    with pytest.raises(RequirementError) as caught:
        of({"workshop.stock": [{"steel": "C45", "condition": "prehard"}]})
    (problem,) = caught.value.problems
    assert problem.field == "workshop.stock.1.condition"
    assert "hot-rolled, cold-drawn" in problem.next_step


def test_a_price_of_its_own_stands_over_the_list_by_any_name_of_the_steel():
    things = of(
        {"workshop.price": [{"steel": "EN 8", "per_kg": 2.25}], "workshop.labour_per_h": 60}
    )
    assert things.prices.steel_per_kg["080m40"] == 2.25
    assert things.prices.steel_per_kg["c60"] == CATALOG.prices.steel_per_kg["c60"]
    assert things.prices.labour_per_h == 60
    assert CATALOG.prices.labour_per_h != 60
    assert of({}).prices is CATALOG.prices


def test_a_price_of_an_unknown_steel_is_said_with_its_place():
    with pytest.raises(RequirementError) as refused:
        of({"workshop.price": [{"steel": "mithril", "per_kg": 9}]})
    assert [p.field for p in refused.value.problems] == ["workshop.price.1.steel"]
