"""Field types that accept text with units or the bare number of our unit."""

import math
import re
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    ValidationError,
)
from pydantic_core import PydanticCustomError

from catalog.text import RULE, is_steady
from selector.requirement.units import UnitError, hardness_hv, quantity

# Physical plausibility for a small workshop; beyond it a slip of the unit is likelier.
_BOUNDS = {
    "length": (0.01, 5000.0, "mm"),
    "temperature": (-200.0, 1700.0, "°C"),
    "torque": (0.0, 50_000.0, "N m"),
    "force": (0.0, 5e6, "N"),
    "energy": (0.0, 10_000.0, "J"),
    "volume": (0.1, 5000.0, "l"),
    "days": (0.0, 1000.0, "days"),
    "time": (1.0, 3.6e6, "s"),
    "gas flow": (0.001, 50.0, "kg/h"),
}


# The kind of quantity that each reader reads.
_KINDS: dict[object, str] = {}


class Asked(BaseModel):
    """A frozen part of the requirement that refuses unknown keys."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", allow_inf_nan=False, defer_build=True
    )


def refuse(rule: str, next_step: str) -> PydanticCustomError:
    """Return the error that carries its own rule and next step.

    Parameters
    ----------
    rule : str
        What the value must be.
    next_step : str
        What the user can do.

    Returns
    -------
    PydanticCustomError
        To be raised inside a validator.
    """
    return PydanticCustomError(
        "rule", "{rule}. {next_step}", {"rule": rule, "next_step": next_step}
    )


def refuse_at(
    title: str, *faults: tuple[tuple[int | str, ...], str | int, str, str]
) -> ValidationError:
    """Return the error that names the fields at fault where a rule joins several of a table.

    Parameters
    ----------
    title : str
        The table.
    faults : tuple
        Of each field its place in the table, its value, what it must be, next step.

    Returns
    -------
    ValidationError
        To be raised inside a validator of the whole table.
    """
    return ValidationError.from_exception_data(
        title,
        [
            {"type": refuse(rule, step), "loc": place, "input": got}
            for place, got, rule, step in faults
        ],
    )


def _plain(value: Any, rule: str, next_step: str) -> float | str:  # noqa: ANN401
    """Return a text as it is and a bare number as float, infinite where too large for one."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise refuse(rule, next_step)
    if isinstance(value, str):
        return value
    try:
        return float(value)
    except OverflowError:
        return math.inf if value > 0 else -math.inf


def _reader(kind: str, *, bare: bool = True, least: float | None = None) -> BeforeValidator:
    """Return the validator of one kind of quantity; its range may begin at another `least`."""
    low, high, unit = _BOUNDS[kind]
    low = low if least is None else least

    def read(value: Any) -> float:  # noqa: ANN401
        given = _plain(value, f"a {kind}", "Write a number or a text with its unit.")
        if isinstance(given, float) and not bare:
            raise refuse(
                f"a {kind} with its unit",
                f'Is it N m, lb ft or lb in? Write "{given:g} N m" or "{given:g} lb ft".',
            )
        try:
            number = given if isinstance(given, float) else quantity(given, kind)
        except UnitError as fault:
            raise refuse(fault.rule, fault.next_step) from fault
        if not (math.isfinite(number) and low <= number <= high):
            raise refuse(
                f"between {low:g} and {high:g} {unit}", "Check the figure and its unit."
            )
        return number

    _KINDS[read] = kind
    return BeforeValidator(read, json_schema_input_type=float | str if bare else str)


def _hardness(value: Any) -> float:  # noqa: ANN401
    """Return a hardness as Vickers number."""
    given = _plain(value, "a hardness", "Write for instance 50 HRC, 294 HB or 600 HV.")
    try:
        return hardness_hv(given)
    except UnitError as fault:
        raise refuse(fault.rule, fault.next_step) from fault


_KINDS[_hardness] = "hardness"


def kind_read_by(validator: object) -> str | None:
    """Return the kind of quantity that a validator reads, None where it reads none."""
    return _KINDS.get(validator.func) if isinstance(validator, BeforeValidator) else None


def _not_bool(value: Any) -> Any:  # noqa: ANN401
    """Refuse true and false, which Python would count as 1 and 0."""
    if isinstance(value, bool):
        raise refuse("a number", "Write the figure itself.")
    return value


def _steady(text: str) -> str:
    """Return a name, refusing what would steer a terminal."""
    if not is_steady(text):
        raise refuse(RULE, "Retype it.")
    return text


def catalog_name(text: str) -> str:
    """Return a name of the catalogue as its file has it: "Motor oil" is motor-oil.

    Parameters
    ----------
    text : str
        As it is written.

    Returns
    -------
    str
        In small letters, its words joined by hyphens.
    """
    return "-".join(re.findall(r"[^\s_-]+", text.casefold())) or text


# Stands last, so that the bounds before it reach the schema.
NOT_BOOL = BeforeValidator(_not_bool)
LengthMm = Annotated[float, _reader("length")]
PlaceMm = Annotated[float, _reader("length", least=0.0)]
# What is lapped to size is asked to the nearest thousandth and less.
RunoutMm = Annotated[float, _reader("length", least=1e-4)]
TemperatureC = Annotated[float, _reader("temperature")]
TorqueNm = Annotated[float, _reader("torque", bare=False)]
BendingNm = Annotated[float, _reader("torque")]
ForceN = Annotated[float, _reader("force")]
EnergyJ = Annotated[float, _reader("energy")]
VolumeL = Annotated[float, _reader("volume")]
DurationS = Annotated[float, _reader("time")]
Days = Annotated[float, _reader("days")]
GasKgPerH = Annotated[float, _reader("gas flow")]
HardnessHv = Annotated[float, BeforeValidator(_hardness, json_schema_input_type=float | str)]
Money = Annotated[float, Field(ge=0, le=1e7), NOT_BOOL]
Label = Annotated[str, Field(min_length=1, max_length=200), AfterValidator(_steady)]
CatalogName = Annotated[Label, AfterValidator(catalog_name)]
