"""The choice in figures: four large ones, three ways that differ in kind, the list by route."""

from collections.abc import Iterable
from itertools import groupby

from selector.advice.record import AdviceOut, AlternativeOut, RackOut
from selector.procedure.lines import short_lines
from selector.record import CautionOut, OptionOut, Spread, ZoneOut
from selector.wording import condition_words, in_100, shown, shown_spread
from ui import strip
from ui.labels import upper, words
from ui.piece import e
from ui.strip import Scale

# So many of each route stand in the open, the others behind a line that opens.
_OPEN = 5


def money(spread: Spread, currency: str) -> str:
    """Return a cost with its range in grey."""
    if spread.p50 is None:
        return "<b>unknown</b>"
    ends = ""
    if spread.p05 is not None and spread.p95 is not None:
        ends = f" <span class='tw-ends'>{spread.p05:.0f} to {spread.p95:.0f}</span>"
    return f"<b>{spread.p50:.0f}</b> {e(currency)}{ends}"


def days_words(days: float) -> str:
    """Return days as they are said: "2½"."""
    whole, half = divmod(round(2 * days), 2)
    return (f"{whole}½" if whole else "½") if half else f"{whole}"


def asked_window(zones: Iterable[ZoneOut]) -> tuple[float, float] | None:
    """Return the hardness window of the first zone that asks for hardness. [HRC]."""
    for zone in zones:
        low = zone.low_hrc if zone.low_hrc is not None else zone.floor_hrc
        high = zone.high_hrc if zone.high_hrc is not None else zone.ceiling_hrc
        if low is not None:
            return low, high if high is not None else 66.0
    return None


def four(option: OptionOut, zones: Iterable[ZoneOut], budget: float | None) -> str:
    """Return hardness, cost, chance and days of an option, large.

    Parameters
    ----------
    option : OptionOut
        Mostly the first.
    zones : iterable of ZoneOut
        What was asked.
    budget : float, optional
        What a good part may cost.

    Returns
    -------
    str
        HTML.
    """
    surface, cost = option.hardness.surface, option.cost.spread
    window = asked_window(zones)
    hard = strip.scale_over((surface.p05, surface.p95), window)
    dear = strip.scale_over((0.0, cost.p05, cost.p95), limit=budget)
    limit = "" if budget is None else f"; your limit {budget:.0f}"
    asked = "" if window is None else f"; asked {window[0]:.0f} to {window[1]:.0f} HRC"
    figure, unit = _parted(shown(surface.p50 if surface.p50 is not None else float("nan")))
    # The strip runs in HRC: its figures stand under it only where the large one is in HRC too.
    under = strip.ticks(hard) if unit == "HRC" else ""
    boxes = (
        ("hardness", figure, unit,
         strip.bar(surface.p05, surface.p50, surface.p95, hard) + under,
         shown_spread(surface).partition("(")[2].rstrip(")") + asked),
        ("a good part", f"{cost.p50 or 0.0:.0f}", option.cost.currency,
         strip.bar(cost.p05, cost.p50, cost.p95, dear) + strip.ticks(dear),
         f"{cost.p05 or 0.0:.0f} to {cost.p95 or 0.0:.0f}{limit}"),
        ("comes out right", *_chance(option.passing_all), strip.squares(option.passing_all),
         option.chief_risk),
        ("in hand", days_words(option.days), "days", strip.half_days(option.days), ""),
    )  # fmt: skip
    return "<div class='tw-four'>" + "".join(_box(*box) for box in boxes) + "</div>"


def _chance(share: float) -> tuple[str, str]:
    """Return a chance as figure and unit."""
    figure, _, unit = in_100(share).rpartition(" in ")
    return figure, f"in {unit}"


def _parted(text: str) -> tuple[str, str]:
    """Return figure and unit of a text apart."""
    figure, _, unit = text.partition(" ")
    return figure, unit


