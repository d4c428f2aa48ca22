"""Plain pydantic parts that several outputs share, and how figures and gates become them."""

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray
from pydantic import BaseModel, ConfigDict

from selector.figure import Figure, Provenance, figure
from selector.gate import Gate


class Plain(BaseModel):
    """A frozen record of the output."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)


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
    """One caution of the list, with the step of the work it belongs to.

    `harm` is the worst it warns of: it kills (or blinds), injures, or spoils the part. The few
    of the first screen are marked, `rank` 1 the worst; `brief` is their line there.
    """

    id: str
    text: str
    brief: str
    step: str
    harm: str
    first_screen: bool
    rank: int | None


class HardnessOut(Plain):
    """Hardness in HRC (carried on below 20, where Brinell is shown) and depth in mm."""

    surface: Spread
    core: Spread
    shank: Spread
    depth_mm: Spread
    through: bool


class CrackOut(Plain):
    """Class of crack risk, its band of rates, why, and what helps."""

    crack_class: str
    low: float
    high: float
    basis: str
    reasons: tuple[str, ...]
    helps: tuple[str, ...]


class CostOut(Plain):
    """Cost per good part, its items at the middle."""

    spread: Spread
    currency: str
    invented_prices: bool
    items: dict[str, float]


class CriterionOut(Plain):
    """An option's value on one criterion and its merit between 0 and 1."""

    value: float
    unit: str
    merit: float
    clipped_share: float


class SetUpOut(Plain):
    """What the man at the fire needs to know; what a furnace leaves open is absent.

    `colour` is what the heat looks like in the workshop's light, `tables_c` how far printed
    colour tables spread, `misread_c` how far the heat is misread (one sd) and
    `looks_duller_c` by how much the light makes it look colder. The hold counts from when the
    middle of the zone is at its heat; after `even_s` of it the zone is of one colour.
    """

    heat_c: float
    colour: str | None
    tables_c: tuple[float, float] | None
    light: str | None
    read_by: str
    misread_c: float
    looks_duller_c: float
    hold_s: float
    even_s: float | None
    to_heat_s: float | None
    past_zone_mm: float | None
    flame_share: float | None
    gas_l: float | None
    source: str | None
    medium: str | None
    bath_c: float | None
    motion: str | None
    delay_s: float | None
    way_in: str | None


class CasePointOut(Plain):
    """Carbon and hardness of a case at a depth under its surface before grinding."""

    depth_mm: float
    carbon_wt_pct: float
    hrc: float


class LayerOut(Plain):
    """How a case or a nitrided layer is grown; depths under the finished face, at the middle.

    `falls_short` says that the longest time of the route does not give the depth asked for;
    `profile` is the case from its surface to past its total depth, empty of a nitrided layer.
    """

    medium: str
    temperature_c: float
    hours: float
    asked_mm: float
    removed_mm: float
    depth_mm: float
    falls_short: bool
    profile: tuple[CasePointOut, ...] = ()


class StepOut(Plain):
    """One step of the work, in the order it is done; a figure that it does not have is absent.

    `stage` is one of bar, prepare, set-up, heat, case, quench, test, freeze, temper, finish,
    check and order. `action` says what to do, `check` when it is right, `otherwise` what to do
    when it is not, `short` the same in a few words. `means` is what the workshop does it with,
    `colour` how the heat looks in its light, or what a bright patch shows after the temper.
    `length_mm` is a radius, an allowance, a depth or a reach, as the action says. `cautions`
    are those that belong to this step, `source` where its figures come from.
    """

    stage: str
    action: str
    number: int = 0
    short: str | None = None
    means: str | None = None
    check: str | None = None
    otherwise: str | None = None
    temperature_c: float | None = None
    band_c: tuple[float, float] | None = None
    colour: str | None = None
    read_by: str | None = None
    minutes: float | None = None
    times: int | None = None
    within_s: float | None = None
    length_mm: float | None = None
    volume_l: float | None = None
    hardness_hrc: tuple[float, float] | None = None
    cautions: tuple[str, ...] = ()
    source: str | None = None


class OptionOut(Plain):
    """One ranked option: the best of its family and route.

    `passing_all` is how often it comes out right, `within_budget` how often it costs no more
    than the budget (absent without one): two shares, never multiplied.
    """

    id: str
    place: int
    steel: str
    steel_slug: str
    spoken: str
    family: str
    family_name: str
    condition: str
    route: str
    route_name: str
    route_kind: str
    medium: str | None
    source: str | None
    set_up: SetUpOut | None
    layer: LayerOut | None
    procedure: tuple[StepOut, ...]
    temper: TemperOut
    gates: tuple[GateOut, ...]
    verdict: str
    score: float
    score_p05: float
    score_p95: float
    passing_all: float
    within_budget: float | None
    hardness: HardnessOut
    movement_mm: Spread
    permitted_movement_mm: float
    crack: CrackOut | None
    chief_risk: str
    cost: CostOut
    failing: Spread
    failure_cost: Spread | None
    days: float
    criteria: dict[str, CriterionOut]
    reasons: tuple[str, ...]
    cautions: tuple[str, ...]


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
