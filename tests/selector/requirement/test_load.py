import pytest
from pydantic import ValidationError

from selector.requirement.load import Limit, Load

STEADY = {"impact": "none", "cycles": "static"}


def test_texts_with_units_become_our_units():
    load = Load.model_validate(
        {**STEADY, "torque": "10 lb ft", "bending": 3, "axial": "1 kN", "impact_energy": "5 J"}
    )
    assert load.torque == pytest.approx(13.558179483)
    assert (load.bending, load.axial, load.impact_energy) == (3, 1000, 5)


@pytest.mark.parametrize("key", ["impact", "cycles"])
def test_how_it_is_loaded_must_be_said(key):
    data = {name: value for name, value in STEADY.items() if name != key}
    with pytest.raises(ValidationError, match=key):
        Load.model_validate(data)


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"torque": 90}, "Is it N m, lb ft or lb in"),
        ({"torque": "75-100 N m"}, "one figure, not a range"),
        ({"torque": "-5 N m"}, "between 0 and 50000 N m"),
        ({"axial": "12 mm"}, "a unit of force"),
        ({"impact": "some"}, "some"),
        ({"failure_cost": -1}, "greater than or equal to 0"),
    ],
)
def test_an_impossible_load_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Load.model_validate({**STEADY, **changes})


def test_limits_are_open_unless_given():
    limit = Limit()
    assert (limit.runout, limit.budget, limit.days, limit.corrosion) == (
        None,
        None,
        None,
        "none",
    )


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"runout": 0}, "between 0.0001 and 5000 mm"),
        ({"budget": True}, "a number"),
        ({"budget": "12 EUR"}, "valid number"),
        ({"days": "3 kg"}, "a number of days in a unit of days"),
        ({"service_temperature": "hot"}, "a temperature written as number and unit"),
    ],
)
def test_an_impossible_limit_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Limit.model_validate(changes)
