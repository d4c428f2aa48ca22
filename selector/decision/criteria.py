"""The nine criteria and their one range table.

Each criterion has one owner among the predicted quantities, an ideal that is good enough and a
worst that counts as nothing. Values beyond either end are clipped, and the advice says so. The
table depends on the requirement alone, never on the options, so that an also-ran that comes or
goes cannot change the order of the others.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.requirement.priority import CRITERIA, Criterion

IDEAL_SHARE_OF_BUDGET = 0.25
WORST_SHARE_OF_BUDGET = 2.0
# Without a budget the scale is a plain part as bought; hardening one at home costs two to four
# times that, so twice would make all hardened parts equally worthless.
WORST_SHARE_OF_REFERENCE = 5.0
DEFAULT_DAYS = 21.0


@dataclass(frozen=True, slots=True)
class Range:
    """One row of the table: where a criterion is as good as it needs to be, and where nil."""

    criterion: Criterion
    words: str
    unit: str
    ideal: float
    worst: float
    scale: Literal["linear", "log"]
    basis: str

    def merit(self, value: ArrayLike) -> NDArray[np.float64]:
        """Return 1 at the ideal or better, 0 at the worst or beyond, straight between."""
        # Merit between 0 and 1.
        ends = np.array([self.worst, self.ideal], dtype=float)
        given = np.asarray(value, dtype=float)
        if self.scale == "log":
            ends, given = np.log(ends), np.log(np.maximum(given, 1e-9))
        merit: NDArray[np.float64] = np.clip((given - ends[0]) / (ends[1] - ends[0]), 0, 1)
        return merit


def merits(ranges: tuple[Range, ...], values: NDArray[np.float64]) -> NDArray[np.float64]:
    """Return the merit of every criterion, as `Range.merit` has it; same shape as `values`."""
    worst = np.array([row.worst for row in ranges], dtype=float)
    ideal = np.array([row.ideal for row in ranges], dtype=float)
    given = np.array(values, dtype=float)
    for k, row in enumerate(ranges):
        if row.scale == "log":
            worst[k], ideal[k] = np.log(worst[k]), np.log(ideal[k])
            given[:, k] = np.log(np.maximum(given[:, k], 1e-9))
    return bounded((given - worst) / (ideal - worst), 0.0, 1.0)


def range_table(
    budget: float | None, reference: float, days: float | None, *, by_life: bool = False
) -> tuple[Range, ...]:
    """Return the one range table of an advice."""
    base = budget or reference
    top = WORST_SHARE_OF_BUDGET if budget else WORST_SHARE_OF_REFERENCE
    wait = max(days or DEFAULT_DAYS, 2.0)
    rows: dict[Criterion, Range] = {}

    def row(
        criterion: Criterion,
        words: str,
        unit: str,
        ends: tuple[float, float],
        basis: str,
        scale: Literal["linear", "log"] = "linear",
    ) -> None:
        rows[criterion] = Range(criterion, words, unit, *ends, scale, basis)

    row(
        "hardness",
        "distance from the hardness window, and edge lost to a steel poor in carbon",
        "HRC",
        (0.0, 8.0),
        "8 HRC off a tool's window about halves its use; estimate of the project",
    )
    if by_life:
        row(
            "hardness",
            "wear life over the life wanted",
            "-",
            (1.0, 0.25),
            "a quarter of the life wanted is as good as none; estimate of the project",
            "log",
        )
    row(
        "strength",
        "what its weakest place bears, over what you ask",
        "-",
        (2.0, 0.8),
        "more than 2 on a known load buys nothing; below 1 it yields; common practice",
    )
    row(
        "snap_margin",
        "how much harder it could be before it snaps or chips in this use",
        "HRC",
        (8.0, -4.0),
        "8 HRC is about two temper colours; estimate of the project",
    )
    row(
        "movement",
        "movement over permitted movement",
        "-",
        (0.0, 1.5),
        "1 uses up all that is permitted; by definition",
    )
    row(
        "cost",
        "cost of a good part",
        "currency",
        (IDEAL_SHARE_OF_BUDGET * base, top * base),
        "a quarter and twice of the budget, or a quarter and five times of the reference part",
        "log",
    )
    row(
        "operator_sensitivity",
        "hardness lost or gained by a colour misread by 25 °C",
        "HRC",
        (0.0, 8.0),
        "8 HRC is the width of two usual windows; estimate of the project",
    )
    row(
        "days",
        "days until the part is in hand",
        "days",
        (1.0, wait),
        "a day is as good as at once; the worst is as long as you can wait, else three weeks",
        "log",
    )
    row(
        "custom",
        "how usual such a steel, treated so, is for such a part",
        "-",
        (1.0, 0.0),
        "1 where the trade makes such parts of it, 0 where nobody does; common practice",
    )
    row(
        "at_hand",
        "how easily the bar is had",
        "-",
        (1.0, 0.0),
        "1 in the rack, 0.6 in every shop, 0.3 to order, 0 rare; common practice",
    )
    return tuple(rows[criterion] for criterion in CRITERIA)
