"""Every error the selector raises on purpose.

::

    SelectorError            field, rule, value received, next step
    ├── RequirementError     the user's file or form breaks a rule
    └── OutOfRangeError      a model was asked for something it cannot answer
"""

from dataclasses import dataclass
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import ArrayLike, NDArray


@dataclass(frozen=True, slots=True)
class Problem:
    """One broken rule, in the words the user will read."""

    field: str
    rule: str
    got: str
    next_step: str

    def __str__(self) -> str:
        return f"{self.field} must be {self.rule}; got {self.got}. {self.next_step}"


class SelectorError(Exception):
    """One or more broken rules; the text lists them all, one a line.

    Parameters
    ----------
    *problems : Problem
        What is wrong, each with its next step.
    """

    def __init__(self, *problems: Problem) -> None:
        self.problems = problems
        super().__init__("\n".join(str(problem) for problem in problems))


class RequirementError(SelectorError):
    """The requirement breaks a rule."""


class OutOfRangeError(SelectorError):
    """A model was asked for something outside what it can answer."""


def limits_left(error: OutOfRangeError) -> str:
    """Return the limits that a model was asked to leave, as an answer rather than a refusal.

    Parameters
    ----------
    error : OutOfRangeError
        What the model said.

    Returns
    -------
    str
        Each quantity with its limit and where it lies, without a next step.
    """
    return "; ".join(f"{p.field} must be {p.rule}, here it is {p.got}" for p in error.problems)


def demand(holds: "ArrayLike", field: str, rule: str, got: "ArrayLike", unit: str = "") -> None:
    """Refuse `got` unless the rule holds throughout, naming the first value that breaks it.

    Parameters
    ----------
    holds : array_like of bool
        Whether the rule holds, value by value.
    field : str
        What the values are.
    rule : str
        What they must be.
    got : array_like
        The values.
    unit : str
        Their unit.

    Raises
    ------
    OutOfRangeError
        When the rule is broken anywhere.
    """
    import numpy as np  # noqa: PLC0415 - slow to load, and a refusal by name needs none

    if np.all(holds):
        return
    broken = np.broadcast_to(~np.asarray(holds), np.shape(got))
    worst = np.asarray(got, dtype=float)[broken].flat[0]
    step = "Give the real size, place or strength."
    raise OutOfRangeError(Problem(field, rule, f"{worst:g} {unit}".strip(), step))


def positive(field: str, value: "ArrayLike", unit: str = "") -> "NDArray[np.float64]":
    """Return `value` as an array, refusing what is not above zero.

    Parameters
    ----------
    field : str
        What the values are.
    value : array_like
        The values.
    unit : str
        Their unit.

    Returns
    -------
    ndarray
        The values; what is not above zero, NaN included, raises OutOfRangeError.
    """
    import numpy as np  # noqa: PLC0415 - as above

    array = np.asarray(value, dtype=float)
    demand(array > 0, field, "above 0", array, unit)
    return array