def _box(head: str, figure: str, unit: str, drawing: str, foot: str) -> str:
    """Return one large figure with its drawing."""
    return (
        f"<div class='tw-box'><div class='tw-head'>{e(head)}</div>"
        f"<div class='tw-figure'>{e(figure)}<span class='tw-unit'> {e(unit)}</span></div>"
        f"{drawing}<div class='tw-foot'>{e(foot)}</div></div>"
    )


def card_of_first(option: OptionOut, why: str | None, drawing: str = "") -> str:
    """Return the first option as the card in the middle."""
    work = "; ".join(short_lines(option.procedure))
    said = [(head, upper(text)) for head, text in (("The work.", work), ("Why first.", why))
            if text]  # fmt: skip
    lines = _card_lines(
        option.cost.spread, option.cost.currency, option.passing_all, option.within_budget,
        shown_spread(option.hardness.surface), option.days,
    )  # fmt: skip
    bar = f"{option.spoken}, {condition_words(option.condition)}"
    said.append(("Chief risk.", upper(option.chief_risk)))
    return _card("First", bar, option.route_name, drawing, lines, said)


def card_of(way: AlternativeOut, option: OptionOut | None, drawing: str = "") -> str:
    """Return an answer of another kind as a card.

    Parameters
    ----------
    way : AlternativeOut
        The answer.
    option : OptionOut, optional
        The same among the ranked, for its range of hardness.
    drawing : str
        SVG.

    Returns
    -------
    str
        HTML.
    """
    hard = way.surface if option is None else shown_spread(option.hardness.surface)
    lines = _card_lines(
        way.cost, way.currency, way.passing_all, way.within_budget, hard, way.days
    )
    said = [
        ("The work.", f"{upper(way.doing)}; {way.work_h:.1f} h at the bench"),
        ("Chief risk.", upper(way.risk)),
        ("Why not first.", upper(way.why_not_first)),
    ]
    route = "" if option is None else option.route_name
    return _card(way.kind_words, way.bar, route, drawing, lines, said)


def _card_lines(
    cost: Spread, currency: str, right: float, within: float | None, hard: str, days: float
) -> str:
    """Return the four figures of a card as the lines of a table."""
    middle, _, ends = hard.partition(" (")
    ends = f" <span class='tw-ends'>{e(ends.rstrip(')'))}</span>" if ends else ""
    rows = [
        ("a good part", money(cost, currency)),
        ("comes out right", e(in_100(right))),
        ("hardness", f"<b>{e(middle)}</b>{ends}"),
        ("in hand", f"<b>{days_words(days)}</b> days"),
    ]
    if within is not None:
        rows.insert(2, ("inside the budget", e(in_100(within))))
    return "".join(
        f"<tr><th scope='row'>{e(head)}</th><td>{cell}</td></tr>" for head, cell in rows
    )


def _card(
    kind: str, bar: str, way: str, drawing: str, lines: str, said: list[tuple[str, str]]
) -> str:  # fmt: skip
    """Return a card."""
    words_ = "".join(
        f"<p><span class='tw-grey'>{e(head)}</span> {e(text)}</p>" for head, text in said
    )
    way = f"<div class='tw-grey'>{e(way)}</div>" if way else ""
    return (
        f"<section class='tw-way' aria-label='{e(kind)}'>"
        f"<div class='tw-kind'>{e(kind)}</div><h3>{e(upper(bar))}</h3>{way}{drawing}"
        f"<table class='tw-lines'>{lines}</table>{words_}</section>"
    )


def listing(advice: AdviceOut, budget: float | None) -> str:
    """Return every option that works, grouped by route, best first in each.

    Parameters
    ----------
    advice : AdviceOut
        The advice.
    budget : float, optional
        What a good part may cost.

    Returns
    -------
    str
        HTML.
    """
    window = asked_window(advice.zones)
    surfaces = [o.hardness.surface for o in advice.options]
    costs = [o.cost.spread for o in advice.options]
    hard = strip.scale_over([v for s in surfaces for v in (s.p05, s.p95)], window)
    dear = strip.scale_over([v for s in costs for v in (s.p05, s.p95)], limit=budget)
    names = list(dict.fromkeys(o.route_name for o in advice.options))
    ordered = sorted(advice.options, key=lambda o: (names.index(o.route_name), o.place))
    groups = [
        _group(name, list(options), hard, dear)
        for name, options in groupby(ordered, key=lambda o: o.route_name)
    ]
    return "".join(groups)


