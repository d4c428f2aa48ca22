"""The picture in a letter: the part without sizes, what is hard, a word under each stretch."""

from dataclasses import replace

from selector.decision.option import Option
from selector.figure import median
from selector.handover.drawing.bracket import Bracket
from selector.handover.drawing.look import PAPER
from selector.handover.drawing.marks import Marks
from selector.handover.drawing.part_drawing import Drawing, drawn
from selector.handover.option_marks import option_marks
from selector.job.job import Job

# Of the column of text, and of the part in it. [mm]
WIDE_MM, HIGH_MM = 132.0, 24.0
# A picture that says no scale may have any. Paper to part. [-]
SCALES = tuple(6.0 * 0.96**n for n in range(190))
LOOK = replace(
    PAPER,
    width=WIDE_MM,
    height=HIGH_MM,
    em=3.5,
    scales=SCALES,
    soft="#f0f1f0",
    hatched=False,
    sizes=False,
    end_view=False,
    strips=False,
    labels=False,
    sides=1.5,
)
# Steel softer than this is called soft beside a hard zone. [HRC]
SOFT_HRC = 35.0
# A shorter stretch has no bracket of its own, as a share of the part. [-]
SHORT = 0.03


def picture(job: Job, option: Option) -> Drawing:
    """Return the picture of an option.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        What is done.

    Returns
    -------
    Drawing
        Without sizes, strips and heat.
    """
    marks = option_marks(job, option)
    if option.treatment.route.process == "none":
        # Nothing is asked to be hard, so no step of hardness is told from another.
        marks = replace(marks, limits_hrc=Marks().limits_hrc)
    marks = replace(marks, said=(), notes=(), heated_mm=None, heat_words="", water_mm=None)
    return drawn(job.asked.part, marks, LOOK, brackets(job, option))


def brackets(job: Job, option: Option) -> tuple[Bracket, ...]:
    """Return what is said under the part, from its working end.

    Parameters
    ----------
    job : Job
        Part and workshop.
    option : Option
        What is done.

    Returns
    -------
    tuple of Bracket
        One over all of a part that is the same all over.
    """
    part, route = job.asked.part, option.treatment.route
    whole = part.length_mm
    if route.process == "none":
        return (Bracket(0.0, whole, "as bought, nothing is hardened"),)
    if route.process in {"case", "nitride"}:
        words = "a hard skin all round" if route.extent != "local" else "a hard skin"
        return (Bracket(0.0, whole, words),)
    if route.extent != "local":
        through = option.judged.prediction.hard_through
        return (Bracket(0.0, whole, "hard right through" if through else "hardened all over"),)
    zone = job.asked.zone[job.leading.zone]
    name = f"hard {zone.name}" if zone.name else "hard end"
    bands = option_marks(job, option).bands
    ends = [(band.from_mm, band.to_mm) for band in bands]
    soft = median(option.judged.prediction.shank_hrc) < SOFT_HRC
    rest = "left soft" if soft else "left as it is"
    found = [Bracket(low, high, name) for low, high in ends]
    places = [0.0, *(place for pair in sorted(ends) for place in pair), whole]
    gaps = zip(places[::2], places[1::2], strict=True)
    found += [Bracket(a, b, rest) for a, b in gaps if b - a > SHORT * whole]
    return tuple(sorted(found, key=lambda bracket: bracket.from_mm))
