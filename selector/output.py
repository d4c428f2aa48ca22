"""The advice as plain data: what `--json` prints, what the page shows, and its schema."""

from typing import Any

import numpy as np
from numpy.typing import NDArray
from pydantic import BaseModel, ConfigDict

from selector.advice import Advice, Option, Rejected
from selector.explain.assumption import assumptions
from selector.explain.caution import cautions
from selector.explain.coupon import coupon_plan
from selector.explain.headline import headline
from selector.explain.order import reasons, why_before
from selector.explain.remark import remarks
from selector.explain.risk import chief_risk
from selector.figure import Figure, Provenance, figure
from selector.heat.colour import temper_colour
from selector.requirement.priority import CRITERIA

SCHEMA_VERSION = 1
# What to find out where a gate is unknown.
FIND_OUT = {
    "response": "the grade: ask for the certificate, or harden a coupon of the same bar",
    "snap": "its toughness: break a coupon treated the same way",
}


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


class HardnessOut(Plain):
    """Hardness in HRC (carried on below 20, where Brinell is shown) and depth in mm."""

    surface: Spread
    core: Spread
    shank: Spread
    depth_mm: Spread


class TemperOut(Plain):
    """The temper and the band that serves as well; the colour is a cross-check."""

    label: str
    means: str
    temperature_c: float | None
    time_min: float | None
    cycles: int
    band_c: tuple[float, float] | None
    colour: str | None


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


class OptionOut(Plain):
    """One ranked option: the best of its family and route."""

    id: str
    place: int
    steel: str
    steel_slug: str
    family: str
    family_name: str
    condition: str
    route: str
    route_name: str
    route_kind: str
    medium: str | None
    temper: TemperOut
    gates: tuple[GateOut, ...]
    verdict: str
    score: float
    score_p05: float
    score_p95: float
    passing_all: float
    hardness: HardnessOut
    movement_mm: Spread
    permitted_movement_mm: float
    crack: CrackOut | None
    chief_risk: str
    cost: CostOut
    days: float
    criteria: dict[str, CriterionOut]
    reasons: tuple[str, ...]


class RejectedOut(Plain):
    """A treatment that is out, or apart as unknown, and the gate that decided."""

    steel: str
    steel_slug: str
    family: str
    condition: str
    route: str
    route_kind: str
    medium: str | None
    gate: str
    verdict: str
    text: str
    share: float
    find_out: str | None = None


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


class RangeOut(Plain):
    """One row of the range table of the criteria."""

    criterion: str
    words: str
    unit: str
    ideal: float
    worst: float
    scale: str
    basis: str
    weight: float


class ShareOut(Plain):
    """Share of draws in which the first option scores above the second."""

    first: str
    second: str
    share: float


class MethodOut(Plain):
    """The order another method gives: option ids, best first."""

    method: str
    order: tuple[str, ...]
    agrees_on_first: bool


class AdviceOut(Plain):
    """The whole advice as plain data."""

    schema_version: int
    part: str
    verdict: str
    headline: str
    toss_up: bool
    why_first: str | None
    as_bought: str | None
    options: tuple[OptionOut, ...]
    rejected: tuple[RejectedOut, ...]
    apart: tuple[RejectedOut, ...]
    zones: tuple[ZoneOut, ...]
    remarks: tuple[str, ...]
    assumptions: tuple[str, ...]
    cautions: tuple[CautionOut, ...]
    coupon: tuple[str, ...]
    ranges: tuple[RangeOut, ...]
    pairwise: tuple[ShareOut, ...]
    other_methods: tuple[MethodOut, ...]


def _number(value: float) -> float | None:
    """Return a number, or None for one that does not exist."""
    return None if np.isnan(value) else round(float(value), 3)


def _spread(found: Figure) -> Spread:
    """Return a figure as plain data."""
    return Spread(
        p05=_number(found.p05),
        p50=_number(found.value),
        p95=_number(found.p95),
        unit=found.unit,
        relation=found.relation,
        inputs=dict(found.inputs),
        source=found.source,
        validity=found.validity,
    )


def _drawn(values: NDArray[np.float64], unit: str, relation: str, source: str) -> Spread:
    """Return the spread of drawn values."""
    return _spread(figure(values, Provenance(unit, relation, source)))


def _temper(option: Option) -> TemperOut:
    """Return the temper with its colour where it shows one."""
    temper = option.choice.temper
    if temper.means == "none":
        return TemperOut(
            label="none", means="none", temperature_c=None, time_min=None, cycles=0,
            band_c=None, colour=None,
        )  # fmt: skip
    shows = 200 <= temper.temperature_c <= 330
    return TemperOut(
        label=temper.label,
        means=temper.means,
        temperature_c=temper.temperature_c,
        time_min=temper.time_s / 60,
        cycles=temper.cycles,
        band_c=option.choice.band_c,
        colour=temper_colour(temper.temperature_c, temper.time_s).name if shows else None,
    )


def _crack(option: Option) -> CrackOut | None:
    """Return the crack risk with its reasons."""
    risk = option.judged.prediction.crack.risk
    if risk is None:
        return None
    return CrackOut(
        crack_class=risk.crack_class,
        low=risk.low_fraction,
        high=risk.high_fraction,
        basis=risk.basis,
        reasons=tuple(reason.name for reason in risk.reasons),
        helps=risk.mitigations,
    )


