"""One steel in figures: its names, composition, its temper drawn, and where they come from."""

import re

from catalog import Catalog, Steel
from catalog.quantity import sourced
from catalog.values import SEEN_WORDS, Span
from selector.errors import SelectorError
from selector.specimen.record import RowOut, TemperedOut
from selector.specimen.tempered import tempered as tempered_of
from selector.specimen.tempered import thin_piece
from ui.labels import upper
from ui.piece import e

# Of the naming systems that are no abbreviation, or not that of their key.
_SYSTEMS = {"number": "number", "old_en": "EN, old", "trade": "trade"}
# A function as a relation names it: " (tempering.tempered_hardness)".
_FUNCTION = re.compile(r" \([a-z_]+\.[a-z_]+\)")
_UNIT = re.compile(r"(_wt)?_(pct|c|hrc|hb|mm|mpa|j)$")
_WIDE, _TALL, _LEFT, _LOW = 620.0, 250.0, 44.0, 34.0
_HOUR_S = 3600.0


def names(steel: Steel) -> str:
    """Return what each system calls a steel, and how it is sold."""
    rows = [
        (_SYSTEMS.get(system, system.upper()), ", ".join(given))
        for system, given in steel.designations
        if given
    ]
    for bar in steel.condition:
        span = bar.hardness_hb or bar.hardness_hrc
        unit = "HB" if bar.hardness_hb else "HRC"
        hard = f", {_span(span)} {unit}" if span else ""
        sizes = f", {_span(bar.size_mm)} mm"
        rows.append((f"sold {bar.name}", f"{', '.join(bar.shapes)}{sizes}{hard}"))
    return _lines(rows)


def composition(steel: Steel) -> str:
    """Return what a steel is made of."""
    return _lines([(k, f"{_span(v)} %") for k, v in steel.composition_wt_pct.items()])


def _span(span: Span | None) -> str:
    """Return a range, either end open."""
    if span is None:
        return ""
    if span.min is None:
        return f"up to {span.max:g}"
    if span.max is None or span.max == span.min:
        return f"{span.min:g}" + (" or more" if span.max is None else "")
    return f"{span.min:g} to {span.max:g}"


def _lines(rows: list[tuple[str, str]], kind: str = "") -> str:
    """Return pairs as the lines of a table."""
    cells = "".join(
        f"<tr><th scope='row'>{e(head)}</th><td>{e(text)}</td></tr>" for head, text in rows
    )
    return f"<table class='tw-lines {kind}'>{cells}</table>"


def tempered(steel: Steel, known: Catalog) -> str:
    """Return a thin piece's hardness by temper, drawn; empty where none is known."""
    try:
        found = tempered_of(thin_piece(known, steel), _HOUR_S)
    except SelectorError:
        return ""
    rows = [row for row in found.rows if row.hrc.p50 is not None]
    return _curve(found, rows) + _origin(found, known) if len(rows) > 2 else ""


def _origin(found: TemperedOut, known: Catalog) -> str:
    """Return what a curve comes from, without the names of functions."""
    source = known.sources.get(found.origin.source)
    cited = "" if source is None else f"; {source.citation}"
    relation = _FUNCTION.sub("", found.origin.relation)
    return f"<p class='tw-foot'>{e(upper(relation))}{e(cited)}.</p>"


def _curve(found: TemperedOut, rows: list[RowOut]) -> str:
    """Return the curve with its 90 % range, its ticks and the windows that make brittle."""
    heats = [row.temperature_c for row in rows]
    highs = [row.hrc.p95 or 0.0 for row in rows]
    lows = [row.hrc.p05 or 0.0 for row in rows]
    left, right = min(heats), max(heats)
    top, low = max(highs) + 2.0, max(min(lows) - 2.0, 0.0)

    def x(heat: float) -> float:
        return _LEFT + (_WIDE - _LEFT - 20) * (heat - left) / (right - left)

    def y(hrc: float) -> float:
        return 8 + (_TALL - _LOW - 8) * (top - hrc) / (top - low)

    edge = [*zip(heats, highs, strict=True), *reversed([*zip(heats, lows, strict=True)])]
    area = " ".join(f"{x(h):.1f},{y(v):.1f}" for h, v in edge)
    line = " ".join(f"{x(row.temperature_c):.1f},{y(row.hrc.p50 or 0.0):.1f}" for row in rows)
    ticks = "".join(
        f"<text x='{x(h):.0f}' y='{_TALL - 14}' text-anchor='middle'>{h:.0f}</text>"
        for h in range(int(-(-left // 100) * 100), int(right) + 1, 100)
    )
    ticks += "".join(
        f"<line class='c-grid' x1='{_LEFT}' x2='{_WIDE}' y1='{y(v):.0f}' y2='{y(v):.0f}'/>"
        f"<text x='{_LEFT - 6}' y='{y(v) + 5:.0f}' text-anchor='end'>{v}</text>"
        for v in range(int(-(-low // 10) * 10), int(top) + 1, 10)
    )
    brittle = "".join(
        f"<rect class='b-danger' x='{x(max(w.low_c, left)):.0f}' y='8' "
        f"width='{max(x(min(w.high_c, right)) - x(max(w.low_c, left)), 1):.0f}' "
        f"height='{_TALL - _LOW - 8}'/>"
        for w in found.embrittlement
        if w.low_c < right and w.high_c > left
    )
    said = f"{found.headline} Hardness by temper, an hour each."
    note = " Dashed: tempers that make it brittle." if brittle else ""
    return (
        f"<svg class='tw-curve' viewBox='0 0 {_WIDE} {_TALL}' role='img' "
        f"aria-label='{e(said)}'>"
        f"{ticks}{brittle}<polygon class='c-area' points='{area}'/>"
        f"<polyline class='c-line' points='{line}'/></svg>"
        f"<p class='tw-grey'>HRC over °C of the temper, an hour each; the band holds 90 in 100."
        f"{note}</p>"
    )


def sources(steel: Steel, known: Catalog) -> str:
    """Return the sources a steel's figures are taken from, each with what it gives."""
    places: dict[str, list[str]] = {}
    unread: dict[str, str] = {}
    for key, value in sourced(steel):
        places.setdefault(value.source, []).append(_UNIT.sub("", key.split(".")[0]))
        if value.seen == "memory" or (value.seen == "part" and value.source not in unread):
            unread[value.source] = f" ({SEEN_WORDS[value.seen]})"
    rows = [
        (
            known.sources[key].citation + unread.get(key, ""),
            ", ".join(dict.fromkeys(given)).replace("_", " "),
        )
        for key, given in places.items()
    ]
    return _lines(rows, "tw-sources")
