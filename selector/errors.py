"""Every error the selector raises on purpose.

::

    SelectorError            field, rule, value received, next step
    ├── RequirementError     the user's file or form breaks a rule
    └── OutOfRangeError      a model was asked for something it cannot answer
"""

from dataclasses import dataclass


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
