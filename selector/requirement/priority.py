"""What matters most: a preset, an order, or points."""

from typing import Annotated, Literal, Self, get_args

from pydantic import Field, model_validator

from selector.requirement.quantity import NOT_BOOL, Asked, refuse

Criterion = Literal[
    "hardness",
    "strength",
    "snap_margin",
    "movement",
    "cost",
    "operator_sensitivity",
    "days",
]
CRITERIA: tuple[Criterion, ...] = get_args(Criterion)
Preset = Literal["balanced", "wear", "toughness", "cheap", "quick", "safe hands"]
_PRESETS: dict[Preset, tuple[float, ...]] = {
    # hardness, strength, snap margin, movement, cost, operator sensitivity, days
    "balanced": (25, 15, 15, 12, 15, 12, 6),
    "wear": (40, 12, 12, 10, 12, 10, 4),
    "toughness": (18, 20, 30, 10, 10, 8, 4),
    "cheap": (20, 12, 10, 8, 36, 8, 6),
    "quick": (20, 12, 10, 8, 12, 10, 28),
    "safe hands": (20, 12, 15, 13, 10, 25, 5),
}


class Priorities(Asked):
    """Weights of the seven criteria; at most one of preset, order, points."""

    preset: Preset | None = None
    order: tuple[Criterion, ...] | None = None
    points: dict[Criterion, Annotated[float, Field(ge=0, le=1000), NOT_BOOL]] | None = None

    @model_validator(mode="after")
    def _one_way(self) -> Self:
        if sum(x is not None for x in (self.preset, self.order, self.points)) > 1:
            raise refuse("given by only one of preset, order, points", "Keep one of them.")
        if self.points is not None and sum(self.points.values()) <= 0:
            raise refuse("points that add up to more than 0", "Give some criterion points.")
        if self.order is not None and len(set(self.order)) != len(self.order):
            raise refuse("an order without repetition", "Name each criterion once.")
        return self

    def weights(self) -> dict[Criterion, float]:
        """Return the weights, adding up to 1.

        An order is read by rank-order centroid (Barron and Barrett 1996): the expected weight
        when nothing but the order is known. Criteria left out of an order share the last place.

        Returns
        -------
        dict of str to float
            Weight by criterion.
        """
        if self.order:
            return _centroid(self.order)
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
