"""The shapes of a batch as plain data: what is kept of each part, and the summary."""

from collections.abc import Mapping
from typing import Literal

from selector.record import CautionOut, OptionOut, Plain

# How a part ended. The first six are answers, the last two are none.
Reason = Literal[
    "harden",
    "leave_as_bought",
    "toss_up",
    "safety_referral",
    "coupon_first",
    "no_option",
    "bad_input",
    "failed",
]
NO_ANSWER = frozenset({"bad_input", "failed"})


class ServingOut(Plain):
    """A bar that serves a part: its steel and condition, the best option made of it.

    `size_mm` is what the part is thick at its thickest, before any allowance.
    """

    steel_slug: str
    spoken: str
    condition: str
    id: str
    score: float
    size_mm: float


class HeatRunOut(Plain):
    """A heat in a furnace or oven that other parts may share.

    `by` is the furnace or the means of tempering, `then` the bath, or how often it is tempered.
    Between `low_c` and `high_c` it serves, `aim_c` is what the part asks for; `least_min` and
    `most_min` bound the hold.
    """

    kind: Literal["harden", "temper"]
    by: str
    then: str
    low_c: float
    high_c: float
    aim_c: float
    least_min: float
    most_min: float


class PartOut(Plain):
    """What a batch keeps of one part.

    `text` says what to do, or why there is no answer; `bars` are what serves it, the best
    first; a part that is referred to others has none and no heats to share.
    """

    key: str
    part: str
    quantity: int
    reason: Reason
    text: str
    first: OptionOut | None = None
    cautions: tuple[CautionOut, ...] = ()
    bars: tuple[ServingOut, ...] = ()
    heats: tuple[HeatRunOut, ...] = ()


class RowOut(Plain):
    """One line of the summary. Hardness in HRC, carried on below 20; cost of a good part.

    `right_in_100` and `within_budget_in_100` are chances, `result` the file with the rest.
    """

    place: str
    part: str
    quantity: int
    reason: Reason
    text: str
    first: str | None = None
    id: str | None = None
    hardness: str | None = None
    hrc_p05: float | None = None
    hrc_p50: float | None = None
    hrc_p95: float | None = None
    cost: float | None = None
    cost_p05: float | None = None
    cost_p95: float | None = None
    currency: str | None = None
    right_in_100: float | None = None
    within_budget_in_100: float | None = None
    days: float | None = None
    result: str | None = None
    carried: Mapping[str, str] = {}


class ServedOut(Plain):
    """A part made of a bar of the rack, the option, and how much its score is less."""

    place: str
    id: str
    loss: float


class BarOut(Plain):
    """A bar of the smallest rack: what it serves and how thick those parts are."""

    steel_slug: str
    spoken: str
    condition: str
    thickest_mm: tuple[float, ...]
    serves: tuple[ServedOut, ...]


class RackOut(Plain):
    """The fewest bars that serve all parts that any bar serves.

    `fewest` is false where the search for fewer was cut short at its time.
    """

    loss: float
    rule: str
    bars: tuple[BarOut, ...]
    fewest: bool
    not_served: tuple[str, ...]


class LoadOut(Plain):
    """Parts that may share one furnace or oven load, its heat and its hold."""

    kind: Literal["harden", "temper"]
    by: str
    then: str
    temperature_c: float
    range_c: tuple[float, float]
    hold_min: float
    places: tuple[str, ...]


class BatchOut(Plain):
    """The summary of a batch: a line a part, the rack, loads and what may injure or kill."""

    schema_version: int
    counts: Mapping[str, int]
    rows: tuple[RowOut, ...]
    rack: RackOut
    load_rule: str
    loads: tuple[LoadOut, ...]
    cautions: tuple[str, ...]