def _criteria(advice: Advice, option: Option) -> dict[str, CriterionOut]:
    """Return the criteria of an option, with the share of draws clipped to the range."""
    found = {}
    for place, (name, row) in enumerate(zip(CRITERIA, advice.ranges, strict=True)):
        values = option.judged.values[:, place]
        ends = sorted((row.ideal, row.worst))
        found[str(name)] = CriterionOut(
            value=round(float(np.median(values)), 3),
            unit=row.unit,
            merit=round(float(option.merit[:, place].mean()), 4),
            clipped_share=round(float(np.mean((values < ends[0]) | (values > ends[1]))), 3),
        )
    return found


def _option(advice: Advice, option: Option, place: int) -> OptionOut:
    """Return one option as plain data."""
    work, found = option.treatment, option.judged.prediction
    low, high = np.quantile(option.scores, (0.05, 0.95))
    return OptionOut(
        id=option.id,
        place=place,
        steel=work.steel.name,
        steel_slug=work.steel.slug,
        family=work.steel.family,
        family_name=advice.around.catalog.families[work.steel.family].name,
        condition=work.condition.name,
        route=work.route.slug,
        route_name=work.route.name,
        route_kind=work.route.kind,
        medium=work.medium.slug if work.medium else None,
        temper=_temper(option),
        gates=tuple(GateOut(**gate.as_json()) for gate in option.judged.gates),
        verdict=option.judged.verdict,
        score=round(option.score, 4),
        score_p05=round(float(low), 4),
        score_p95=round(float(high), 4),
        passing_all=round(option.judged.passing_all, 4),
        hardness=HardnessOut(**{k: _spread(v) for k, v in found.figures().items()}),
        movement_mm=_drawn(
            found.movement.moved_mm, "mm", "bow and growth by route and slenderness",
            "distortion.bow, distortion.size_change",
        ),
        permitted_movement_mm=found.movement.permitted_mm,
        crack=_crack(option),
        chief_risk=chief_risk(option),
        cost=CostOut(
            spread=_drawn(
                found.bill.cost, found.bill.currency, "sum over good, reworked, scrapped",
                "price list",
            ),
            currency=found.bill.currency,
            invented_prices=found.bill.invented,
            items={name: round(value, 2) for name, value in found.bill.items.items()},
        ),
        days=found.bill.days,
        criteria=_criteria(advice, option),
        reasons=reasons(advice, option),
    )  # fmt: skip


def _rejected(item: Rejected) -> RejectedOut:
    """Return a rejected treatment as plain data."""
    work = item.treatment
    return RejectedOut(
        steel=work.steel.name,
        steel_slug=work.steel.slug,
        family=work.steel.family,
        condition=work.condition.name,
        route=work.route.slug,
        route_kind=work.route.kind,
        medium=work.medium.slug if work.medium else None,
        gate=item.gate.name,
        verdict=item.gate.verdict,
        text=item.gate.text,
        share=round(item.share, 4),
        find_out=FIND_OUT.get(item.gate.name) if item.gate.verdict == "unknown" else None,
    )


def _methods(advice: Advice) -> tuple[MethodOut, ...]:
    """Return the orders of the other methods as option ids."""
    found = []
    for comparison in advice.comparisons:
        count = len(comparison.places)
        order = tuple(
            advice.options[k].id
            for k in sorted(range(count), key=lambda k: comparison.places[k])
        )
        agrees = order[0] == advice.options[0].id
        found.append(MethodOut(method=comparison.method, order=order, agrees_on_first=agrees))
    return tuple(found)


def advice_out(advice: Advice, top: int | None = None) -> AdviceOut:
    """Return the advice as plain data.

    Parameters
    ----------
    advice : Advice
        What `advise` returned.
    top : int, optional
        How many options to hold; all if absent.

    Returns
    -------
    AdviceOut
        Ready for JSON.
    """
    shown = advice.options[:top]
    plain = advice.as_bought
    first_two = advice.options[:2]
    return AdviceOut(
        schema_version=SCHEMA_VERSION,
        part=advice.asked.part.name,
        verdict=advice.verdict,
        headline=headline(advice),
        toss_up=advice.toss_up,
        why_first=why_before(advice, *first_two) if len(first_two) == 2 else None,
        as_bought=plain.id if plain else None,
        options=tuple(_option(advice, o, place) for place, o in enumerate(shown, start=1)),
        rejected=tuple(_rejected(item) for item in advice.rejected),
        apart=tuple(_rejected(item) for item in advice.apart),
        zones=tuple(
            ZoneOut(
                zone=d.zone + 1,
                low_hrc=d.low_hrc,
                high_hrc=d.high_hrc,
                floor_hrc=d.floor_hrc,
                ceiling_hrc=d.ceiling_hrc,
                depth_mm=d.depth_mm,
                derived=d.derived,
                reason=d.reason,
            )
            for d in advice.around.demands
        ),
        remarks=remarks(advice),
        assumptions=assumptions(advice),
        cautions=tuple(
            CautionOut(id=key, text=caution.fact.text, step=caution.step)
            for key, caution in cautions(advice)
        ),
        coupon=coupon_plan(advice),
        ranges=tuple(
            RangeOut(
                criterion=row.criterion,
                words=row.words,
                unit=row.unit,
                ideal=row.ideal,
                worst=row.worst,
                scale=row.scale,
                basis=row.basis,
                weight=advice.weights[row.criterion],
            )
            for row in advice.ranges
        ),
        pairwise=tuple(
            ShareOut(first=a, second=b, share=round(share, 4))
            for (a, b), share in advice.shares.items()
        ),
        other_methods=_methods(advice),
    )


def schema() -> dict[str, Any]:
    """Return the JSON schema of the advice."""
    return AdviceOut.model_json_schema()
