"""Where two options change places, in sentences."""

import math
from dataclasses import dataclass

from selector.versus.record import SideOut, SwapOut
from selector.wording import condition_words, in_sentence, times_in_100

_WORDS = {"cost": "cheaper", "score": "better"}


def number(value: float, axis: str) -> str:
    """Return a place on an axis: crack rate in 100, money without cents, pieces whole."""
    if axis == "crack rate":
        return f"{100 * value:.2g} in 100"
    return f"{value:.0f}" if axis != "bar price" else f"{value:.2g}"


@dataclass(frozen=True, slots=True)
class Course:
    """Where the part stands on an axis, where two swap (None if never), the ends searched."""

    now: float
    at: float | None
    low: float
    high: float


def swapped(axis: str, by: str, unit: str, course: Course, ahead: str) -> str:
    """Return where two options change places along one axis."""
    word = _WORDS[by]
    if course.at is None:
        low, high = number(course.low, axis), number(course.high, axis)
        return f"{axis}: never; {ahead} is the {word} from {low} to {high} ({unit})"
    now, at = number(course.now, axis), number(course.at, axis)
    turn = "up to" if axis != "quantity" else "below"
    if course.at > course.now:
        turn = "from"
    return f"{axis}: {ahead} is the {word} now ({now}), the other {turn} {at} ({unit})"


def failing(ahead: str, at: float | None, chances: tuple[float, float], currency: str) -> str:
    """Return what a failure in service would have to cost to turn the cost round."""
    if any(math.isnan(chance) for chance in chances):
        return "failure cost: unknown, because the toughness of one is not known"
    odds = " against ".join(times_in_100(chance) for chance in chances)
    if at is None:
        return f"failure cost: never; {ahead} stays the cheaper (they fail {odds})"
    return (
        f"failure cost: {ahead} is the cheaper until a failure in service costs "
        f"{at:.0f} {currency} (they fail {odds}, estimated)"
    )


def headline(first: SideOut, second: SideOut, swaps: tuple[SwapOut, ...]) -> str:
    """Return who is ahead by score and cost, and at what quantity the cost turns."""
    ahead, behind = (first, second) if first.score >= second.score else (second, first)
    text = (
        f"{_what(ahead)} stands ahead of {_what(behind)}: right "
        f"{times_in_100(ahead.passing_all)} against {times_in_100(behind.passing_all)}, "
        f"{ahead.cost.p50:.0f} against "
        f"{behind.cost.p50:.0f} {ahead.cost.unit} a good part."
    )
    turn = next((s for s in swaps if s.axis == "quantity" and s.by == "cost"), None)
    if turn is None:
        return text
    sides = {"first": first, "second": second}
    cheap = sides.pop(turn.ahead_now)
    (dear,) = sides.values()
    one_steel = first.steel == second.steel
    cheap_name, dear_name = (_what(s) if one_steel else s.spoken for s in (cheap, dear))
    if turn.at is None:
        return f"{text} {cheap_name} is the cheaper at any quantity to {turn.high:.0f}."
    if turn.now is not None and turn.at > turn.now:
        return f"{text} From {turn.at:.0f} pieces on {dear_name} is the cheaper."
    return f"{text} Below {turn.at:.0f} pieces {dear_name} is the cheaper."


def _what(side: SideOut) -> str:
    """Return an option by steel, condition and route."""
    bar, route = condition_words(side.condition), in_sentence(side.route)
    return f"{side.spoken} ({bar}; {route})"
