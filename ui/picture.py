"""The part as a drawing, in the colours of the page, with what is asked or what comes out."""

from dataclasses import replace

from selector import Requirement
from selector.errors import SelectorError
from selector.handover.drawing.look import Look, for_screen
from selector.handover.drawing.marks import Band, Marks
from selector.handover.drawing.part_drawing import drawn
from selector.record import ZoneOut
from selector.requirement import requirement_from
from selector.wording import shown, shown_range
from ui import cached
from ui.draft import Draft, tentative

_HOT = ("--t0", "--t1", "--t2", "--t3", "--t4", "--t5")


def look(width: float, height: float, *, plain: bool = False) -> Look:
    """Return how a drawing looks here: its colours are the page's, light and dark alike.

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
        ink="var(--ink)",
        grey="var(--grey)",
        ground="var(--panel)",
        soft="var(--h0)",
        accent="var(--blue)",
        heat="var(--red)",
        font="inherit",
        steps=tuple(f"var(--h{n})" for n in range(6)),
        hot=tuple(f"var({name})" for name in _HOT),
        sizes=not plain,
        end_view=not plain,
        strips=False,
    )


def of_draft(draft: Draft, *, plain: bool = False) -> str:
    """Return the drawing of a part that is still being described, as SVG.

    Parameters
    ----------
    draft : dict
        The form.
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
        zones = cached.need(requirement).zones
    except SelectorError:
        zones = ()
    size = look(360, 90, plain=True) if plain else look(560, 150)
    marks = Marks(bands=_asked(requirement, zones), rest="")
    return drawn(requirement.part, marks, size).svg


def so_far(draft: Draft) -> Requirement | None:
    """Return what a draft asks so far, with what is missing filled in for the eye."""
    try:
        return requirement_from(tentative(draft))
    except SelectorError:
        return None


def _asked(requirement: Requirement, zones: tuple[ZoneOut, ...]) -> tuple[Band, ...]:
    """Return where hardness is asked, a band for each section of a zone that asks it."""
    ends = [0.0]
    for section in requirement.part.section:
        ends.append(ends[-1] + section.length)
    return tuple(
        Band(ends[number - 1], ends[number], found.depth_mm or None, None, window(found))
        for zone, found in zip(requirement.zone, zones, strict=False)
        if found.floor_hrc is not None
        for number in zone.section
    )


def window(zone: ZoneOut) -> str:
    """Return the hardness a zone asks, in words."""
    low = zone.low_hrc if zone.low_hrc is not None else zone.floor_hrc
    if low is None:
        return (
            "no hardness asked" if zone.high_hrc is None else f"at most {shown(zone.high_hrc)}"
        )
    return f"{shown(low)} or more" if zone.high_hrc is None else shown_range(low, zone.high_hrc)
