"""What the outputs of several questions say of a demand, a temper and an option's failures."""

import numpy as np

from selector.decision.criteria import Range
from selector.decision.option import Option
from selector.decision.risk import chief_risk
from selector.decision.set_up_out import set_up_out
from selector.errors import OutOfRangeError
from selector.figure import column_medians, quantiles
from selector.heat.colour import temper_colour
from selector.job.job import Job
from selector.job.treatment import Temper
from selector.option.caution import of_option
from selector.option.cost import Bill
from selector.option.layer import LayerRun
from selector.option.movement import Movement
from selector.option.temper_choice import Choice
from selector.procedure.steps import procedure
from selector.record import (
    CasePointOut,
    CostOut,
    CrackOut,
    CriterionOut,
    HardnessOut,
    LayerOut,
    OptionOut,
    Spread,
    TemperOut,
    gate_out,
    rounded,
    sampled_out,
    spread_out,
)
from selector.requirement import Requirement
from selector.requirement.priority import CRITERIA


def temper_out(choice: Choice) -> TemperOut:
    """Return a chosen temper with its colour, where it shows one."""
    temper = choice.temper
    if temper.means == "none":
        return TemperOut(
            label="none", means="none", temperature_c=None, time_min=None, cycles=0,
            band_c=None, colour=None,
        )  # fmt: skip
    return TemperOut(
        label=temper.label,
        means=temper.means,
        temperature_c=temper.temperature_c,
        time_min=temper.time_s / 60,
        cycles=temper.cycles,
        band_c=choice.band_c,
        colour=None if temper.means == "salt" else colour_shown(temper),
    )


def colour_shown(temper: Temper) -> str | None:
    """Return the colour a polished part shows at a temper, None where the tables end."""
    try:
        return temper_colour(temper.temperature_c, temper.time_s).name
    except OutOfRangeError:
        return None


def rounded_share(share: float | None) -> float | None:
    """Return a share rounded, None where there is none."""
    return None if share is None else round(share, 4)


def cost_out(money: Bill) -> Spread:
    """Return the cost of a good part, its items at the middle as inputs."""
    relation, source = "sum over good, reworked, scrapped", "price list"
    return sampled_out(money.cost, money.currency, relation, source, money.as_json())


def movement_out(moved: Movement) -> Spread:
    """Return how far a part moves, in mm."""
    relation = "bow and growth by route and slenderness"
    source = "distortion.bow, distortion.size_change"
    return sampled_out(moved.moved_mm, "mm", relation, source)


def failing_out(option: Option) -> Spread:
    """Return the chance of failing in service; unknown where its toughness is."""
    return sampled_out(
        option.judged.failing,
        "-",
        "least factor of strength or contact below 1, or it snaps",
        "strength_factor.least_factor; mechanics.toughness.snap_likelihood, estimated",
    )


def failure_cost_out(option: Option, asked: Requirement) -> Spread | None:
    """Return what failures in service cost a part; None where no such cost is stated."""
    price = asked.load.failure_cost
    if price is None:
        return None
    return sampled_out(
        np.full(1, price * option.judged.failing_all),
        option.judged.prediction.bill.currency,
        "cost of a failure × chance of failing in service",
        "load.failure_cost",
        {"failure_cost": price, "chance": rounded(option.judged.failing_all) or "unknown"},
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


def layer_out(run: LayerRun | None) -> LayerOut | None:
    """Return how a layer is grown, None where none is."""
    if run is None:
        return None
    return LayerOut(
        medium=run.medium,
        temperature_c=run.temperature_c,
        hours=round(run.hours, 2),
        asked_mm=run.asked_mm,
        removed_mm=run.removed_mm,
        depth_mm=round(run.depth_mm, 3),
        falls_short=run.falls_short,
        profile=tuple(
            CasePointOut(
                depth_mm=round(point.depth_mm, 3),
                carbon_wt_pct=round(point.carbon_wt_pct, 3),
                hrc=round(point.hrc, 1),
            )
            for point in run.profile
        ),
    )


def _criteria(ranges: tuple[Range, ...], option: Option) -> dict[str, CriterionOut]:
    """Return the criteria of an option, with the share of the sample clipped to the range."""
    values = option.judged.values
    low, high = np.sort([(row.ideal, row.worst) for row in ranges], axis=1).T
    clipped = np.mean((values < low) | (values > high), axis=0)
    middles, merits = column_medians(values), option.merit.mean(axis=0)
    return {
        str(name): CriterionOut(
            value=round(float(middles[k]), 3),
            unit=ranges[k].unit,
            merit=round(float(merits[k]), 4),
            clipped_share=round(float(clipped[k]), 3),
        )
        for k, name in enumerate(CRITERIA)
    }


def option_out(
    job: Job,
    option: Option,
    place: int,
    ranges: tuple[Range, ...],
    reasons: tuple[str, ...] = (),
) -> OptionOut:
    """Return one option as plain data."""
    work, outcome = option.treatment, option.judged.prediction
    set_up = set_up_out(job, work)
    low, high = quantiles(option.scores, 0.05, 0.95)
    return OptionOut(
        id=option.id,
        place=place,
        steel=work.steel.name,
        steel_slug=work.steel.slug,
        spoken=work.steel.spoken,
        family=work.steel.family,
        family_name=job.catalog.families[work.steel.family].name,
        condition=work.condition.name,
        route=work.route.slug,
        route_name=work.route.name,
        route_kind=work.route.kind,
        medium=work.medium.slug if work.medium else None,
        source=work.source.slug if work.source else None,
        set_up=set_up,
        layer=layer_out(outcome.layer),
        procedure=procedure(job, outcome, option.choice, set_up),
        temper=temper_out(option.choice),
        gates=tuple(gate_out(gate) for gate in option.judged.gates),
        verdict=option.judged.verdict,
        score=round(option.score, 4),
        score_p05=round(low, 4),
        score_p95=round(high, 4),
        passing_all=round(option.judged.passing_all, 4),
        within_budget=rounded_share(option.judged.within_budget),
        hardness=HardnessOut(
            **{k: spread_out(v) for k, v in outcome.figures().items()},
            through=outcome.hard_through,
        ),
        movement_mm=movement_out(outcome.movement),
        permitted_movement_mm=outcome.movement.permitted_mm,
        crack=_crack(option),
        chief_risk=chief_risk(option),
        cost=CostOut(
            spread=cost_out(outcome.bill),
            currency=outcome.bill.currency,
            invented_prices=outcome.bill.invented,
            items={name: round(value, 2) for name, value in outcome.bill.items.items()},
        ),
        failing=failing_out(option),
        failure_cost=failure_cost_out(option, job.asked),
        days=outcome.bill.days,
        criteria=_criteria(ranges, option),
        reasons=reasons,
        cautions=tuple(of_option(job, outcome)),
    )  # fmt: skip
