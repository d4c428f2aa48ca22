"""A letter in the units of the customer: of a part given in inches, those and °F first."""

from selector.handover.imperial import imperial, in_inches
from selector.handover.letter.record import Letter
from selector.requirement.part import Part


def in_units(letter: Letter, part: Part) -> Letter:
    """Return a letter with the figures of its sections and table in the units of a part.

    Parameters
    ----------
    letter : Letter
        As composed, in mm, °C and N m.
    part : Part
        Whose sizes say in which units the customer thinks.

    Returns
    -------
    Letter
        The metric figures stay beside.
    """
    if not in_inches(part):
        return letter
    sections = tuple(
        s.model_copy(update={"paragraphs": tuple(imperial(p) for p in s.paragraphs)})
        for s in letter.sections
    )
    table = letter.table
    if table is not None:
        rows = tuple(
            row.model_copy(update={"cells": tuple(imperial(cell) for cell in row.cells)})
            for row in table.rows
        )
        table = table.model_copy(update={"rows": rows})
    return letter.model_copy(update={"sections": sections, "table": table})
