"""What `quench` and `temper` answer, as plain data. Hardness in HRC, carried on below 20."""

from typing import Literal

from selector.record import Plain


class RangeOut(Plain):
    """A predicted number: its median and 90 % range."""

    p05: float | None
    p50: float | None
    p95: float | None


class OriginOut(Plain):
    """What computes the hardness, where that is published, and which of its limits are left."""

    relation: str
    source: str
    validity: tuple[str, ...]


class SteelOut(Plain):
    """The steel, and what a quench hardens of it: itself, the core under its case, nothing."""

    name: str
    slug: str
    spoken: str
    hardens: Literal["itself", "core", "not"]


class SectionOut(Plain):
    """A long bar, its size the thickness, the diameter or the width across flats."""

    shape: str
    size_mm: float
    width_mm: float | None
    bore_mm: float | None
    text: str


class BathOut(Plain):
    """A bath as it is taken to be; no temperature where none enters."""

    medium: str
    temperature_c: float | None
    agitation: str | None
    delay_s: float


class HeatOut(Plain):
    """A hardening heat and where it comes from; absent for a core, which has its case's."""

    temperature_c: float
    hold_s: float
    source: str


class QuenchOut(Plain):
    """From what and in what a section is quenched."""

    section: SectionOut
    bath: BathOut
    heat: HeatOut | None


class PointOut(Plain):
    """One depth under the surface."""

    from_surface_mm: float
    hrc: RangeOut


class LikelyOut(Plain):
    """A steel that bar of unknown make may be, with its share and its skin as quenched."""

    name: str
    slug: str
    share: float
    skin_hrc: RangeOut | None
    skates_share: float


class QuenchedOut(Plain):
    """A section as quenched, skin first; `points` is empty where nothing hardens.

    Bar of unknown make has no points but its `likely` steels, each quenched by itself.

    `depth_mm` is how deep it hardens to half martensite, `through_share` how often that is to
    the middle, and `thickest_round_mm` up to which diameter.
    """

    steel: SteelOut
    headline: str
    quench: QuenchOut | None
    points: tuple[PointOut, ...]
    depth_mm: RangeOut | None
    through_share: float | None
    thickest_round_mm: RangeOut | None
    half_martensite_hrc: float | None
    origin: OriginOut | None
    assumed: tuple[str, ...]
    likely: tuple[LikelyOut, ...] = ()


class RowOut(Plain):
    """One temper: `time_s` is its time in all, `colour` that of its oxide, if tabled."""

    temperature_c: float
    time_s: float
    hrc: RangeOut
    colour: str | None
    embrittled: bool


class WindowOut(Plain):
    """A range of tempering in which a steel is brittle."""

    low_c: float
    high_c: float
    source: str
    at: str


class WantedOut(Plain):
    """The hottest temper that gives a hardness; None where the rows do not hold it."""

    hrc: float
    temperature_c: RangeOut | None
    text: str


class TemperedOut(Plain):
    """Hardness by tempering temperature. `quench` is None where the hardness was given."""

    steel: SteelOut
    headline: str
    time_s: float
    tempers: int
    quench: QuenchOut | None
    quenched_hrc: RangeOut
    rows: tuple[RowOut, ...]
    wanted: WantedOut | None
    embrittlement: tuple[WindowOut, ...]
    origin: OriginOut
    assumed: tuple[str, ...]