def _group(name: str, options: list[OptionOut], hard: Scale, dear: Scale) -> str:
    """Return the options of one route."""
    open_, rest = options[:_OPEN], options[_OPEN:]
    body = _rows(name, open_, hard, dear)
    if rest:
        body += (
            f"<details><summary>{len(rest)} more by this route</summary>"
            f"{_rows(f'{name}, more', rest, hard, dear)}</details>"
        )
    return f"<h3 class='tw-route'>{e(name)}</h3>{body}"


def _rows(name: str, options: list[OptionOut], hard: Scale, dear: Scale) -> str:
    """Return options as the rows of a table."""
    heads = ("place", "steel", "hardness", hard, "right in 100", options[0].cost.currency,
             dear, "days")  # fmt: skip
    head = "".join(
        f"<th scope='col'>{e(item)}</th>" if isinstance(item, str)
        else f"<td>{strip.ticks(item)}</td>"
        for item in heads
    )  # fmt: skip
    rows = "".join(_row(option, hard, dear) for option in options)
    return (
        f"<table class='tw-list' aria-label='{e(name)}'><thead><tr>{head}</tr></thead>"
        f"<tbody>{rows}</tbody></table>"
    )


def _row(option: OptionOut, hard: Scale, dear: Scale) -> str:
    """Return one option as a row."""
    surface, cost = option.hardness.surface, option.cost.spread
    middle = shown(surface.p50 if surface.p50 is not None else float("nan"))
    by = f" · {option.medium.replace('-', ' ')}" if option.medium else ""
    return (
        f"<tr><td class='c-place'>{option.place}</td>"
        f"<th scope='row' class='c-steel'>{e(option.spoken)} "
        f"<span class='tw-grey'>{e(condition_words(option.condition) + by)}</span></th>"
        f"<td class='c-hrc'>{e(middle)}</td>"
        f"<td class='c-strip'>{strip.bar(surface.p05, surface.p50, surface.p95, hard)}</td>"
        f"<td class='c-right'>{e(in_100(option.passing_all).removesuffix(' in 100'))}</td>"
        f"<td class='c-cost' data-unit='{e(option.cost.currency)}'>{cost.p50 or 0.0:.0f}</td>"
        f"<td class='c-strip'>{strip.bar(cost.p05, cost.p50, cost.p95, dear)}</td>"
        f"<td class='c-days'>{days_words(option.days)}</td></tr>"
    )


def rack_cards(bars: Iterable[RackOut]) -> str:
    """Return every bar of the rack with what it is best for, or what stopped it."""
    cells = "".join(
        f"<section class='tw-card' aria-label='{e(item.bar)}'><h3>{e(item.bar)}</h3>"
        f"<p><b>{e(words(item.verdict))}</b>"
        f"{f', place {item.place}' if item.place else ''}. {e(upper(item.why))}</p></section>"
        for item in bars
    )
    return f"<div class='tw-cards'>{cells}</div>"


def look_out(cautions: Iterable[CautionOut]) -> str:
    """Return the cautions by the step of the work; those that kill or blind in red."""
    steps: dict[str, list[CautionOut]] = {}
    for caution in cautions:
        steps.setdefault(caution.step, []).append(caution)
    columns = "".join(
        f"<section class='tw-step'><h3>{e(words(step))}</h3><ul>"
        + "".join(
            f"<li{' class=tw-harm' if item.harm == 'kills' else ''}>{e(item.brief)}</li>"
            for item in sorted(items, key=lambda item: item.rank or 99)
        )
        + "</ul></section>"
        for step, items in steps.items()
    )
    return f"<div class='tw-steps'>{columns}</div>"
