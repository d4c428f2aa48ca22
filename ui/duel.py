"""Two options side by side in figures, and what each costs by how many are made."""

from selector.record import Spread
from selector.versus.record import SideOut, VersusOut
from selector.wording import condition_words, in_100, shown_mm, shown_spread, temper_words
from ui import strip
from ui.figures import days_words, money
from ui.labels import lower, upper
from ui.piece import e


def sides(found: VersusOut) -> str:
    """Return both sides as two columns of one table.

    Parameters
    ----------
    found : VersusOut
        Both.

    Returns
    -------
    str
        HTML.
    """
    pair = (found.first, found.second)
    rows = [
        ("a good part", [money(side.cost, found.currency) for side in pair]),
        ("comes out right", [e(in_100(side.passing_all)) for side in pair]),
        ("inside the budget", [_share(side.within_budget) for side in pair]),
        ("surface", [e(shown_spread(side.surface)) for side in pair]),
        ("core", [e(shown_spread(side.core)) for side in pair]),
        ("as hard down to", [_depth(side) for side in pair]),
        ("moves", [_moved(side.movement_mm) for side in pair]),
        ("in hand", [f"{days_words(side.days)} days" for side in pair]),
        ("temper", [e(temper_words(side.temper)) for side in pair]),
        ("needs", [_listed(side.needs) for side in pair]),
    ]
    if any(side.risks for side in pair):
        rows.append(("risks", [_listed(side.risks) for side in pair]))
    body = "".join(
        f"<tr><th scope='row'>{e(head)}</th>"
        f"{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>"
        for head, cells in rows
    )
    heads = "".join(f"<th scope='col'>{e(_name(side))}</th>" for side in pair)
    return (
        f"<table class='tw-lines tw-duel'><thead><tr><td></td>{heads}</tr></thead>"
        f"<tbody>{body}</tbody></table>"
    )


def _name(side: SideOut) -> str:
    """Return a side in a line."""
    return f"{side.spoken}, {condition_words(side.condition)}: {lower(side.route)}"


def _share(share: float | None) -> str:
    """Return a share, or that nothing was asked."""
    return "no budget given" if share is None else e(in_100(share))


def _depth(side: SideOut) -> str:
    """Return how deep a side is as hard as asked."""
    depth = side.depth_mm
    if side.surface == side.core:
        return "all through"
    if depth.p50 is None or depth.p05 is None or depth.p95 is None:
        return "not known"
    low, middle, high = (f"{v:.1f}" for v in (depth.p05, depth.p50, depth.p95))
    ends = "" if low == high else f" <span class='tw-ends'>{low} to {high}</span>"
    return f"{middle} mm{ends}"


def _moved(movement: Spread) -> str:
    """Return how much a side moves in the work."""
    low, middle, high = movement.p05, movement.p50, movement.p95
    if low is None or middle is None or high is None:
        return "not known"
    if high == 0.0:
        return "not at all"
    if shown_mm(low) == shown_mm(high):
        return e(shown_mm(middle))
    ends = f"{shown_mm(low).removesuffix(' mm')} to {shown_mm(high)}"
    return f"{e(shown_mm(middle))} <span class='tw-ends'>{e(ends)}</span>"


def _listed(texts: tuple[str, ...]) -> str:
    """Return texts as a list."""
    return "<ul>" + "".join(f"<li>{e(upper(text))}</li>" for text in texts) + "</ul>"


def by_quantity(found: VersusOut) -> str:
    """Return what a good part costs either way, by how many are made."""
    every = [s for pair in (found.first_cost, found.second_cost) for s in pair]
    scale = strip.scale_over([v for s in every for v in (s.p05, s.p95)])
    rows = "".join(
        f"<tr><th scope='row'>{count}</th>"
        + "".join(
            f"<td><div class='tw-beside'><b>{spread.p50 or 0.0:.0f}</b>"
            f"{strip.bar(spread.p05, spread.p50, spread.p95, scale)}</div></td>"
            for spread in (one, other)
        )
        + "</tr>"
        for count, one, other in zip(
            found.quantity, found.first_cost, found.second_cost, strict=True
        )
    )
    heads = (
        f"<th scope='col'>pieces</th><th scope='col'>{e(found.first.spoken)}, "
        f"{e(found.currency)}</th><th scope='col'>{e(found.second.spoken)}, "
        f"{e(found.currency)}</th>"
    )
    return (
        f"<table class='tw-lines tw-many'><thead><tr>{heads}</tr></thead>"
        f"<tbody>{rows}</tbody></table>"
    )
