"""The shape of two options set against each other, as plain data."""

from typing import Literal

from selector.record import GateOut, Plain, Spread, TemperOut

Axis = Literal["quantity", "bar price", "hourly rate", "crack rate", "failure cost"]
Measure = Literal["cost", "score"]


class SideOut(Plain):
    """One of the two: what it is, costs, needs and risks."""

    id: str
    steel: str
    spoken: str
    condition: str
    route: str
    temper: TemperOut
    surface: Spread
    core: Spread
    depth_mm: Spread
    movement_mm: Spread
    cost: Spread
    items: dict[str, float]
    days: float
    score: float
    passing_all: float
    within_budget: float | None
    crack_class: str | None
    crack_rate: Spread
    failing: Spread
    failure_cost: Spread | None
    gates: tuple[GateOut, ...]
    needs: tuple[str, ...]
    risks: tuple[str, ...]
    cautions: tuple[str, ...]
    warned: tuple[str, ...]


class SwapOut(Plain):
    """Where the two change places along one axis; `at` is None where they never do."""

    axis: Axis
    by: Measure
    unit: str
    now: float | None
    at: float | None
    low: float
    high: float
    ahead_now: str
    text: str


class VersusOut(Plain):
    """Both sides, where they swap, and the curve of cost against quantity."""

    part: str
    headline: str
    first: SideOut
    second: SideOut
    swaps: tuple[SwapOut, ...]
    currency: str
    invented_prices: bool
    quantity: tuple[int, ...]
    first_cost: tuple[Spread, ...]
    second_cost: tuple[Spread, ...]
