"""How many examples a slow property test looks at: few in every run, more on purpose."""

from hypothesis import settings

# What a test that asks for no number gets in every run.
USUAL = 60


def few(count: int) -> int:
    """Return `count`, or as many times more as the loaded profile gives every test."""
    return count * settings().max_examples // USUAL
