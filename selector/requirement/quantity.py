"""Field types that accept text with units or the bare number of our unit."""

import math
from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field
from pydantic_core import PydanticCustomError

from selector.units import UnitError, hardness_hv, quantity

# Physical plausibility for a small workshop; beyond it a slip of the unit is likelier.
_BOUNDS = {
    "length": (0.01, 5000.0, "mm"),
    "temperature": (-200.0, 1700.0, "°C"),
    "torque": (0.0, 50_000.0, "N m"),
    "force": (0.0, 5e6, "N"),
    "energy": (0.0, 10_000.0, "J"),
    "volume": (0.1, 5000.0, "l"),
    "days": (0.0, 1000.0, "days"),
    "gas flow": (0.001, 50.0, "kg/h"),
}


class Asked(BaseModel):
    """A frozen part of the requirement that refuses unknown keys."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False)


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


def _number(value: Any, kind: str) -> float:  # noqa: ANN401
    """Return a bare number or a text with unit as a float in our unit."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise refuse(f"a {kind}", "Write a number or a text with its unit.")
    if isinstance(value, str):
        try:
            return quantity(value, kind)
        except UnitError as fault:
            raise refuse(fault.rule, fault.next_step) from fault
    return float(value)


def _reader(kind: str, *, bare: bool = True) -> Callable[[Any], float]:
    """Return the validator of one kind of quantity."""
    low, high, unit = _BOUNDS[kind]

    def read(value: Any) -> float:  # noqa: ANN401
        if not bare and isinstance(value, int | float) and not isinstance(value, bool):
            raise refuse(
                f"a {kind} with its unit",
                f'Is it N m, lb ft or lb in? Write "{value:g} N m" or "{value:g} lb ft".',
            )
        number = _number(value, kind)
        if not (math.isfinite(number) and low <= number <= high):
            raise refuse(
                f"between {low:g} and {high:g} {unit}", "Check the figure and its unit."
            )
        return number

    return read


def _hardness(value: Any) -> float:  # noqa: ANN401
    """Return a hardness as Vickers number."""
    if isinstance(value, bool) or not isinstance(value, int | float | str):
        raise refuse("a hardness", "Write for instance 50 HRC, 294 HB or 600 HV.")
    try:
        return hardness_hv(value)
    except UnitError as fault:
        raise refuse(fault.rule, fault.next_step) from fault


LengthMm = Annotated[float, BeforeValidator(_reader("length"))]
TemperatureC = Annotated[float, BeforeValidator(_reader("temperature"))]
TorqueNm = Annotated[float, BeforeValidator(_reader("torque", bare=False))]
BendingNm = Annotated[float, BeforeValidator(_reader("torque"))]
ForceN = Annotated[float, BeforeValidator(_reader("force"))]
EnergyJ = Annotated[float, BeforeValidator(_reader("energy"))]
VolumeL = Annotated[float, BeforeValidator(_reader("volume"))]
Days = Annotated[float, BeforeValidator(_reader("days"))]
GasKgPerH = Annotated[float, BeforeValidator(_reader("gas flow"))]
HardnessHv = Annotated[float, BeforeValidator(_hardness)]
Money = Annotated[float, Field(ge=0, le=1e7)]
Label = Annotated[str, Field(min_length=1, max_length=200)]
