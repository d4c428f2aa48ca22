"""Which published ranges a catalogue steel leaves, judged by the middle of its composition."""

from functools import cache

from catalog.steel import Steel
from selector.hardening.composition import middle
from selector.validity import breaches


def ranges_left(model: str, steel: Steel, **inputs: float) -> tuple[str, ...]:
    """Return in words which limits of a model the middle of a steel's composition leaves."""
    centre = {element: float(content[0, 0]) for element, content in middle(steel).items()}
    return _ranges_left(model, tuple((centre | inputs).items()))


@cache
def _ranges_left(model: str, values: tuple[tuple[str, float], ...]) -> tuple[str, ...]:
    """Return the broken limits; once for each composition, for many treatments share it."""
    return breaches(model, dict(values))
