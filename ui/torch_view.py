"""The torch in figures: verdict, windows of heat and temper, demands, the other families."""

from collections.abc import Iterable

from catalog.values import Span as Ends
from selector.flame.record import ChangeOut, FamilyOut, FiguresOut, FlameOut
from selector.heat.colour import MAGNET_LOST_C
from selector.procedure.heating import held_parts_s
from selector.record import GateOut, OptionOut, SetUpOut, TemperOut
from selector.wording import condition_words, in_100, shown_time
from ui.bands import Span, band
from ui.labels import upper, words
from ui.piece import e

# A disc that is filled, half or struck through says the word again.
_DISCS = {"yes": "●", "not_needed": "●", "yes_if": "◐", "coupon_first": "◐", "no": "⊘"}


def verdict(found: FlameOut) -> str:
    """Return the word, large, with why."""
    kind = "tw-no" if found.verdict == "no" else ""
    return f"<div class='tw-word {kind}'>{e(words(found.verdict))}</div>"


def changed(verdict: str, change: ChangeOut | None) -> str:
    """Return the one change, or that there is none."""
    if change is not None:
        return upper(change.text)
    needed = verdict not in {"yes", "not_needed"}
    return "No single change that was tried would do." if needed else "None needed."


def heat_window(set_up: SetUpOut, figures: FiguresOut | None) -> tuple[str, str]:
    """Return whether the right heat can be seen: a sentence and the window drawn.

    Parameters
    ----------
    set_up : SetUpOut
        What the operator is given.
    figures : FiguresOut, optional
        How hot the edges get.

    Returns
    -------
    tuple of str
        Sentence, then SVG.
    """
    heat, off = set_up.heat_c, 1.28 * set_up.misread_c
    # What is left to the grain of the steel at the hottest edge is left to the heat as well.
    margin = figures.corner_margin_c if figures is not None else 60.0
    coarse = heat + max(margin, 10.0)
    low, high = min(heat - 150.0, MAGNET_LOST_C - 30.0), coarse + 90.0
    spans = [
        Span(heat - off, heat + off, "serves", f"{heat:.0f}"),
        Span(coarse, high, "danger", "coarse grain"),
        Span(heat - off, heat + off, "eye", f"you are within {off:.0f}"),
    ]
    colour = set_up.colour or "heat"
    marks = {"magnet lets go": MAGNET_LOST_C}
    said = (
        f"Heat to {heat:.0f} °C ({colour} in {set_up.light or 'this light'}), read by "
        f"{set_up.read_by}: nine times in ten within {off:.0f} °C. "
        f"{shown_time(held_parts_s(set_up)[1])} held once it is of one colour."
    )
    return said, band(low, high, spans, marks, said)


def temper_window(temper: TemperOut, brittle: Iterable[Ends] = ()) -> tuple[str, str]:
    """Return whether the right temper can be had: a sentence and the window drawn.

    Parameters
    ----------
    temper : TemperOut
        The temper that is asked for.
    brittle : iterable of Span
        Tempers that make the steel brittle. [°C]

    Returns
    -------
    tuple of str
        Sentence, then SVG.
    """
    if temper.temperature_c is None:
        return "No temper.", ""
    at = temper.temperature_c
    low, high = temper.band_c or (at, at)
    spans = [
        Span(
            low,
            max(high, low + 4),
            "serves",
            f"{low:.0f}–{high:.0f}" if high > low else f"{at:.0f}",
        ),
    ]
    said = f"{at:.0f} °C by {temper.means}"
    if temper.time_min:
        said += f", {temper.time_min:.0f} min"
    said += f"; {low:.0f} to {high:.0f} °C serves." if high > low else "."
    bad = [(w.min or 0.0, w.max or 400.0) for w in brittle]
    left = min(150.0, low - 20)
    right = max([350.0, high + 40, *(end + 20 for start, end in bad if start < 350)])
    spans += [
        Span(max(start, left), min(end, right), "danger", "brittle")
        for start, end in bad
        if start < right and end > left
    ]
    marks = {temper.colour: at} if temper.colour else {}
    if temper.colour:
        said += f" A bright patch shows {temper.colour}."
    return said, band(left, right, spans, marks, said)


def demands(option: OptionOut, figures: FiguresOut | None) -> str:
    """Return what must not go wrong, the tightest first."""
    gates = sorted(option.gates, key=lambda g: 1.0 if g.share is None else g.share)
    rows = "".join(_demand(gate) for gate in gates)
    if figures is not None:
        rows += _line(
            "Edges short of coarse grain", f"{figures.hottest_c:.0f} °C at the hottest",
            f"{figures.corner_margin_c:.0f} °C",
        )  # fmt: skip
        rows += _line(
            "Even all round", f"{figures.side_to_side_k:.0f} °C from side to side", ""
        )
        ring = figures.soft_ring
        if ring.weakest:
            rows += _line("Strong enough", f"{ring.torque_nm:.0f} N m at {ring.weakest}", "")
    return f"<table class='tw-lines tw-three'>{rows}</table>"


def _demand(gate: GateOut) -> str:
    """Return one demand as a line."""
    share = "" if gate.share is None else in_100(gate.share)
    return _line(words(gate.name), upper(gate.text), share or words(gate.verdict))


def _line(head: str, text: str, end: str) -> str:
    """Return a line of three."""
    return f"<tr><th scope='row'>{e(head)}</th><td>{e(text)}</td><td>{e(end)}</td></tr>"


def others(families: tuple[FamilyOut, ...]) -> str:
    """Return the verdict of each family, with a disc that says it again; the noes folded."""
    open_ = [family for family in families if family.verdict != "no"] or list(families[:1])
    rest = [family for family in families if family not in open_]
    html = _table(open_)
    if rest:
        noes = f"<summary>{len(rest)} that it will not do</summary>"
        html += f"<details>{noes}{_table(rest)}</details>"
    return html


def _table(families: list[FamilyOut]) -> str:
    """Return families as the lines of a table."""
    rows = "".join(
        f"<tr><td class='c-disc' aria-hidden='true'>{_DISCS[family.verdict]}</td>"
        f"<td class='c-word'>{e(words(family.verdict))}</td>"
        f"<th scope='row'>{e(_bar(family))}</th><td>{e(upper(family.why))}</td></tr>"
        for family in families
    )
    return f"<table class='tw-lines tw-others'>{rows}</table>"


def _bar(family: FamilyOut) -> str:
    """Return the bar of a family, and its bath."""
    by = f", {family.medium.replace('-', ' ')}" if family.medium else ""
    name = family.option.spoken if family.option else family.steel
    return f"{name}, {condition_words(family.condition)}{by}"


def hard_stretch(figures: FiguresOut | None) -> str:
    """Return where it is hard, and the soft ring beside, in a sentence; empty without a map."""
    if figures is None:
        return ""
    if figures.hard_to_mm <= figures.hard_from_mm:
        return "Nowhere as hard as asked."
    end = "the other end" if figures.from_the_other_end else "the working end"
    text = f"Hard from {figures.hard_from_mm:.0f} to {figures.hard_to_mm:.0f} mm from {end}"
    ring = figures.soft_ring
    if ring.width_mm > 0:
        text += f"; softest beside it {ring.hrc:.0f} HRC at {ring.at_mm:.0f} mm"
    return text + "."
