"""What is out and why, what came nearest, and what is left of a part that is passed on."""

from collections import Counter

from selector.advice.advise import NEARLY
from selector.advice.record import AdviceOut, RejectedOut
from selector.gate import BEFORE_PREDICTION
from selector.wording import (
    condition_words,
    in_bath,
    in_sentence,
    right_words,
    shown_spread,
)

# Routes that leave the bar as it is sold.
UNHARDENED = frozenset({"as-bought", "prehard"})
# Lines of what is out: of what was predicted, and in all.
PREDICTED, SHOWN = 6, 14
NOTHING_HELPS = (
    "No single change lets in any of the steels it was tried with, which came nearest or are "
    "usual for such a part: a tool or a bath more, work sent out, less load, a wider window, "
    "thicker, more time or money."
)
WHOM_TO_ASK = (
    "Ask a stockholder for bar with an inspection certificate (EN 10204, 3.1), a heat-treat "
    "firm that certifies its work, and the engineer or insurer who answers for the part."
)
# What is known of a bar, by whether it lies in the rack with its certificate.
PROOF = {
    True: "on your rack, with its certificate",
    False: "on your rack: ask for its certificate",
    None: "buy it with its certificate",
}
# So many near misses, each of another steel, beside rack and bar as bought.
MISSES = 3
# So many bars are named of a part that is passed on.
BARS = 3


def rejected_lines(
    rejected: tuple[RejectedOut, ...],
    options: set[tuple[str, str]],
    *,
    coded: bool = True,
) -> list[str]:
    """Return what is out, a line a gate and reason: what was predicted first, then the rest."""
    out: dict[tuple[str, str], Counter[str]] = {}
    for item in rejected:
        ways = sum((item.family, route) not in options for route in item.routes)
        if ways:
            out.setdefault((item.gate, item.text), Counter())[item.steel] += ways
    rows = sorted(out.items(), key=lambda row: -sum(row[1].values()))
    # What was computed for this part says more than that there is no furnace.
    predicted = [row for row in rows if row[0][0] not in BEFORE_PREDICTION][:PREDICTED]
    screened = [row for row in rows if row[0][0] in BEFORE_PREDICTION]
    lines = []
    for (gate, text), steels in [*predicted, *screened][:SHOWN]:
        names = ", ".join(list(steels)[:5]) + (" and others" if len(steels) > 5 else "")
        lines.append(f"{gate}: {text} ({names})" if coded else f"{text.rstrip('.')} ({names})")
    return lines


def nearest_misses(advice: AdviceOut) -> list[str]:
    """Return the nearest misses where no option is left, a line a steel."""
    # The advice lists them nearest first. Where money stops them the nearest costs least over
    # the budget. The best bar of the rack and the best that is left as bought are among them,
    # if they come near at all.
    best: dict[str, RejectedOut] = {}
    for item in advice.rejected:
        if item.nearness > 0:
            best.setdefault(item.steel_slug, item)
    shown = list(best.values())[:MISSES]
    for kind in (lambda item: item.racked, lambda item: item.route_kind in UNHARDENED):
        other = next((i for i in best.values() if kind(i) and i.nearness >= NEARLY), None)
        shown += [other] if other is not None and other not in shown else []
    order = list(best.values())
    return [_missed(item) for item in sorted(shown, key=order.index)] or [
        "nothing comes near: what stops each stands below"
    ]


def _missed(item: RejectedOut) -> str:
    """Return one near miss: bar, route, what stops it and how often it comes right."""
    rack = ", from the rack" * item.racked
    way = in_bath(in_sentence(item.route_name), item.medium)
    return (
        f"{item.spoken}, {condition_words(item.condition)}{rack}: {way}: {item.text} "
        f"({right_words(item.share, item.within_budget)})"
    )


def certified_bars(advice: AdviceOut) -> tuple[str, ...]:
    """Return bar of a fitting kind for a part that is passed on, what is certified first."""
    held = {bar.id: bar.certified for bar in advice.rack if bar.id is not None}
    fit = [option for option in advice.options if option.route_kind in UNHARDENED]
    fit.sort(key=lambda option: (not held.get(option.id, False), option.place))
    return tuple(
        f"{option.spoken}, {condition_words(option.condition)}: "
        f"{shown_spread(option.hardness.surface)}" + f" ({PROOF[held.get(option.id)]})"
        for option in fit[:BARS]
    )
