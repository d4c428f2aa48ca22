"""A procedure in two lines: what is done up to the bath, and what after it."""

from collections.abc import Sequence

from selector.record import StepOut

AFTER = frozenset({"temper"})


def short_lines(steps: Sequence[StepOut]) -> tuple[str, ...]:
    """Return a procedure in one line or two: heat and quench, then the temper.

    Parameters
    ----------
    steps : sequence of StepOut
        The procedure of an option.

    Returns
    -------
    tuple of str
        For instance "heat to 790 °C (cherry in dim light), hold 40 s, oil at 50 °C, end first,
        moving" and "temper 2 × 60 min at 200 °C in the oven".
    """
    done = [step for step in steps if step.short]
    first = ", ".join(step.short or "" for step in done if step.stage not in AFTER)
    then = ", ".join(step.short or "" for step in done if step.stage in AFTER)
    return tuple(line for line in (first, then) if line)
