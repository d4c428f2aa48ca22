"""The shape of the advice as plain data: what `temperwright schema` prints."""

from selector.record import CautionOut, OptionOut, Plain, Spread, ZoneOut


class RejectedOut(Plain):
    """A treatment that fails, or stands apart as unknown, and the gate that decided."""

    steel: str
    steel_slug: str
    spoken: str
    family: str
    condition: str
    route: str
    route_name: str
    route_kind: str
    medium: str | None
    gate: str
    verdict: str
    text: str
    share: float
    within_budget: float | None
    find_out: str | None = None


class ChangeOut(Plain):
    """A change of workshop or demand, and the option that is first after it."""

    text: str
    id: str
    passing_all: float


class WhyOut(Plain):
    """One way to use a steel or to go a route: its place, or the gate that stops it."""

    treatment: str
    place: int | None
    gate: str | None
    text: str
    share: float


class RangeOut(Plain):
    """One row of the range table of the criteria."""

    criterion: str
    words: str
    unit: str
    ideal: float
    worst: float
    scale: str
    basis: str
    weight: float


class AlternativeOut(Plain):
    """An answer of another kind than the first, and why it is not first."""

    kind: str
    kind_words: str
    place: int
    id: str
    bar: str
    doing: str
    surface: str
    cost: Spread
    currency: str
    days: float
    work_h: float
    passing_all: float
    within_budget: float | None
    risk: str
    why_not_first: str


class RackOut(Plain):
    """A bar on the rack: its best option and the reason for its place, or what stopped it."""

    bar: str
    steel: str | None
    place: int | None
    id: str | None
    verdict: str
    why: str


class ShareOut(Plain):
    """Share of samples in which the first option scores above the second."""

    first: str
    second: str
    share: float


class MethodOut(Plain):
    """The order another method gives: option ids, best first, and how many are first."""

    method: str
    order: tuple[str, ...]
    agrees_on_first: bool
    share_first: int = 1


class ComparisonOut(Plain):
    """Orders of the leading options by methods of other families, and how firm they are."""

    methods: tuple[MethodOut, ...]
    remark: str


class AdviceOut(Plain):
    """The whole advice as plain data."""

    schema_version: int
    part: str
    verdict: str
    headline: str
    toss_up: bool
    why_first: str | None
    as_bought: str | None
    options: tuple[OptionOut, ...]
    alternatives: tuple[AlternativeOut, ...]
    barred: tuple[str, ...]
    rack: tuple[RackOut, ...]
    would_change: tuple[str, ...]
    changes: tuple[ChangeOut, ...] = ()
    rejected: tuple[RejectedOut, ...]
    apart: tuple[RejectedOut, ...]
    zones: tuple[ZoneOut, ...]
    remarks: tuple[str, ...]
    assumptions: tuple[str, ...]
    cautions: tuple[CautionOut, ...]
    coupon: tuple[str, ...]
    ranges: tuple[RangeOut, ...]
    pairwise: tuple[ShareOut, ...]
    other_methods: tuple[MethodOut, ...]
    comparison: ComparisonOut | None = None
