"""Cautions on a terminal page: the worst few in a line each, or every one at its step."""

from collections.abc import Sequence

from selector.record import CautionOut


def first_lines(
    cautions: Sequence[CautionOut], *, heated: bool = True, stepped: bool = True
) -> tuple[str, ...]:
    """Return the cautions of the first screen, the worst first, and how many more there are."""
    # Where nothing is heated, the others belong to other ways of making the part.
    first = sorted((c for c in cautions if c.first_screen), key=lambda c: c.rank or 0)
    more = len(cautions) - len(first)
    others = f"{more} more{', each at its step' * stepped}"
    others = others if heated else "Those of the ways with heat"
    rest = (f"{others}: --cautions all",) if more else ()
    return (*(item.brief for item in first), *rest)


def in_full(cautions: Sequence[CautionOut]) -> tuple[str, ...]:
    """Return every caution in full with its id, at its step of the work."""
    return tuple(f"{item.step}: {item.text} [{item.id}]" for item in cautions)
