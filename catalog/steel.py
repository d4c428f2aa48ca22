"""One steel: names, composition, how it is sold, and what is known of hardening it."""

import re
from functools import lru_cache
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from catalog.mark import ConditionName, MarkName
from catalog.values import Curve, Fact, Number, Record, Sizes, Span, Text

_WORD = re.compile(r"[\w.]+")
SteelClass = Literal[
    "mild",
    "free-cutting",
    "medium-carbon",
    "high-carbon",
    "alloy",
    "case-hardening",
    "nitriding",
    "spring",
    "bearing",
    "water-tool",
    "oil-tool",
    "air-tool",
    "shock-tool",
    "hot-work-tool",
    "high-speed",
    "martensitic-stainless",
    "precipitation-hardening",
    "maraging",
    "austenitic-stainless",
    "wear-plate",
    "unknown",
]
Hardening = Literal["quench", "case", "nitride", "age"]
Quench = Literal["water", "oil", "air"]
Shape = Literal["round", "square", "hexagon", "flat", "tube"]
ToughnessClass = Literal["very low", "low", "medium", "high", "very high"]
# What it stands: nothing, damp, weather and fresh water, chlorides such as brine.
Corrosion = Literal["none", "mild", "good", "chloride"]


# Letters of Russian designations as they are written in Latin ones.
_LATIN = str.maketrans(
    {
        "а": "a", "б": "b", "в": "v", "г": "g", "д": "d", "е": "e", "ж": "zh", "з": "z",
        "и": "i", "й": "y", "к": "k", "л": "l", "м": "m", "н": "n", "о": "o", "п": "p",
        "р": "r", "с": "s", "т": "t", "у": "u", "ф": "f", "х": "kh", "ц": "ts", "ч": "ch",
        "ш": "sh", "щ": "shch", "ы": "y", "э": "e", "ю": "yu", "я": "ya",
    }
)  # fmt: skip


@lru_cache(maxsize=16384)
def plain(name: str) -> str:
    """Return a designation without spaces, dots, dashes and case, for look-up.

    Parameters
    ----------
    name : str
        A designation as people write it.

    Returns
    -------
    str
        The look-up key; "EN 19" and "en19" give the same, and so do "ШХ15" and "ShKh15".
    """
    return re.sub(r"[^0-9a-z]", "", name.casefold().translate(_LATIN))


Names = Annotated[tuple[Text, ...], Field(strict=False)]


class Designations(Record):
    """What each naming system calls this steel; near-equivalents have a window or a file."""

    en: Names = ()
    number: Names = ()
    aisi: Names = ()
    uns: Names = ()
    bs: Names = ()
    old_en: Names = ()
    jis: Names = ()
    gb: Names = ()
    afnor: Names = ()
    gost: Names = ()
    trade: Names = ()

    def every(self) -> tuple[str, ...]:
        """Return all names of all systems."""
        return tuple(name for names in self.__dict__.values() for name in names)


class Drawn(Span):
    """The tensile strength of drawn wire of one size, MPa; between sizes it runs straight."""

    at_mm: float = Field(gt=0)


class Condition(Record):
    """One state in which the bar is sold.

    `sold_for` are words of a part's name, for what is sold as such a part ready made: a bolt.
    `drawn_mpa` says how strong drawn wire is by its size, within the hardness of all sizes.
    """

    name: ConditionName
    hardness_hb: Span | None = None
    hardness_hrc: Span | None = None
    surface: Literal["black", "bright", "ground"]
    shapes: Annotated[tuple[Shape, ...], Field(strict=False, min_length=1)]
    size_mm: Span
    availability: Literal["easy", "order", "rare"]
    depth_mm: Number | None = None
    length_mm: Span | None = None
    sold_mm: Sizes | None = None
    sold_for: Annotated[tuple[Text, ...], Field(strict=False)] = ()
    drawn_mpa: Annotated[tuple[Drawn, ...], Field(strict=False)] = ()

    @model_validator(mode="after")
    def _one_hardness(self) -> Self:
        if self.name == "unknown":
            return self
        if (self.hardness_hb is None) == (self.hardness_hrc is None):
            msg = "give exactly one of hardness_hb, hardness_hrc"
            raise ValueError(msg)
        return self


class Strength(Span):
    """The Brinell hardness of bar sold to a strength, up to a size.

    `mark` is how the strength is written after a name: a letter of BS 970, QT of EN 10083.
    """

    mark: MarkName
    to_mm: float = Field(gt=0)


class Window(Record):
    """Names with a composition of their own, near enough to share the rest of a file.

    An element that is not listed is as in the file.
    """

    names: Annotated[tuple[Text, ...], Field(strict=False, min_length=1)]
    composition_wt_pct: Annotated[dict[str, Span], Field(min_length=1)]
    differs: Fact


class Hardened(Record):
    """What is published of hardening this steel by heat and quench."""

    quench: Quench
    temperature_c: Span
    soak_min: Span | None = None
    as_quenched_hrc: Span | None = None
    section_limit_mm: dict[Quench, Number] = Field(default_factory=dict)


