"""Plain pydantic parts that several outputs share, and how figures and gates become them."""

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray
from pydantic import BaseModel, ConfigDict

from selector.figure import Figure, Provenance, figure
from selector.gate import Gate


class Plain(BaseModel):
    """A frozen record of the output."""

    model_config = ConfigDict(frozen=True, extra="forbid")


class Spread(Plain):
    """A predicted number: median, 90 % range, and where it comes from."""

    p05: float | None
    p50: float | None
    p95: float | None
    unit: str
    relation: str
    inputs: dict[str, float | str]
    source: str
    validity: tuple[str, ...]


class GateOut(Plain):
    """One demand and how the option meets it."""

    name: str
    verdict: str
    share: float | None
    text: str


class TemperOut(Plain):
    """The temper and the band that serves as well; the colour is a cross-check."""

    label: str
    means: str
    temperature_c: float | None
    time_min: float | None
    cycles: int
    band_c: tuple[float, float] | None
    colour: str | None


class CautionOut(Plain):
    """One caution of the list, with the step of the work it belongs to."""

    id: str
    text: str
    step: str


class ZoneOut(Plain):
    """What a zone was taken to ask. Hardness in HRC."""

    zone: int
    low_hrc: float | None
    high_hrc: float | None
    floor_hrc: float | None
    ceiling_hrc: float | None
    depth_mm: float
    derived: bool
    reason: str


def rounded(value: float) -> float | None:
    """Return a number to three places, or None for one that does not exist."""
    return None if np.isnan(value) else round(float(value), 3)


def spread_out(known: Figure) -> Spread:
    """Return a figure as plain data, rounded."""
    return Spread(
        p05=rounded(known.p05),
        p50=rounded(known.value),
        p95=rounded(known.p95),
        unit=known.unit,
        relation=known.relation,
        inputs=dict(known.inputs),
        source=known.source,
        validity=known.validity,
    )


def sampled_out(
    values: NDArray[np.float64],
    unit: str,
    relation: str,
    source: str,
    inputs: Mapping[str, float | str] | None = None,
) -> Spread:
    """Return the middle, range and origin of sampled values."""
    return spread_out(figure(values, Provenance(unit, relation, source, inputs or {})))


def gate_out(gate: Gate) -> GateOut:
    """Return a gate as plain data, its share rounded."""
    share = None if gate.share is None else round(gate.share, 4)
    return GateOut(name=gate.name, verdict=gate.verdict, share=share, text=gate.text)
