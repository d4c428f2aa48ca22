import math
from typing import Annotated

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from selector.requirement import quantity as q

FIELDS = {
    "length": q.LengthMm,
    "temperature": q.TemperatureC,
    "bending": q.BendingNm,
    "force": q.ForceN,
    "energy": q.EnergyJ,
    "volume": q.VolumeL,
    "days": q.Days,
    "gas flow": q.GasKgPerH,
}
BARE = {name: TypeAdapter(field) for name, field in FIELDS.items()}
LENGTH, TORQUE = TypeAdapter(q.LengthMm), TypeAdapter(q.TorqueNm)
HARDNESS, PLACE = TypeAdapter(q.HardnessHv), TypeAdapter(q.PlaceMm)


@pytest.mark.parametrize("name", sorted(FIELDS))
def test_a_bare_number_is_in_our_unit(name):
    assert BARE[name].validate_python(5) == 5.0


@given(st.floats(0.01, 5000))
def test_a_length_comes_back_through_text(value):
    assert LENGTH.validate_python(f"{value!r} mm") == pytest.approx(value)
    assert LENGTH.validate_python(f"{value / 25.4!r} in") == pytest.approx(value, rel=1e-9)


@pytest.mark.parametrize("name", sorted(FIELDS))
@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 1e30, 10**400, -1000])
def test_what_no_workshop_has_is_refused(name, value):
    with pytest.raises(ValidationError, match=r"between .* and .*Check the figure"):
        BARE[name].validate_python(value)


@pytest.mark.parametrize("name", sorted(FIELDS))
@pytest.mark.parametrize("value", [True, None, [1], {"value": 1}])
def test_what_is_no_figure_is_refused(name, value):
    with pytest.raises(ValidationError, match="number or a text with its unit"):
        BARE[name].validate_python(value)


@pytest.mark.parametrize(("value", "shown"), [(90, "90 N m"), (12.5, "12.5 lb ft")])
def test_a_bare_torque_is_asked_back_in_both_units(value, shown):
    with pytest.raises(ValidationError, match=shown):
        TORQUE.validate_python(value)
    assert TORQUE.validate_python("90 N m") == 90


def test_a_place_may_be_zero_and_a_length_may_not():
    assert PLACE.validate_python(0) == PLACE.validate_python("0 mm") == 0
    with pytest.raises(ValidationError, match=r"between 0.01 and 5000 mm"):
        LENGTH.validate_python(0)
    with pytest.raises(ValidationError, match=r"between 0 and 5000 mm"):
        PLACE.validate_python(-1)


def test_a_hardness_is_held_as_vickers():
    assert HARDNESS.validate_python(50) == HARDNESS.validate_python("50 HRC") == 513
    with pytest.raises(ValidationError, match="20 HRC or more"):
        HARDNESS.validate_python(12)


@pytest.mark.parametrize(
    "kind", [Annotated[int, q.NOT_BOOL], Annotated[float, q.NOT_BOOL], q.Money]
)
def test_true_is_no_number(kind):
    adapter = TypeAdapter(kind)
    assert adapter.validate_python(1) == 1
    with pytest.raises(ValidationError, match=r"a number\. Write the figure itself"):
        adapter.validate_python(True)


def test_asked_is_frozen_and_refuses_unknown_keys():
    class Small(q.Asked):
        size: q.LengthMm

    small = Small(size="1 in")
    with pytest.raises(ValidationError, match="frozen"):
        small.size = 3
    with pytest.raises(ValidationError, match="colour"):
        Small.model_validate({"size": 3, "colour": "red"})