class HeatCurve(Record):
    """The tempering curve, or a part of it, after hardening from another temperature."""

    hardened_c: float = Field(gt=700, le=1300)
    curve_hrc: Curve


class Tempered(Record):
    """Published hardness against tempering temperature, HRC over °C.

    `hardened_c` is the hardening temperature of the curve, `heat` those of others; `time_h` is
    the time at temperature of all its tempers together, `cycles` how often a part is tempered.
    """

    curve_hrc: Curve
    hardened_c: float | None = Field(default=None, gt=700, le=1300)
    heat: Annotated[tuple[HeatCurve, ...], Field(strict=False)] = ()
    time_h: Number
    cycles: Number | None = None

    @model_validator(mode="after")
    def _heats(self) -> Self:
        if self.heat and self.hardened_c is None:
            msg = "curves of other hardening temperatures need hardened_c of the main one"
            raise ValueError(msg)
        return self

    @property
    def times(self) -> int:
        """How often a part of this steel is tempered: once, where nothing else is published."""
        return 1 if self.cycles is None else round(self.cycles.value)


class Aged(Record):
    """Published hardness against ageing temperature, HRC over °C."""

    curve_hrc: Curve
    time_h: Number


class Nitrided(Record):
    """What a nitrided layer reaches on this steel."""

    surface_hv: Span
    depth_mm: Span


class Limitation(Record):
    """A process this steel is not for, or only with care, and the reason."""

    process: Literal["torch", "quench", "case", "nitride", "weld", "cold-work", "any"]
    verdict: Literal["no", "care"]
    why: Fact
    caution: Text | None = None


class Likely(Record):
    """A steel that bar of unknown make may be, and in which share of such bars."""

    steel: Text
    share: Number


class Steel(Record):
    """One catalogue steel; `slug` is the file name, `called` what a toolroom calls it."""

    slug: Text
    name: Text
    called: Text | None = None
    family: Text
    kind: SteelClass
    summary: Text
    hardens_by: Annotated[tuple[Hardening, ...], Field(strict=False)] = ()
    toughness: ToughnessClass
    corrosion: Corrosion = "none"
    designations: Designations
    composition_wt_pct: dict[str, Span] = Field(default_factory=dict)
    temperature_c: dict[
        Literal["ac1", "ac3", "ms", "anneal", "normalise", "transition"], Span
    ] = Field(default_factory=dict)
    hardened: Hardened | None = None
    tempered: Tempered | None = None
    aged: Aged | None = None
    nitrided: Nitrided | None = None
    carbide_vol_pct: dict[Literal["M7C3", "M6C", "MC"], Span] = Field(default_factory=dict)
    embrittlement_c: tuple[Span, ...] = Field(default=(), strict=False)
    machinability_pct: Number | None = None
    condition: Annotated[tuple[Condition, ...], Field(strict=False, min_length=1)]
    strength_hb: Annotated[tuple[Strength, ...], Field(strict=False)] = ()
    window: Annotated[tuple[Window, ...], Field(strict=False)] = ()
    limitation: Annotated[tuple[Limitation, ...], Field(strict=False)] = ()
    likely: Annotated[tuple[Likely, ...], Field(strict=False)] = ()

    @model_validator(mode="after")
    def _consistent(self) -> Self:
        if "quench" in self.hardens_by and self.hardened is None:
            msg = "a steel that hardens by quench needs a [hardened] table"
            raise ValueError(msg)
        if "age" in self.hardens_by and self.aged is None:
            msg = "a steel that hardens by age needs an [aged] table"
            raise ValueError(msg)
        if "nitride" in self.hardens_by and self.nitrided is None:
            msg = "a steel that hardens by nitride needs a [nitrided] table"
            raise ValueError(msg)
        return self

    def __hash__(self) -> int:
        """Return the hash of its slug: equal records have equal ones, and it is quick."""
        return hash(self.slug)

    @property
    def spoken(self) -> str:
        """Its name as a toolroom says it, for instance "silver steel (115CrV3)"."""
        if self.called is None:
            return self.name
        # A second name of the same words in another order says nothing more.
        said, known = (set(_WORD.findall(n.casefold())) for n in (self.called, self.name))
        return self.called if said <= known else f"{self.called} ({self.name})"

    def names(self) -> tuple[str, ...]:
        """Return every designation, the main name first."""
        near = (name for window in self.window for name in window.names)
        return (self.name, *self.designations.every(), *near)

    def window_of(self, name: str) -> Window | None:
        """Return the window of its own that a name has, if it has one."""
        key = plain(name)
        return next((w for w in self.window if key in map(plain, w.names)), None)

    @property
    def assumed(self) -> Window | None:
        """The window whose composition this is, where it is not the file's own."""
        held = self.composition_wt_pct
        return next(
            (
                window
                for window in self.window
                if all(held.get(key) is span for key, span in window.composition_wt_pct.items())
            ),
            None,
        )

    def called_as(self, name: str) -> "Steel":
        """Return this steel with the composition that one of its names stands for."""
        window = self.window_of(name)
        if window is None:
            return self
        elements = {**self.composition_wt_pct, **window.composition_wt_pct}
        return self.model_copy(update={"composition_wt_pct": elements})
