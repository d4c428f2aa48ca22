"""The smallest trial that settles what is most uncertain of an option, and what it is worth."""

import itertools
from collections.abc import Callable

import numpy as np

from selector.decision.option import Option
from selector.decision.output import temper_out
from selector.decision.set_up_out import set_up_out
from selector.job.job import Job
from selector.option.caution import of_option
from selector.option.cost import coupon_cost, order_of
from selector.procedure.doing import Doing
from selector.procedure.instrument import (
    OPEN,
    Instrument,
    Window,
    asked_window,
    go_window,
    instruments,
)
from selector.procedure.quenching import bath_l
from selector.procedure.steps import procedure
from selector.trial.coupon import coupons
from selector.trial.narrowing import Outcomes, Trial, after_go, counted, narrowing, outcomes
from selector.trial.reading import (
    SNAPPED,
    crack_reading,
    heat_reading,
    quenched_reading,
    snapped_reading,
    tempered_reading,
)
from selector.trial.record import (
    SCHEMA_VERSION,
    ForecastOut,
    ReadingOut,
    TrialCostOut,
    TrialPlanOut,
)
from selector.trial.subject import OF_QUANTITY, WORDS, New, Question, question
from selector.trial.words import headline, steps
from selector.undisturbed import undisturbed

# More coupons than this nobody makes for one part; another must narrow by so much more. [-]
MOST, WORTH_ONE_MORE = 4, 0.04
_UNITS = {"surface": "HRC", "depth_mm": "mm", "crack_rate": "-"}
COUNTS = range(1, MOST + 1)
_AS_THE_ZONE = (
    "A coupon of the zone's section, heated and quenched as the zone, is taken to come out as "
    "the zone does."
)
_LASTING = (
    "It tells of what lasts: bar, hand, torch, bath and oven; what changes from heat to heat "
    "stays."
)
_ERRORS = "The errors of the tests are estimates of practice."


@undisturbed()
def plan(job: Job, option: Option, new: New | None = None) -> TrialPlanOut:
    """Return the smallest trial that settles what is most uncertain of an option.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        Predicted and judged.
    new : str, optional
        What is new to the workshop: "bar", "torch", "bath" or "oven".

    Returns
    -------
    TrialPlanOut
        Ready for JSON, terminal, card and a log.

    Raises
    ------
    RequirementError
        When the option uses nothing of the kind that is named as new.
    """
    asked = question(job, option, new)
    prediction, work = option.judged.prediction, option.treatment
    set_up = set_up_out(job, work)
    do = Doing(job, prediction, option.choice, set_up)
    test = _test(do, asked)
    seen_by = _seen(do, asked, test)
    by_count = tuple(narrowing(asked.value, seen_by(n)) for n in COUNTS)
    count = _fewest(by_count)
    forecast = _forecast(option, asked, seen_by(count), by_count, _go(do, asked, test))
    made = coupons(do, asked.subject, count)
    readings = _readings(do, asked, test)
    cost = _cost(do, len(made))
    done = procedure(job, prediction, option.choice, set_up)
    return TrialPlanOut(
        schema_version=SCHEMA_VERSION,
        id=f"{option.id}/{asked.subject}",
        part=job.asked.part.name,
        option=option.id,
        subject=asked.subject,
        asked_for=asked.asked_for,
        headline=headline(made, WORDS[asked.subject]),
        why=asked.why,
        coupons=made,
        set_up=set_up,
        temper=temper_out(option.choice) if option.choice.temper.means != "none" else None,
        bath_l=bath_l(do),
        gas_kg_per_h=_gas(do),
        readings=readings,
        steps=steps(do, asked.subject, made, readings, done),
        forecast=forecast,
        share={name: round(part, 3) for name, part in asked.parts.share.items()},
        cost=cost,
        assumed=(_AS_THE_ZONE, _LASTING, _ERRORS),
        cautions=_cautions(do),
    )


def _test(do: Doing, asked: Question) -> Instrument:
    """Return the test whose reading is counted: the workshop's that narrows most."""
    if asked.quantity == "depth_mm":
        return SNAPPED
    return max(
        instruments(do.checks),
        key=lambda test: narrowing(asked.value, outcomes(_of(asked, test))),
    )


