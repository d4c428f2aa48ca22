"""The bench card as data: what a stranger needs to do one option, read from its record."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

from catalog.caution import Caution
from selector.handover.chosen import Chosen
from selector.handover.colour_scale import scale_of
from selector.handover.drawing.features import shown_size, words_of
from selector.handover.drawing.look import for_paper
from selector.handover.drawing.outline import Stretch, stretches_of
from selector.handover.drawing.part_drawing import drawn
from selector.handover.drawing.sizes import across_words
from selector.handover.option_marks import asked_marks, option_marks
from selector.handover.sheet import PAPERS_MM, Paper
from selector.handover.step_figure import band_words, figure_of
from selector.handover.trial_block import trial_block
from selector.option.first_screen import first_screen
from selector.record import OptionOut, StepOut
from selector.wording import condition_words, in_bath, in_sentence, right_words, shown

MARGIN_MM = 8.0
# The part itself is drawn no higher than this on paper. [mm]
PART_MM = 36.0
# Nor higher than these where the work does not fit on the side with it, and so wide that the
# tests stand beside it. [mm]
LESS_MM, NARROW_MM = (24.0, 16.0, 9.0), 118.0
MM_PER_INCH = 25.4
# The stages of the work as the card groups them.
GROUPS: Mapping[str, str] = {
    "bar": "bar", "prepare": "bar", "order": "order", "set-up": "set", "heat": "heat",
    "case": "heat", "quench": "bath", "test": "bath", "freeze": "bath", "temper": "temper",
    "check": "check", "finish": "check",
}  # fmt: skip
WORST = frozenset({"kills", "injures"})
LOCAL_LAW = "Local codes and licensed trades come first"
NO_TRIALS = "no trials of your own used"
KEPT = ("bar", "file after bath", "after temper", "run-out", "by, on")


def template_of(made_for: Chosen) -> str:
    """Return which template a card takes: steps, or sentences where nothing is hardened."""
    option = made_for.option
    if option is None or option.treatment.route.process == "none":
        return "paragraph"
    return "card"


def card(made_for: Chosen, paper: Paper, today: date, version: str) -> dict[str, Any]:
    """Return the bench card of an option as data for its template.

    Parameters
    ----------
    made_for : Chosen
        The option with its record.
    paper : str
        What it is printed on; the drawing is made for it.
    today : date
        When it is made.
    version : str
        By which version.

    Returns
    -------
    dict
        For the template that `template_of` names.
    """
    foot = [
        _id(made_for),
        f"temperwright {version} · {today.isoformat()} · {NO_TRIALS}",
        LOCAL_LAW,
    ]
    data = {
        "title": made_for.asked.part.name,
        "author": f"temperwright {version}",
        "foot": foot,
    }
    if made_for.record is None or template_of(made_for) == "paragraph":
        return {**data, **_paragraphs(made_for), "picture": _picture(made_for, paper)}
    record = made_for.record
    known = made_for.job.catalog.cautions
    top = _dangers(made_for)
    return {
        **data,
        "subtitle": _subtitle(made_for, record),
        "comes": shown(record.hardness.surface.p50 or 0.0),
        "where": _where(made_for),
        "chances": right_words(record.passing_all, None),
        "fails": [g.text for g in record.gates if g.verdict in {"fail", "unknown"}],
        "dangers": [known[key].brief for key in top],
        "picture": _picture(made_for, paper),
        "smaller": [_picture(made_for, paper, most) for most in LESS_MM],
        "sizes": _sizes(made_for, record, paper),
        "features": _features(made_for),
        "groups": _groups(record.procedure, known, top),
        "mends": _mends(record.procedure),
        "trial": trial_block(made_for),
        "kept": list(KEPT),
    }  # fmt: skip


def _id(made_for: Chosen) -> str:
    """Return the id of the option, or that there is none."""
    return made_for.record.id if made_for.record else "no option"


def _picture(made_for: Chosen, paper: Paper, less_mm: float | None = None) -> dict[str, Any]:
    """Return the drawing for a sheet, where it is small the part no higher than `less_mm`."""
    job, option = made_for.job, made_for.option
    marks = asked_marks(job) if option is None else option_marks(job, option)
    look = for_paper(PAPERS_MM[paper][0] - 2.0 * MARGIN_MM, PART_MM)
    if less_mm is not None:
        # What comes out and what was asked stands in the head as well.
        look = replace(for_paper(NARROW_MM, less_mm), places=False)
        marks = replace(marks, said=()) if less_mm < LESS_MM[0] else marks
    made = drawn(job.asked.part, marks, look)
    lay = (
        "Full size: lay the part on it."
        if made.scale == "full size"
        else f"Scale {made.scale}."
    )
    cut = " Long plain stretches are cut short." if made.broken else ""
    return {"svg": made.svg, "alt": made.alt, "scale": lay + cut, "free": list(made.free)}


def _subtitle(made_for: Chosen, record: OptionOut) -> str:
    """Return what is done to what, in a line."""
    count = made_for.asked.part.quantity
    route = in_sentence(in_bath(record.route_name, record.medium))
    bar = f"{record.spoken}, {condition_words(record.condition)}"
    return f"{count} off · {bar} · {route}"


def _where(made_for: Chosen) -> str:
    """Return where that hardness is, and what was asked there."""
    lead = made_for.job.leading
    zone = made_for.asked.zone[lead.zone].name or "working zone"
    band = asked_marks(made_for.job).bands
    asked = f", {band[0].words}" if band and lead.floor_hrc is not None else ""
    return f"on the {zone}{asked}"


def _dangers(made_for: Chosen) -> tuple[str, ...]:
    """Return the cautions of the box at the top: the worst, those that kill or blind first."""
    outcome = None if made_for.option is None else made_for.option.judged.prediction
    known = made_for.job.catalog.cautions
    return tuple(k for k in first_screen(made_for.job, outcome) if known[k].harm in WORST)


def _sizes(made_for: Chosen, record: OptionOut, paper: Paper) -> list[dict[str, str]]:
    """Return each section with its size before the heat and what is left on it."""
    part, lead = made_for.asked.part, made_for.job.leading.sections
    left = part.stock_removal or next(
        (s.length_mm for s in record.procedure if s.action.startswith("Leave ")), 0.0
    )
    return [
        {
            "name": s.section.name or f"section {number}",
            "size": _size(s) + (_inches(s) if paper == "letter" else ""),
            "leave": f"+{left:.2f} a side" if left and number - 1 in lead else "to size",
        }
        for number, s in enumerate(stretches_of(part), start=1)
    ]  # fmt: skip


def _size(stretch: Stretch) -> str:
    """Return how thick, wide and long a section is, and its bore."""
    section, across = stretch.section, across_words(stretch)
    wide = f" × {shown_size(section.width)}" if section.width is not None else ""
    bore = f", bore Ø{shown_size(section.bore)}" if section.bore else ""
    return f"{across}{wide} × {shown_size(section.length)}{bore}"


def _inches(stretch: Stretch) -> str:
    """Return the same in inches, for those who print on Letter."""
    size, length = (v / MM_PER_INCH for v in (stretch.section.size, stretch.section.length))
    return f" ({size:.3f} × {length:.3f} in)"


def _features(made_for: Chosen) -> list[str]:
    """Return every feature with its size and place, for the drawing may have no room for it."""
    return [
        words_of(f) + (f" at {shown_size(f.at)}" if f.at is not None else "")
        for f in made_for.asked.part.feature
    ]


def _groups(
    steps: Sequence[StepOut], known: Mapping[str, Caution], top: Sequence[str]
) -> list[dict[str, Any]]:
    """Return the steps in groups of the work; a caution of the box is not said again."""
    groups: list[dict[str, Any]] = []
    for step in steps:
        name = GROUPS[step.stage]
        if not groups or groups[-1]["name"] != name:
            groups.append({"name": name, "steps": []})
        groups[-1]["steps"].append(_step(step, known, top))
    return groups


def _step(step: StepOut, known: Mapping[str, Caution], top: Sequence[str]) -> dict[str, Any]:
    """Return one step as the card shows it."""
    cautions = [
        {"text": known[key].brief, "harm": known[key].harm}
        for key in step.cautions
        if key not in top and key != "local-codes"
    ]
    scale = scale_of(step)
    big, small = figure_of(step, _said_elsewhere(step, shown_by_scale=scale is not None))
    return {
        "number": step.number,
        "action": step.action,
        "big": big,
        "small": small,
        "means": step.means or "",
        "check": step.check or "",
        "cautions": cautions,
        "scale": scale,
    }


def _said_elsewhere(step: StepOut, *, shown_by_scale: bool) -> str:
    """Return what stands beside the figure of a step and need not stand under it again."""
    said = f"{step.action}, {step.means}"
    held = step.stage == "heat" and step.band_c is None and step.minutes is not None
    if held:
        # At the heat of the step above.
        said += f", {step.temperature_c or 0.0:.0f} °C, {step.colour}"
    if shown_by_scale and step.band_c is not None:
        said += f", {band_words(step.band_c)}, {step.colour}"
    return said


def _mends(steps: Sequence[StepOut]) -> list[dict[str, Any]]:
    """Return what to do where a step does not come out as it should, by step."""
    return [{"number": step.number, "text": step.otherwise} for step in steps if step.otherwise]


def _paragraphs(made_for: Chosen) -> dict[str, Any]:
    """Return a card of a few sentences: leave it as bought, or leave it to the qualified."""
    asked, record = made_for.asked, made_for.record
    known = made_for.job.catalog.cautions
    if record is None:
        said = [made_for.headline, *made_for.instead]
        said += [known[k].brief for k in _dangers(made_for)]
        return {"subtitle": "No work by this card", "paragraphs": said}
    doing = ". ".join(_sentence(step) for step in record.procedure)
    bar = f"{record.spoken}, {condition_words(record.condition)}"
    minded = [known[k].brief for k in _dangers(made_for)]
    return {
        "subtitle": f"{asked.part.quantity} off · {bar}",
        "paragraphs": [f"No heat treatment. {doing}.", *minded],
    }


def _sentence(step: StepOut) -> str:
    """Return a step as one sentence: what to do, with what, and when it is right."""
    means = f" ({step.means})" if step.means else ""
    check = f"; right when {step.check}" if step.check else ""
    return f"{step.action}{means}{check}"
