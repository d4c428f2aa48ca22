import pytest
from pydantic import ValidationError

from selector.requirement.workshop import Workshop


def test_an_empty_list_says_there_is_no_heat():
    shop = Workshop.model_validate({"heat": []})
    assert (shop.heat, shop.bath, shop.measure) == ((), (), ("eye",))
    assert shop.skill.bias == 1


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({}, "heat"),
        ({"heat": [], "only_stock": True}, "a workshop with stock"),
        ({"heat": [{"source": ""}]}, "at least 1 character"),
        ({"heat": [{"source": "forge", "ceiling": "5000 degC"}]}, "-200 and 1700"),
        ({"heat": [{"source": "forge", "gas_flow": "3 mm"}]}, "a gas flow in a unit"),
        ({"heat": [], "bath": [{"medium": "oil", "volume": 0}]}, "between 0.1 and 5000 l"),
        ({"heat": [], "bath": [{"medium": "oil", "agitation": "wild"}]}, "wild"),
        ({"heat": [], "measure": ["guess"]}, "guess"),
        ({"heat": [], "skill": {"bias": 9}}, "less than or equal to 5"),
        ({"heat": [], "skill": {"bias": True}}, "a number"),
        ({"heat": [], "stock": [{"steel": "EN8", "evidence": "hearsay"}]}, "hearsay"),
    ],
)
def test_an_impossible_workshop_is_refused(data, rule):
    with pytest.raises(ValidationError, match=rule):
        Workshop.model_validate(data)


def test_only_stock_with_a_bar_is_taken():
    data = {"heat": [], "only_stock": True, "stock": [{"steel": "EN8"}]}
    assert Workshop.model_validate(data).stock[0].evidence == "none"


@pytest.mark.parametrize(
    ("bath", "heat"),
    [("motor-oil", "hand-torch"), ("motor oil", "hand torch"), ("Motor Oil", "Hand_torch")],
)
def test_a_bath_and_a_heat_source_go_by_their_names_as_people_write_them(bath, heat):
    shop = Workshop.model_validate({"heat": [{"source": heat}], "bath": [{"medium": bath}]})
    assert (shop.bath[0].medium, shop.heat[0].source) == ("motor-oil", "hand-torch")
