"""Compare a computed number with one printed in a source, to half its last printed digit."""

import math


def half_digit(text: str) -> float:
    """Return half a unit in the last printed place of `text`."""
    mantissa, _, exponent = text.lower().partition("e")
    _, _, decimals = mantissa.partition(".")
    return 0.5 * 10.0 ** (int(exponent or 0) - len(decimals))


def agrees(computed: float, printed: str, scatter: float = 0.0) -> bool:
    """Return whether `computed` rounds to `printed`, or is within the author's `scatter`."""
    tolerance = max(half_digit(printed), scatter)
    return math.isfinite(computed) and abs(computed - float(printed)) <= tolerance * (1 + 1e-9)
