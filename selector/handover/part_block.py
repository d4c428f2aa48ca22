"""The part on its card: drawn, with a table of its sizes and its features, in mm or inches."""

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import Any

from selector.handover.drawing.features import is_claws, words_of
from selector.handover.drawing.look import Look, for_paper, shown_inches, shown_size
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.outline import Stretch, stretches_of
from selector.handover.drawing.part_drawing import drawn
from selector.handover.drawing.sizes import across_words
from selector.handover.imperial import imperial_marks
from selector.handover.sheet import PAPERS_MM, Paper
from selector.record import StepOut
from selector.requirement.part import Part

MARGIN_MM = 8.0
# The part itself is drawn no higher than this on paper. [mm]
PART_MM = 36.0
# Where the work does not fit on the side with it, no higher and no wider than these: the tests
# stand beside it. [mm]
LESS_MM = ((24.0, 118.0), (16.0, 108.0), (9.0, 84.0))
# Room for sizes beside a small drawing, in heights of a letter. [-]
CLOSE = 3.6
# How a step says what stays on: "Leave 0.20 mm a side", "leave the cutting edge 0.5 mm thick".
_LEFT = re.compile(
    r"[Ll]eave (?:([\d.]+) mm (?:a side )?on (?:working|the cutting)"
    r"|the cutting edge ([\d.]+) mm)"
)


@dataclass(frozen=True, slots=True)
class Sheeted:
    """What a part is drawn on and in which units."""

    paper: Paper
    inches: bool = False


def pictures(part: Part, marks: Marks, on: Sheeted) -> list[dict[str, Any]]:
    """Return the drawing of a part for a card, as large as it may be first, then smaller.

    Parameters
    ----------
    part : Part
        What is drawn.
    marks : Marks
        What is known of its hardness and heat.
    on : Sheeted
        Paper and units.

    Returns
    -------
    list of dict
        Each with its SVG, what it shows, its scale, and how wide it is. [mm]
    """
    marks = imperial_marks(marks) if on.inches else marks
    large = for_paper(PAPERS_MM[on.paper][0] - 2.0 * MARGIN_MM, PART_MM)
    # What comes out and what was asked stands in the head as well.
    less = [replace(for_paper(wide, high), places=False, sides=CLOSE) for high, wide in LESS_MM]
    bare = replace(marks, said=())
    # The table has the sizes too.
    less[-1] = replace(less[-1], sizes=False)
    looks = [(large, marks), (less[0], marks), *((look, bare) for look in less[1:])]
    return [_picture(part, known, replace(look, inches=on.inches)) for look, known in looks]


def _picture(part: Part, marks: Marks, look: Look) -> dict[str, Any]:
    """Return one drawing of a part."""
    made = drawn(part, marks, look)
    full = made.scale == "full size"
    scale = "Full size: lay the part on it." if full else f"Scale {made.scale}."
    cut = " Long plain stretches are cut short." if made.broken else ""
    unit = "inches" if look.inches else "mm"
    return {
        "svg": made.svg,
        "alt": made.alt,
        "scale": scale + cut,
        "legend": "Hatched close: hard enough; wide: falling off. Cut open over the axis. "
        f"Sizes in {unit}.",
        "wide": look.width,
    }


def left_on(steps: Sequence[StepOut]) -> str:
    """Return what steps leave on working faces or edge, to finish when hard; else nothing."""
    for step in steps:
        found = _LEFT.search(step.action)
        if step.stage == "prepare" and found:
            return f"+{found[1]} mm a side" if found[1] else f"edge {found[2]} mm thick"
    return ""


def sizes(part: Part, lead: Sequence[int], left: str, on: Sheeted) -> list[dict[str, str]]:
    """Return each section of a part with its size before the heat and what is left on it.

    Parameters
    ----------
    part : Part
        Whose sections.
    lead : sequence of int
        Which of them are finished when hard.
    left : str
        What is left on those.
    on : Sheeted
        Paper and units; on Letter inches stand beside.

    Returns
    -------
    list of dict
        `name`, `size` and `leave`.
    """
    return [
        {
            "name": s.section.name or f"section {number}",
            "size": _both(s) if on.inches else _beside(s, on.paper),
            "leave": left if left and number - 1 in lead else "to size",
        }
        for number, s in enumerate(stretches_of(part), start=1)
    ]


def _size(stretch: Stretch, shown: Callable[[float], str] = shown_size) -> str:
    """Return how thick, wide and long a section is, and its bore."""
    section, across = stretch.section, across_words(stretch, shown)
    wide = f" × {shown(section.width)}" if section.width is not None else ""
    bore = f", bore Ø{shown(section.bore)}" if section.bore else ""
    return f"{across}{wide} × {shown(section.length)}{bore}"


def _both(stretch: Stretch) -> str:
    """Return the same in inches, in mm beside."""
    return f"{_size(stretch, shown_inches)} in / {_size(stretch)} mm"


def _beside(stretch: Stretch, paper: Paper) -> str:
    """Return the same, on Letter with thickness and length in inches beside."""
    if paper != "letter":
        return _size(stretch)
    across, long = (shown_inches(v) for v in (stretch.section.size, stretch.section.length))
    return f"{_size(stretch)} ({across} × {long} in)"


def features(part: Part, on: Sheeted) -> list[str]:
    """Return every feature with its size and place, for a drawing may have no room for it."""
    shown = shown_inches if on.inches else shown_size
    claws = [is_claws(part, f, stretches_of(part)[part.place(f)]) for f in part.feature]
    return [
        words_of(f, shown)
        + (f" at {shown(f.at)}" if f.at is not None else "")
        + (" (how many is not given: two are drawn)" if drawn_two else "")
        for f, drawn_two in zip(part.feature, claws, strict=True)
    ]
