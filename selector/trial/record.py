"""The shape of a trial plan as plain data: what a log of trials will be kept against."""

from typing import Literal

from selector.record import Plain, SetUpOut, TemperOut

Subject = Literal["bar", "heat", "bath", "temper", "crack"]
SCHEMA_VERSION = 1


class CouponOut(Plain):
    """One coupon: off which bar, how large, and what is done to it."""

    number: int
    steel: str
    steel_slug: str
    condition: str
    bar: str
    shape: str
    size_mm: float
    width_mm: float | None
    bore_mm: float | None
    length_mm: float
    note: str


class ReadingOut(Plain):
    """One thing that is read off each coupon, with what means go and what stops.

    `expected` is the forecast of a sound coupon, 5, 50 and 95 in 100; `go_low` and `go_high`
    bound a go, in `unit`. `bias` and `scatter` are the errors of the test as standard
    deviations. The forecast is expected to narrow by the reading that is `counted`; the others
    stop a trial that goes wrong early.
    """

    stage: Literal["bar", "heat", "quenched", "snapped", "tempered", "crack"]
    test: str
    means: str
    unit: str
    expected: tuple[float, float, float] | None
    go_low: float | None
    go_high: float | None
    go: str
    no_go: str
    bias: float | None
    scatter: float | None
    counted: bool


class ForecastOut(Plain):
    """What the trial is to narrow, before it and as expected after it.

    `narrowing` is by what share its spread is expected to shrink, `by_count` the same for one
    coupon, two and so on. `go` is how often the trial is expected to say go, `right` how often
    the part comes out right before the trial, `right_after_go` after a go. [-]
    """

    quantity: Literal["surface", "depth_mm", "crack_rate"]
    words: str
    unit: str
    p05: float
    p50: float
    p95: float
    width_after: float
    narrowing: float
    by_count: tuple[float, ...]
    go: float
    right: float
    right_after_go: float | None


class TrialCostOut(Plain):
    """What the coupons cost, and what of that the price of the part counts already."""

    total: float
    counted_in_price: float
    currency: str
    invented_prices: bool


class TrialPlanOut(Plain):
    """The smallest trial that settles what is most uncertain of an option.

    `asked_for` is what the user names as new, or that the bar is not proved; absent where the
    forecast chose. `share` is how much of the forecast's spread each uncertainty explains [-].
    `set_up` and `temper` are the conditions of every coupon. `forecast` and `cost` are absent
    where nothing can be forecast of a bar that nobody knows.
    """

    schema_version: int
    id: str
    part: str
    option: str | None
    subject: Subject
    asked_for: Literal["bar", "torch", "bath", "oven", "unproved"] | None
    headline: str
    why: str
    coupons: tuple[CouponOut, ...]
    set_up: SetUpOut | None
    temper: TemperOut | None
    bath_l: float | None
    gas_kg_per_h: float | None
    readings: tuple[ReadingOut, ...]
    steps: tuple[str, ...]
    forecast: ForecastOut | None
    share: dict[str, float]
    cost: TrialCostOut | None
    assumed: tuple[str, ...]
    cautions: tuple[str, ...]


class TrialOut(Plain):
    """A trial, or why there is none: a referral to qualified people, or nothing to try."""

    verdict: Literal["trial", "safety_referral", "no_option"]
    text: str
    plan: TrialPlanOut | None
