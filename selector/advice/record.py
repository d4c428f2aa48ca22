"""The shape of the advice as plain data: what `temperwright schema` prints."""

from selector.record import CautionOut, OptionOut, Plain, Spread, ZoneOut


class RejectedOut(Plain):
    """A steel and a reason: one way to use it that fails, or stands apart as unknown.

    The gate decided. The steel's other ways that the same reason stops, with the same figures,
    are in `also`, as condition/route.medium.

    `share` says how often it comes right; it is 0 too where that was not worked out, as it is
    far from the demand of its gate. `cost` is then absent; else it is the middle, in currency.
    `nearness` is the share, or the budget over the cost that stops it. A `racked` bar lies in
    the rack.
    """

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
    cost: float | None = None
    nearness: float = 0.0
    racked: bool = False
    find_out: str | None = None
    also: tuple[str, ...] = ()

    @property
    def routes(self) -> tuple[str, ...]:
        """The route of each of its ways, by slug."""
        others = (way.partition("/")[2].partition(".")[0] for way in self.also)
        return self.route, *others


class ChangeOut(Plain):
    """A change of workshop or demand, and the option that is first after it."""

    text: str
    id: str
    passing_all: float


class WhyOut(Plain):
    """One way to use a steel or to go a route: its place, or the gate that stops it.

    `change` is the least one that lets it in, absent where none of those tried does.
    """

    treatment: str
    place: int | None
    gate: str | None
    text: str
    share: float
    change: ChangeOut | None = None


class PieceOut(Plain):
    """A piece that the workshop has not got: what comes first with it, and what that gains.

    `saves` is the cost of a good part now less the one with the piece, in currency;
    `more_right` how many more of all come out right. Before anything comes right, the first is
    absent now: `saves` is then absent too.
    """

    piece: str
    words: str
    id: str
    first: str
    cost: float
    currency: str
    passing_all: float
    saves: float | None
    more_right: float


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
    """A bar on the rack: its best option and the reason for its place, or what stopped it.

    `certified` is whether its inspection certificate lies with it.
    """

    bar: str
    steel: str | None
    place: int | None
    id: str | None
    verdict: str
    why: str
    certified: bool = False


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


class FirmOptionOut(Plain):
    """How often an option is first, and what choosing it costs where another is better.

    `first` and `top_three` are shares over outcomes and weights at once, `first_by_outcome`
    over outcomes at the weights given, `first_by_weights` over weights at the expected score,
    by which the options are ordered. Regret is in score, and in money: its mean and 95th
    percentile.
    """

    id: str
    place: int
    first: float
    top_three: float
    first_by_outcome: float
    first_by_weights: float
    regret_score: float
    regret_money: float
    regret_money_p95: float


class TurnOut(Plain):
    """Between which weights of one criterion the first stays first, and who is beyond.

    The other weights keep their proportions. A bound is absent where there is none.
    """

    criterion: str
    words: str
    now: float
    below: float | None
    first_below: str | None
    above: float | None
    first_above: str | None


class PriceTurnOut(Plain):
    """The cost of a good part at which the first place changes hands."""

    now: float
    at: float
    factor: float
    first_then: str


class MeasureOut(Plain):
    """An uncertainty and the share it explains of what lies between the first and its rival.

    `step` is what narrows it, absent where nothing does beforehand.
    """

    name: str
    words: str
    step: str | None
    explains: float


class FirmOut(Plain):
    """How firm the choice is.

    Weights are scattered about the ones given by a Dirichlet of this `concentration`. `turns`
    are of the first against all, `swaps` of the first two alone; `dearer` is the cost up to
    which the first stays first, `second_cheaper` the one to which the second must fall.
    """

    sentence: str
    concentration: float
    options: tuple[FirmOptionOut, ...]
    turns: tuple[TurnOut, ...]
    swaps: tuple[TurnOut, ...]
    dearer: PriceTurnOut | None
    second_cheaper: PriceTurnOut | None
    measures: tuple[MeasureOut, ...]
    against_shares: tuple[str, ...]


class ReweighedOut(Plain):
    """The same options by other weights: ids, the best first, each with its score and share.

    `first` is how often an option is first over outcomes and weights about the new ones.
    """

    weights: dict[str, float]
    order: tuple[str, ...]
    scores: dict[str, float]
    first: dict[str, float]
    turns: tuple[TurnOut, ...]


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
    firm: FirmOut | None = None
    pieces: tuple[PieceOut, ...] = ()
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
