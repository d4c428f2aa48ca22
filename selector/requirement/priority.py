"""What matters most: a preset, an order, points, or comparisons two at a time."""

from typing import Annotated, Literal, Self, get_args

from pydantic import Field, model_validator

from selector.requirement.pairwise import consistency_ratio, matrix_of, oddest, principal
from selector.requirement.quantity import NOT_BOOL, Asked, refuse, refuse_at

Criterion = Literal[
    "hardness",
    "strength",
    "snap_margin",
    "movement",
    "cost",
    "operator_sensitivity",
    "days",
    "custom",
    "at_hand",
]
CRITERIA: tuple[Criterion, ...] = get_args(Criterion)
Preset = Literal["balanced", "wear", "toughness", "cheap", "quick", "safe hands"]
_PRESETS: dict[Preset, tuple[float, ...]] = {
    # hardness, strength, snap margin, movement, cost, sensitivity, days, custom, at hand
    "balanced": (19, 11, 11, 9, 11, 9, 4, 16, 10),
    "wear": (32, 9, 9, 7, 9, 7, 3, 15, 9),
    "toughness": (14, 16, 24, 7, 7, 6, 3, 15, 8),
    "cheap": (16, 9, 8, 6, 30, 6, 4, 12, 9),
    "quick": (15, 9, 8, 6, 9, 7, 23, 11, 12),
    "safe hands": (15, 9, 11, 10, 7, 20, 4, 15, 9),
}


# Saaty's scale: from equally important to extremely more, and the other way about. [-]
_MOST = 9.0
Ratio = Annotated[float, Field(ge=1 / _MOST, le=_MOST), NOT_BOOL]


class Priorities(Asked):
    """Weights of the nine criteria; at most one of preset, order, points, pairwise.

    `pairwise` says how many times as important one criterion is as another: "hardness/cost".
    """

    preset: Preset | None = Field(
        default=None, title="Weighing", description="Balanced, where nothing is chosen."
    )
    order: tuple[Criterion, ...] | None = Field(default=None, title="Order")
    points: dict[Criterion, Annotated[float, Field(ge=0, le=1000), NOT_BOOL]] | None = Field(
        default=None, title="Points"
    )

    pairwise: dict[str, Ratio] | None = None

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        ways = (self.preset, self.order, self.points, self.pairwise)
        if sum(x is not None for x in ways) > 1:
            rule = "given by only one of preset, order, points, pairwise"
            raise refuse(rule, "Keep one of them.")
        if self.points is not None and sum(self.points.values()) <= 0:
            raise refuse("points that add up to more than 0", "Give some criterion points.")
        if self.order is not None and len(set(self.order)) != len(self.order):
            raise refuse("an order without repetition", "Name each criterion once.")
        return self

    @model_validator(mode="after")
    def _pairs_complete(self) -> Self:
        if self.pairwise is None:
            return self
        faults: list[tuple[tuple[int | str, ...], str | int, str, str]] = []
        for key, ratio in self.pairwise.items():
            first, _, second = key.partition("/")
            if first == second or not {first, second} <= set(CRITERIA):
                rule = "two criteria with a stroke between"
                step = f'Write "hardness/cost"; criteria are {", ".join(CRITERIA)}.'
                faults.append((("pairwise", key), f"{ratio:g}", rule, step))
            elif f"{second}/{first}" in self.pairwise:
                step = f"Drop it or {second}/{first}."
                faults.append((("pairwise", key), f"{ratio:g}", "compared once", step))
        missing = () if faults else self._uncompared()
        if missing or not (faults or self.pairwise):
            rule = "every pair of the criteria it names"
            step = f"Add {', '.join(missing[:5]) or 'a pair'}."
            faults.append((("pairwise",), f"{len(self.pairwise)} pairs", rule, step))
        if faults:
            raise refuse_at("Priorities", *faults)
        return self

    def _uncompared(self) -> tuple[str, ...]:
        """Return the pairs of the criteria named that are not compared."""
        given = {frozenset(pair) for pair in self._ratios()}
        names = self.compared
        return tuple(
            f"{first}/{second}"
            for k, first in enumerate(names)
            for second in names[k + 1 :]
            if frozenset((first, second)) not in given
        )

    def _ratios(self) -> dict[tuple[str, str], float]:
        """Return the comparisons by their two criteria."""
        pairs = {tuple(key.split("/")): ratio for key, ratio in (self.pairwise or {}).items()}
        return {(first, second): ratio for (first, second), ratio in pairs.items()}

    @property
    def compared(self) -> tuple[Criterion, ...]:
        """The criteria that are compared two at a time, in their order."""
        named = {name for pair in self._ratios() for name in pair}
        return tuple(name for name in CRITERIA if name in named)

    @property
    def inconsistency(self) -> float:
        """Saaty's consistency ratio of the comparisons; 0 without any. [-]."""
        return consistency_ratio(matrix_of(self._ratios(), self.compared))

    @property
    def oddest(self) -> tuple[Criterion, Criterion]:
        """The two criteria whose comparison agrees least with all the others."""
        j, k = oddest(matrix_of(self._ratios(), self.compared))
        return self.compared[j], self.compared[k]

    def weights(self) -> dict[Criterion, float]:
        """Return the weights, adding up to 1.

        An order is read by rank-order centroid (Barron and Barrett 1996): the expected weight
        when nothing but the order is known. Criteria left out of an order share the last place;
        left out of points or comparisons they weigh nothing.

        Returns
        -------
        dict of str to float
            Weight by criterion.
        """
        if self.order:
            return _centroid(self.order)
        if self.pairwise:
            named = principal(matrix_of(self._ratios(), self.compared))[0]
            compared = dict(zip(self.compared, map(float, named), strict=True))
            return {name: compared.get(name, 0.0) for name in CRITERIA}
        points = self.points or dict(
            zip(CRITERIA, _PRESETS[self.preset or "balanced"], strict=True)
        )
        total = sum(points.values())
        return {name: points.get(name, 0.0) / total for name in CRITERIA}


def _centroid(order: tuple[Criterion, ...]) -> dict[Criterion, float]:
    """Return rank-order centroid weights; ties share the mean of their places."""
    n = len(CRITERIA)
    by_place = [sum(1 / k for k in range(place, n + 1)) / n for place in range(1, n + 1)]
    rest = [name for name in CRITERIA if name not in order]
    shared = sum(by_place[len(order) :]) / len(rest) if rest else 0.0
    return dict(zip(order, by_place, strict=False)) | dict.fromkeys(rest, shared)