def _of(asked: Question, test: Instrument, count: int = 1) -> Trial:
    """Return a trial of so many coupons by one test."""
    scatter = float(np.hypot(asked.parts.scatter, test.scatter))
    return Trial(asked.parts.centre, scatter, test.bias, count, test.edges)


def _seen(do: Doing, asked: Question, test: Instrument) -> Callable[[int], Outcomes]:
    """Return what so many coupons may show."""
    rate = do.prediction.crack.rate

    def of(count: int) -> Outcomes:
        if asked.quantity == "crack_rate":
            return counted(rate, count)
        return outcomes(_of(asked, test, count))

    return of


def _fewest(by_count: tuple[float, ...]) -> int:
    """Return how many coupons to make: as few as another would hardly add to."""
    for count, (here, more) in enumerate(itertools.pairwise(by_count), start=1):
        if more - here < WORTH_ONE_MORE:
            return count
    return len(by_count)


def _go(do: Doing, asked: Question, test: Instrument) -> Window:
    """Return what the counted reading may be for a go."""
    if asked.quantity == "crack_rate":
        return Window(high=0.0)
    if asked.quantity == "depth_mm":
        return Window(low=do.lead.depth_mm)
    return go_window(test, asked_window(do))


def _forecast(
    option: Option, asked: Question, seen: Outcomes, by_count: tuple[float, ...], go: Window
) -> ForecastOut:
    """Return what is to be narrowed, before the trial and as expected after."""
    low, middle, high = (float(q) for q in np.quantile(asked.value, (0.05, 0.5, 0.95)))
    narrows = by_count[_fewest(by_count) - 1]
    ends = (
        -np.inf if go.low <= -OPEN else go.low,
        np.inf if go.high >= OPEN else go.high,
    )
    chance, right = after_go(option.judged.right, seen, seen.within(*ends))
    digits = 4 if asked.quantity == "crack_rate" else 2
    return ForecastOut(
        quantity=asked.quantity,
        words=OF_QUANTITY[asked.quantity],
        unit=_UNITS[asked.quantity],
        p05=round(low, digits),
        p50=round(middle, digits),
        p95=round(high, digits),
        width_after=round((high - low) * (1.0 - narrows), digits),
        narrowing=round(narrows, 3),
        by_count=tuple(round(share, 3) for share in by_count),
        go=round(chance, 4),
        right=round(option.judged.passing_all, 4),
        right_after_go=None if np.isnan(right) else round(right, 4),
    )


def _readings(do: Doing, asked: Question, test: Instrument) -> tuple[ReadingOut, ...]:
    """Return what is read, in the order of the work."""
    by_hardness = asked.quantity == "surface"
    hard = instruments(do.checks)
    first = test if by_hardness else hard[0]
    if do.work.route.process == "none":
        return (tempered_reading(do, first, counted=by_hardness),)
    readings = [*heat_reading(do), *quenched_reading(do, hard[0])]
    if do.work.hardens or do.work.route.process == "case":
        readings.append(snapped_reading(do, counted=asked.quantity == "depth_mm"))
    readings.append(tempered_reading(do, first, counted=by_hardness))
    if asked.quantity == "crack_rate":
        readings.append(crack_reading(do))
    return tuple(readings)


def _cost(do: Doing, count: int) -> TrialCostOut:
    """Return what the coupons cost, and what of it the price of the part holds already."""
    bill, layer = do.prediction.bill, do.prediction.layer
    hours = layer.hours if layer else 0.0
    one = coupon_cost(do.work, do.temper, order_of(do.job), hours)
    return TrialCostOut(
        total=round(count * one, 2),
        counted_in_price=round(bill.items["coupon"] * do.part.quantity, 2),
        currency=bill.currency,
        invented_prices=bill.invented,
    )


def _gas(do: Doing) -> float | None:
    """Return the gas that the torch is said to burn. [kg/h]."""
    slug = do.work.source.slug if do.work.source else None
    return next((h.gas_flow for h in do.shop.heat if h.source == slug), None)


def _cautions(do: Doing) -> tuple[str, ...]:
    """Return the cautions of a trial: those of the option, at its steps."""
    return tuple(of_option(do.job, do.prediction))
