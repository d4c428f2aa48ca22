"""A trial in sentences: its steps, its block on the card, its page in the terminal."""

from collections.abc import Sequence

from selector.procedure.doing import Doing
from selector.procedure.lines import short_lines
from selector.record import StepOut
from selector.trial.record import CouponOut, ForecastOut, ReadingOut, Subject, TrialPlanOut
from selector.wording import in_100, shown_range, times_in_100

# Who comes out right so often need not try. [-]
SURE = 0.95
# What narrows a forecast by less narrows it by nothing that is seen. [-]
LEAST_WORTH = 0.02
_AFTER = {
    "quenched": "After the bath, before the temper",
    "snapped": "Snap the end off as quenched",
    "tempered": "After the temper",
    "bar": "On the bar as it is",
    "crack": "Last, ten minutes later, look for cracks",
    "heat": "Seconds to heat",
}
# Read when all is done.
COLD = frozenset({"tempered", "crack"})
# What is seen of a coupon alone: no step of the part looks for it.
OFF_THE_CARD = frozenset({"snapped", "crack"})
_FIRST = {
    "bar": "First grind the bar beside a known piece and compare the sparks; a new file bites "
    "on it as on soft bar.",
    "heat": "Heat each by itself, find the heat anew each time, and write down what it was set "
    "to (gas and distance, or the dial), by what it was read, and how long it took.",
    "bath": "Write down the bath before and after, the seconds from the heat into it, and when "
    "it can just be held. Stir the same each time.",
    "temper": "Read the heat of the temper twice, beside the coupons too, by thermometer or "
    "crayon, and write down what both say. Take one out "
    "25 °C short first and try it: a temper can be taken further, never back.",
    "crack": "Cut into each the same holes, steps and corners as the part has.",
}  # fmt: skip


def size_words(coupon: CouponOut) -> str:
    """Return the size of a coupon: "Ø28 × 75 mm"."""
    across = {
        "round": f"Ø{coupon.size_mm:g}",
        "tube": f"Ø{coupon.size_mm:g} mm × {coupon.bore_mm or 0:g} mm bore",
        "square": f"{coupon.size_mm:g} mm square",
        "hexagon": f"{coupon.size_mm:g} mm across flats",
        "flat": f"{coupon.size_mm:g} × {coupon.width_mm or 0:g}",
    }[coupon.shape]
    return f"{across} × {coupon.length_mm:g} mm"


def headline(coupons: Sequence[CouponOut], what: str) -> str:
    """Return a trial in one sentence."""
    number = len(coupons)
    pieces = "One coupon" if number == 1 else f"{number} coupons"
    return f"{pieces} of {size_words(coupons[0])}, to settle {what}."


def steps(
    do: Doing,
    subject: Subject,
    coupons: Sequence[CouponOut],
    readings: Sequence[ReadingOut],
    done: Sequence[StepOut],
) -> tuple[str, ...]:
    """Return a trial step by step.

    Parameters
    ----------
    do : Doing
        The option as it is done.
    subject : str
        What the trial is to settle.
    coupons, readings : sequence
        What is made and what is read.
    done : sequence of StepOut
        The procedure of the part.

    Returns
    -------
    tuple of str
        In the order of the work.
    """
    number, one = len(coupons), coupons[0]
    each = "it" if number == 1 else "each"
    sawn = f"Saw {number} off {one.bar}: {size_words(one)}."
    if do.work.route.process == "none":
        return (sawn, *(_read(reading) for reading in readings))
    if do.work.route.place == "subcontract":
        sent = f"Send {each} with the part as a witness piece; ask for its hardness."
        return (sawn, sent, *(_read(r) for r in readings if r.stage == "tempered"))
    first, *then = (line.rstrip(".") for line in short_lines(done))
    hot = [_read(r) for r in readings if r.stage not in COLD]
    cold = [_read(r) for r in readings if r.stage in COLD]
    said = [sawn, f"Harden {each} as the part: {first}.", *hot]
    if subject == "temper" or not then:
        place = len(said)
    else:
        # What is done to the bar comes before the heat, what is written down after it.
        place = 1 if subject in {"bar", "crack"} else 2
    said.insert(place, _FIRST[subject])
    temper = [f"Then, what is left of {each}: {line}." for line in then]
    return (*said, *temper, *cold)


def _read(reading: ReadingOut) -> str:
    """Return one reading with what means go and what stops."""
    by = {"heat": "", "snapped": " in a covered vice, face shield on"}.get(
        reading.stage, f", {reading.means}"
    )
    text = f"{_AFTER[reading.stage]}{by}: go: {reading.go}"
    if reading.unit == "HRC" and reading.expected is not None:
        low, _, high = reading.expected
        text += f" (expect {shown_range(low, high)})"
    return f"{text}. Stop: {reading.no_go}."


def worth(plan: TrialPlanOut) -> tuple[str, ...]:
    """Return what a trial costs and what it is expected to be worth, in sentences."""
    said = []
    if plan.cost is not None:
        text = f"Costs about {plan.cost.total:.0f} {plan.cost.currency}"
        if plan.cost.counted_in_price > 0:
            text += f"; the price of the part counts {plan.cost.counted_in_price:.0f} of it"
        said.append("Costs no more than the offcut." if plan.cost.total < 0.5 else f"{text}.")
    if plan.forecast is not None:
        said += [_narrowing_words(plan.forecast), _chances(plan.forecast)]
        if plan.forecast.right >= SURE and plan.asked_for is None:
            said.append("By the forecast the part can do without it.")
    return tuple(said)


def _narrowing_words(forecast: ForecastOut) -> str:
    """Return by how much a forecast is expected to narrow, in a sentence."""
    width = forecast.p95 - forecast.p05
    if forecast.quantity == "crack_rate":
        before, after = (f"{100 * x:.1f}" for x in (width, forecast.width_after))
        unit = "points in 100"
    else:
        before, after = f"{width:.1f}", f"{forecast.width_after:.1f}"
        unit = forecast.unit
    if forecast.narrowing < LEAST_WORTH or before == after:
        return f"It hardly narrows the forecast of the {forecast.words}: {before} {unit} wide."
    return (
        f"Expected to narrow the forecast of the {forecast.words} from {before} to {after} "
        f"{unit} wide ({100 * forecast.narrowing:.0f} in 100 less)."
    )


def _chances(forecast: ForecastOut) -> str:
    """Return how often it says go, and how the part then comes out."""
    text = f"It says go {times_in_100(forecast.go)}"
    if forecast.right_after_go is None:
        return f"{text}."
    before, after = in_100(forecast.right), in_100(forecast.right_after_go)
    if before == after:
        return f"{text}; after it the part comes out right {after}, as before."
    return f"{text}; the part then comes out right {after}, {before} before the trial."


def card_lines(plan: TrialPlanOut) -> tuple[str, ...]:
    """Return a trial as the short block of a bench card.

    Parameters
    ----------
    plan : TrialPlanOut
        The trial.

    Returns
    -------
    tuple of str
        Four lines at most: what to make, what to do first, go and stop of what the steps of
        the card have not. What the trial is worth stands in the plan.
    """
    if plan.forecast is None:
        return (plan.headline, plan.why, *(_read(r) for r in plan.readings))
    lines = [f"{plan.headline[:-1]}, off {plan.coupons[0].bar}."]
    if plan.subject in _FIRST:
        lines.append(_FIRST[plan.subject])
    return (*lines, *(_read(r) for r in plan.readings if r.stage in OFF_THE_CARD))
