"""The shape of the flame verdict as plain data: what `flame --json` prints."""

from typing import Literal

from selector.record import CautionOut, OptionOut, Plain

FlameWord = Literal["yes", "yes_if", "no", "not_needed", "coupon_first"]


class AskedOut(Plain):
    """What the leading zone asks. Hardness in HRC."""

    low_hrc: float | None
    high_hrc: float | None
    floor_hrc: float | None
    ceiling_hrc: float | None
    text: str
    most: str | None
    depth_mm: float
    reason: str


class SoftRingOut(Plain):
    """The softest place beside the hard zone, and the torque the part bears."""

    at_mm: float
    width_mm: float
    hrc: float
    torque_nm: float
    weakest: str


class CoolingOut(Plain):
    """Where on an end-quench bar a place cools alike; a reported check only."""

    at: str
    jominy_mm: float
    rate_704_c_k_per_s: float


class FiguresOut(Plain):
    """What is read off the map of an option, beside its own record."""

    from_the_other_end: bool
    hard_from_mm: float
    hard_to_mm: float
    as_quenched_hrc: float
    soft_ring: SoftRingOut
    hottest_c: float
    corner_margin_c: float
    side_to_side_k: float
    efficiency: float
    bow_p90_mm: float
    cooling: tuple[CoolingOut, ...]


class ChangeOut(Plain):
    """One change after which every demand is met, and what then comes out."""

    text: str
    at_hand: bool
    option: OptionOut


class FamilyOut(Plain):
    """The verdict of one family: its best option at a torch, or why there is none."""

    family: str
    steel: str
    steel_slug: str
    condition: str
    medium: str | None
    source: str | None
    verdict: FlameWord
    why: str
    conditions: tuple[str, ...]
    change: ChangeOut | None
    option: OptionOut | None
    figures: FiguresOut | None


class AcrossOut(Plain):
    """Hardness from the axis to the surface at the middle of the zone."""

    at_mm: float
    radius_mm: tuple[float, ...]
    hrc: tuple[float | None, ...]


class MapOut(Plain):
    """Hardness and hottest temperature of every place; rows go across, columns along."""

    from_the_other_end: bool
    zone_mm: tuple[float, float]
    along_mm: tuple[float, ...]
    across_mm: tuple[float, ...]
    hrc: tuple[tuple[float | None, ...], ...]
    hottest_c: tuple[tuple[float | None, ...], ...]
    surface_hrc: tuple[float | None, ...]
    core_hrc: tuple[float | None, ...]
    as_quenched_hrc: tuple[float | None, ...]
    across: AcrossOut


class FlameOut(Plain):
    """The whole flame verdict as plain data; the map is that of the best family."""

    schema_version: int
    part: str
    verdict: FlameWord
    why: str
    asked: AskedOut
    families: tuple[FamilyOut, ...]
    residual_heat: FamilyOut | None
    bought_hard: str | None
    map: MapOut | None
    assumptions: tuple[str, ...]
    cautions: tuple[CautionOut, ...]
