"""The tables of the page: advice as plain data into data frames, words and units in place."""

from collections import Counter
from collections.abc import Iterable, Mapping

import pandas as pd

from selector.advice.record import AdviceOut, RangeOut, RejectedOut
from selector.record import OptionOut, Spread
from selector.wording import (
    condition_words,
    shown,
    shown_mm,
    shown_range,
    shown_spread,
    temper_words,
)
from ui import labels


def ranking(options: Iterable[OptionOut], media: Mapping[str, str]) -> pd.DataFrame:
    """Return the ranked options, one a row.

    Parameters
    ----------
    options : iterable of OptionOut
        Best first.
    media : mapping
        Names of the quenching media by slug.

    Returns
    -------
    DataFrame
        Texts, ready to be shown.
    """
    return pd.DataFrame(
        {
            "No.": option.place,
            "Steel, as bought": f"**{option.spoken}**, {condition_words(option.condition)}",
            "Route": labels.route(option, media),
            "Temper": temper_words(option.temper),
            "Surface hardness": shown_spread(option.hardness.surface),
            "Comes out right": labels.share(option.passing_all),
            "Inside the budget": labels.share(option.within_budget, "no budget"),
            "Cost of a good part": labels.money(option.cost),
            "In hand after": f"{option.days:g} days",
            "Score": f"{option.score:.2f}",
        }
        for option in options
    )


def demands(option: OptionOut) -> pd.DataFrame:
    """Return what the part demands and how the option meets it."""
    return pd.DataFrame(
        {
            "Demand": labels.words(gate.name),
            "Met": labels.words(gate.verdict),
            "Chance": labels.share(gate.share),
            "Why": labels.plain(gate.text),
        }
        for gate in option.gates
    )


def _bow(movement: Spread) -> str:
    """Return a bow with its upper end, to a hundredth of a millimetre."""
    return f"{shown_mm(movement.p50 or 0.0)}, at most {shown_mm(movement.p95 or 0.0)}"


def predicted(option: OptionOut) -> pd.DataFrame:
    """Return what is predicted of the part, with its 90 % range."""
    rows = {
        "Surface hardness": shown_spread(option.hardness.surface),
        "Core hardness": shown_spread(option.hardness.core),
        "Shank hardness": shown_spread(option.hardness.shank),
        "Hard to a depth of": labels.span(option.hardness.depth_mm, 1),
        "Bow": f"{_bow(option.movement_mm)}; permitted {option.permitted_movement_mm:g} mm",
        "Cost of a good part": labels.money(option.cost),
        "In hand after": f"{option.days:g} days",
    }
    return pd.DataFrame({"Predicted": rows.keys(), "Middle (5 to 95 in 100)": rows.values()})


def cost_items(option: OptionOut) -> pd.DataFrame:
    """Return what the cost of a good part is made of."""
    return pd.DataFrame(
        {
            "Item": [labels.words(name) for name in option.cost.items],
            option.cost.currency: [f"{value:.2f}" for value in option.cost.items.values()],
        }
    )


def criteria(option: OptionOut, ranges: Iterable[RangeOut]) -> pd.DataFrame:
    """Return the option's value, merit and weight on each criterion."""
    currency = option.cost.currency
    return pd.DataFrame(
        {
            "Weighed": labels.upper(row.words),
            "Value": labels.number(option.criteria[row.criterion].value, row.unit, currency),
            "How good, 0 to 1": f"{option.criteria[row.criterion].merit:.2f}",
            "Weight": f"{100 * row.weight:.0f} %",
        }
        for row in ranges
    )


def asked(advice: AdviceOut) -> pd.DataFrame:
    """Return what each zone was taken to ask."""
    return pd.DataFrame(
        {
            "Zone": zone.zone,
            "Hardness aimed at": _window(zone.low_hrc, zone.high_hrc),
            "Must lie between": _window(zone.floor_hrc, zone.ceiling_hrc),
            "Hard to a depth of": f"{zone.depth_mm:g} mm" if zone.depth_mm else "not asked",
            "Because": labels.plain(zone.reason),
        }
        for zone in advice.zones
    )


def _window(low: float | None, high: float | None) -> str:
    """Return a hardness window, either end open."""
    if low is None and high is None:
        return "none"
    if high is None:
        return f"{shown(low or 0.0)} or more"
    return f"up to {shown(high)}" if low is None else shown_range(low, high)


