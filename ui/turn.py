"""Where two options change places, in a sentence of the page."""

from collections.abc import Iterable

from selector.versus.record import SwapOut
from selector.versus.words import number
from ui.labels import upper

_AHEAD = {"cost": "is the cheaper", "score": "comes out ahead"}
# Of each axis: beyond a place above where the part stands now, and beyond one below.
_PLACES = {
    "quantity": ("from {at} pieces on", "below {at} pieces"),
    "hourly rate": (
        "once your hour costs more than {at} {money} (now {now})",
        "once your hour costs less than {at} {money} (now {now})",
    ),
    "bar price": (
        "once the bar of {second} costs more than {at} times that of {first} (now {now})",
        "once the bar of {second} costs less than {at} times that of {first} (now {now})",
    ),
    "crack rate": (
        "once {cracks} cracks more often than {at} (now {now})",
        "once {cracks} cracks less often than {at} (now {now})",
    ),
    "failure cost": (
        "once a failure in use costs more than {at} {money}",
        "once a failure in use costs less than {at} {money}",
    ),
}


_BY = {
    "quantity": "how many are made",
    "hourly rate": "what your hour costs",
    "bar price": "the price of the bars",
    "crack rate": "how often one cracks",
    "failure cost": "what a failure in use costs",
}


def unturned(swaps: Iterable[SwapOut]) -> str:
    """Return what the cheaper of two does not hang on; empty where it hangs on all."""
    never = [_BY[swap.axis] for swap in swaps if swap.at is None and swap.by == "cost"]
    return f"Which is the cheaper does not hang on {', nor on '.join(never)}." if never else ""


def turned(swaps: Iterable[SwapOut], first: str, second: str, currency: str) -> list[str]:
    """Return who takes the lead where two options change places, each place once.

    Parameters
    ----------
    swaps : iterable of SwapOut
        Places of the two; one that never comes is passed over.
    first, second : str
        What the two are called.
    currency : str
        Of the prices.

    Returns
    -------
    list of str
        Sentences.
    """
    leads: dict[tuple[str, str], list[str]] = {}
    for swap in swaps:
        if swap.at is not None:
            gains = second if swap.ahead_now == "first" else first
            place = _place(swap, swap.at, first, second, currency)
            leads.setdefault((gains, place), []).append(_AHEAD[swap.by])
    return [
        f"{upper(gains)} {' and '.join(leading)} {place}."
        for (gains, place), leading in leads.items()
    ]


def _place(swap: SwapOut, at: float, first: str, second: str, currency: str) -> str:
    """Return where two options change places."""
    now = 1.0 if swap.now is None else swap.now
    place = _PLACES[swap.axis][0 if at > now else 1].format(
        at=number(at, swap.axis), now=number(now, swap.axis), money=currency,
        first=first, second=second, cracks=first if swap.unit == "of the first" else second,
    )  # fmt: skip
    return place.replace("the bar of it ", "its bar ")
