"""Where two options change places, in sentences."""

import math

from selector.versus.record import SideOut, SwapOut

_WORDS = {"cost": "cheaper", "score": "better"}


def number(value: float, axis: str) -> str:
    """Return a place on an axis: crack rate in 100, money without cents, pieces whole."""
    if axis == "crack rate":
        return f"{100 * value:.2g} %"
    return f"{value:.0f}" if axis != "bar price" else f"{value:.2g}"


def swapped(
    axis: str, by: str, unit: str, places: tuple[float, float | None, float, float], ahead: str
) -> str:
    """Return where two options change places along one axis.

    Parameters
    ----------
    axis, by, unit : str
        Axis, what is compared, and the unit of the axis.
    places : tuple of float
        Where the part stands now, where they swap (None if never), and the ends searched.
    ahead : str
        The one ahead now.

    Returns
    -------
    str
        One sentence.
    """
    now, at, low, high = (None if p is None else number(p, axis) for p in places)
    word = _WORDS[by]
    if at is None:
        return f"{axis}: never; {ahead} is the {word} from {low} to {high} ({unit})"
    up = float(places[1] or 0.0) > places[0]
    turn = "from" if up else "up to" if axis != "quantity" else "below"
    return f"{axis}: {ahead} is the {word} now ({now}), the other {turn} {at} ({unit})"


def failing(ahead: str, at: float | None, chances: list[float], currency: str) -> str:
    """Return what a failure in service would have to cost to turn the cost round.

    Parameters
    ----------
    ahead : str
        The cheaper one.
    at : float or None
        Cost of a failure where they swap.
    chances : list of float
        Chance of failing of both; NaN where unknown.
    currency : str
        Of the cost.

    Returns
    -------
    str
        One sentence.
    """
    if any(math.isnan(chance) for chance in chances):
        return "failure cost: unknown, because the toughness of one is not known"
    odds = " against ".join(f"{100 * chance:.2g} %" for chance in chances)
    if at is None:
        return f"failure cost: never; {ahead} stays the cheaper (they fail in {odds})"
    return (
        f"failure cost: {ahead} is the cheaper until a failure in service costs "
        f"{at:.0f} {currency} (they fail in {odds}, estimated)"
    )


def headline(first: SideOut, second: SideOut, swaps: tuple[SwapOut, ...]) -> str:
    """Return who is ahead by score and cost, and at what quantity the cost turns."""
    ahead, behind = (first, second) if first.score >= second.score else (second, first)
    text = (
        f"{_what(ahead)} stands ahead of {_what(behind)}: score {ahead.score:.2f} against "
        f"{behind.score:.2f}, {ahead.cost.p50:.0f} against {behind.cost.p50:.0f} "
        f"{ahead.cost.unit} a good part."
    )
    turn = next((s for s in swaps if s.axis == "quantity" and s.by == "cost"), None)
    if turn is None:
        return text
    sides = {"first": first, "second": second}
    cheap = sides.pop(turn.ahead_now)
    (dear,) = sides.values()
    one_steel = first.steel == second.steel
    cheap_name, dear_name = (_what(s) if one_steel else s.steel for s in (cheap, dear))
    if turn.at is None:
        return f"{text} {cheap_name} is the cheaper at any quantity to {turn.high:.0f}."
    if turn.now is not None and turn.at > turn.now:
        return f"{text} From {turn.at:.0f} pieces on {dear_name} is the cheaper."
    return f"{text} Below {turn.at:.0f} pieces {dear_name} is the cheaper."


def _what(side: SideOut) -> str:
    """Return an option by steel, condition and route."""
    return f"{side.steel} ({side.condition}; {side.route[0].lower()}{side.route[1:]})"
