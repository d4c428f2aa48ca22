"""The fewest bars on the rack that serve all parts of a batch within a stated loss."""

from collections import defaultdict
from collections.abc import Mapping

from selector.batch.cover import fewest
from selector.batch.record import BarOut, PartOut, RackOut, ServedOut, ServingOut

LOSS = 0.05


def rule_words(loss: float) -> str:
    """Return what counts as a bar, and when it serves.

    Parameters
    ----------
    loss : float
        How much less a score may be. [-]

    Returns
    -------
    str
        For the reader of the summary.
    """
    return (
        "A bar is one steel in one supply condition, whatever its size. It serves a part "
        f"where the best that is made of it scores at most {loss:g} less than the part's "
        "first choice (scores run from 0 to 1). Near-equivalents that the advice had no need "
        "to weigh are not looked at; parts that are referred to others are left out."
    )


def rack(parts: Mapping[str, PartOut], loss: float = LOSS) -> RackOut:
    """Return the fewest bars that serve all parts that any bar serves.

    Parameters
    ----------
    parts : mapping of str to PartOut
        By their places in the batch.
    loss : float
        How much less than its first choice a part may score. [-]

    Returns
    -------
    RackOut
        The bar that serves the most parts first; each part at the one it scores best with.
    """
    serving = {
        place: {_name(bar): bar for bar in part.bars if part.bars[0].score - bar.score <= loss}
        for place, part in parts.items()
        if part.bars
    }
    names, proved = fewest(
        [frozenset(bars) for bars in serving.values()], _dislike(serving, parts, loss)
    )
    served: dict[str, list[tuple[ServedOut, ServingOut]]] = defaultdict(list)
    for place, bars in serving.items():
        best = max(sorted(names & bars.keys()), key=lambda name: bars[name].score)
        # The first choice is no worse than what scores more: near ties go by ease.
        less = max(parts[place].bars[0].score - bars[best].score, 0.0)
        served[best].append((ServedOut(place=place, id=bars[best].id, loss=less), bars[best]))
    bars_out = (_bar(group) for group in served.values())
    return RackOut(
        loss=loss,
        rule=rule_words(loss),
        bars=tuple(sorted(bars_out, key=lambda bar: (-len(bar.serves), bar.steel_slug))),
        fewest=proved,
        not_served=tuple(place for place, part in parts.items() if not part.bars),
    )


def _name(bar: ServingOut) -> str:
    """Return what a bar is called by: steel and condition."""
    return f"{bar.steel_slug}/{bar.condition}"


def _dislike(
    serving: Mapping[str, Mapping[str, ServingOut]], parts: Mapping[str, PartOut], loss: float
) -> dict[str, float]:
    """Return the mean share of the loss that each bar costs the parts it serves, 0 to 1."""
    shares: dict[str, list[float]] = defaultdict(list)
    for place, bars in serving.items():
        for name, bar in bars.items():
            less = max(parts[place].bars[0].score - bar.score, 0.0)
            shares[name].append(less / loss if loss else 0.0)
    return {name: sum(held) / len(held) for name, held in shares.items()}


def _bar(group: list[tuple[ServedOut, ServingOut]]) -> BarOut:
    """Return a bar with what it serves."""
    bar = group[0][1]
    return BarOut(
        steel_slug=bar.steel_slug,
        spoken=bar.spoken,
        condition=bar.condition,
        thickest_mm=tuple(sorted({round(made.size_mm, 2) for _, made in group})),
        serves=tuple(served for served, _ in group),
    )