def gate_counts(rejected: Iterable[RejectedOut]) -> dict[str, int]:
    """Return how many routes failed at each demand, most first."""
    return dict(Counter(item.gate for item in rejected).most_common())


def rejected(advice: AdviceOut, gate: str) -> pd.DataFrame:
    """Return why routes failed at one demand: a reason a row, with its steels.

    Parameters
    ----------
    advice : AdviceOut
        The advice.
    gate : str
        The demand.

    Returns
    -------
    DataFrame
        Most frequent reason first.
    """
    groups: dict[str, list[RejectedOut]] = {}
    for item in advice.rejected:
        if item.gate == gate:
            groups.setdefault(item.text.replace(item.steel, "it"), []).append(item)
    ordered = sorted(groups.items(), key=lambda group: -len(group[1]))
    return pd.DataFrame(
        {
            "Reason": labels.plain(labels.upper(text)),
            "Steels": _listed(item.steel for item in items),
            "Routes": _listed(labels.lower(labels.words(item.route)) for item in items),
            "Count": len(items),
        }
        for text, items in ordered
    )


def _listed(names: Iterable[str]) -> str:
    """Return names once each, in their order."""
    return ", ".join(dict.fromkeys(names))


def apart(advice: AdviceOut) -> pd.DataFrame:
    """Return what cannot be judged yet, and what to look into."""
    rows = dict.fromkeys((item.steel, item.text, item.find_out or "") for item in advice.apart)
    return pd.DataFrame(
        {"Steel": steel, "Unknown": labels.plain(text), "Find out": labels.plain(find_out)}
        for steel, text, find_out in rows
    )


def methods(advice: AdviceOut) -> pd.DataFrame:
    """Return the first three of each other method."""
    named = {option.id: labels.option(option) for option in advice.options}
    return pd.DataFrame(
        {
            "Method": method.method,
            "Same first": "yes" if method.agrees_on_first else "no",
            "First three (with their place here)": "; ".join(
                named.get(key, key) for key in method.order[:3]
            ),
        }
        for method in advice.other_methods
    )


def pairwise(advice: AdviceOut) -> pd.DataFrame:
    """Return how often in 100 the option of the row stands above that of the column.

    Parameters
    ----------
    advice : AdviceOut
        The advice.

    Returns
    -------
    DataFrame
        A square, the leading options by place.
    """
    pairs = {(p.first, p.second): p.share for p in advice.pairwise}
    keys = {first for first, _ in pairs}
    leading = [option for option in advice.options if option.id in keys]
    columns = {
        f"above {column.place}": [
            f"{100 * pairs[row.id, column.id]:.0f}" if row.id != column.id else "–"
            for row in leading
        ]
        for column in leading
    }
    return pd.DataFrame({"Option": [labels.option(row) for row in leading], **columns})


def nearest(advice: AdviceOut) -> pd.DataFrame:
    """Return the five rejected routes that meet all demands most often."""
    near = sorted(advice.rejected, key=lambda item: -item.share)[:5]
    return pd.DataFrame(
        {
            "Steel": f"{item.steel}, {item.condition}",
            "Route": labels.words(item.route),
            "Misses": f"{labels.words(item.gate)}: {labels.plain(item.text)}",
            "Comes out right": labels.share(item.share),
        }
        for item in near
        if item.share > 0
    )


def ranges(advice: AdviceOut) -> pd.DataFrame:
    """Return the ends each criterion is weighed between, and where they come from."""
    currency = advice.options[0].cost.currency if advice.options else "currency"
    return pd.DataFrame(
        {
            "Weighed": labels.upper(row.words),
            "Best": labels.number(row.ideal, row.unit, currency),
            "Worst": labels.number(row.worst, row.unit, currency),
            "Weight": f"{100 * row.weight:.0f} %",
            "Where the ends come from": labels.plain(row.basis),
        }
        for row in advice.ranges
    )


def first_screen(advice: AdviceOut) -> list[str]:
    """Return the lines of the few worst cautions of the first option, the worst first."""
    first = [caution for caution in advice.cautions if caution.first_screen]
    return [caution.brief for caution in sorted(first, key=lambda c: c.rank or 0)]


def by_step(advice: AdviceOut) -> dict[str, list[str]]:
    """Return the cautions by the step of the work, in their order."""
    steps: dict[str, list[str]] = {}
    for caution in advice.cautions:
        steps.setdefault(caution.step, []).append(caution.text)
    return steps
