"""The part as a drawing, in the colours of the page, with what is asked or what comes out."""

from dataclasses import replace
from itertools import pairwise

from catalog import Catalog
from selector.decision.option import Option
from selector.errors import SelectorError
from selector.handover.drawing.look import Look, for_screen
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.part_drawing import drawn
from selector.handover.imperial import imperial_marks, in_inches
from selector.handover.option_marks import asked_marks, option_marks
from selector.job.job import Job, resolved
from selector.record import ZoneOut
from selector.requirement.part import Part
from selector.wording import HRC_IN_WORDS, shown, shown_range
from ui.draft import Draft
from ui.meanwhile import so_far
from ui.piece import e

# The step of hardness that lies in the window asked for.
_ASKED_STEP = 4


def look(width: float, height: float, *, plain: bool = False) -> Look:
    """Return how a drawing looks on the page, light or dark.

    Parameters
    ----------
    width, height : float
        Of the whole drawing; of the part in it. [px]
    plain : bool
        Whether it is the part alone, without sizes, end view and strips.

    Returns
    -------
    Look
        For `drawn`.
    """
    return replace(
        for_screen(width, height),
        font="inherit",
        sizes=not plain,
        end_view=not plain,
        labels=not plain,
        strips=False,
    )


def of_draft(draft: Draft, catalog: Catalog, *, plain: bool = False) -> str:
    """Return the drawing of a part that is still being described, as SVG.

    Parameters
    ----------
    draft : dict
        The form.
    catalog : Catalog
        What is known.
    plain : bool
        Whether it is drawn small, without sizes.

    Returns
    -------
    str
        Empty where nothing can be drawn yet.
    """
    requirement = so_far(draft)
    if requirement is None:
        return ""
    try:
        marks = asked_marks(resolved(requirement, catalog))
    except SelectorError:
        marks = Marks(rest="")
    part = requirement.part
    if plain:
        return drawn(part, marks, look(360, 90, plain=True)).svg
    wide, narrow = look(560, 150), replace(look(340, 110), end_view=False)
    return _by_width(*(_sized(part, marks, size) for size in (wide, narrow)))


def _sized(part: Part, marks: Marks, as_drawn: Look) -> str:
    """Return a drawing with its sizes in inches where the part was given so."""
    if in_inches(part):
        marks, as_drawn = imperial_marks(marks), replace(as_drawn, inches=True)
    return drawn(part, marks, as_drawn).svg


def of_option(job: Job, option: Option, *, small: bool = False) -> str:
    """Return the part with what an option makes of it: where it is hard, soft and heated.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        What is done.
    small : bool
        Whether it is drawn for a card, without sizes.

    Returns
    -------
    str
        SVG; large, one for a wide and one for a narrow screen.
    """
    part, marks = job.asked.part, option_marks(job, option)
    bare = replace(
        marks, said=(), notes=(), heated_mm=None, heat_words="", water_mm=None, rest=""
    )
    if small:
        return drawn(part, bare, look(360, 90, plain=True)).svg
    wide = _sized(part, marks, replace(look(1180, 210), strips=True))
    # On a narrow screen the large one would be too small to read.
    narrow = _sized(part, bare, replace(look(380, 130, plain=True), strips=True))
    beneath = f"<p class='tw-foot'>{_in_words(part, marks)}</p>"
    return _by_width(wide, narrow + beneath)


def _by_width(wide: str, narrow: str) -> str:
    """Return what is shown on a wide screen, and what on a narrow one instead."""
    return f"<div class='tw-wide'>{wide}</div><div class='tw-narrow'>{narrow}</div>"


def _in_words(part: Part, marks: Marks) -> str:
    """Return what the large drawing says at its places, for beneath the small one."""
    unit = "in" if in_inches(part) else "mm"
    marks = imperial_marks(marks) if in_inches(part) else marks
    ends = ", ".join(note.words for note in marks.notes)
    said = [", ".join(marks.said), marks.heat_words, f"{ends} {unit}" if ends else ""]
    return "<br>".join(f"<span{' class=tw-harm' * (text == marks.heat_words)}>{e(text)}</span>"
                       for text in said if text)  # fmt: skip


def key(marks_of: Job) -> str:
    """Return what each step of hardness is drawn like, with the hardness it stands for."""
    limits = asked_marks(marks_of).limits_hrc
    ends = [f"under {limits[0]:.0f}"]
    ends += [f"{low:.0f} to {high:.0f}" for low, high in pairwise(limits)]
    ends += [f"over {limits[-1]:.0f} HRC"]
    asked = marks_of.leading.floor_hrc is not None
    cells = "".join(
        f"<li><svg viewBox='0 0 24 14' width='24' height='14' aria-hidden='true'>"
        f"<rect width='24' height='14' fill='var(--h{step})'/></svg> {e(text)}"
        f"{' asked' if asked and step == _ASKED_STEP else ''}</li>"
        for step, text in enumerate(ends)
    )
    return (
        f"<ul class='tw-key' aria-label='Hardness, HRC'>{cells}</ul>"
        f"<p class='tw-foot'>{e(HRC_IN_WORDS)}.</p>"
    )


def window(zone: ZoneOut) -> str:
    """Return the hardness a zone asks, in words."""
    low = zone.low_hrc if zone.low_hrc is not None else zone.floor_hrc
    if low is None:
        return (
            "no hardness asked" if zone.high_hrc is None else f"at most {shown(zone.high_hrc)}"
        )
    return f"{shown(low)} or more" if zone.high_hrc is None else shown_range(low, zone.high_hrc)
