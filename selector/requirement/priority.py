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


class Priorities(Asked):
    """Weights of the nine criteria; at most one of preset, order, points."""

    preset: Preset | None = Field(default=None, title="Weighing")
    order: tuple[Criterion, ...] | None = Field(default=None, title="Order")
    points: dict[Criterion, Annotated[float, Field(ge=0, le=1000), NOT_BOOL]] | None = Field(
        default=None, title="Points"
    )

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
