"""A part at a torch, as the numbers that heat takes: sections, hot stretch, flame, operator."""

from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, pairwise

from catalog.heat_source import HeatSource
from selector.heat.grid import Section
from selector.heat.section_slice import Outline
from selector.heat.steel_property import SteelClass
from selector.heat.torch import AMBIENT_C, Torch, torch
from selector.job.geometry import area_mm2
from selector.job.treatment import TORCH_OF
from selector.requirement import Requirement
from selector.requirement.part import Section as PartSection
from selector.requirement.workshop import Workshop

# Fuel gas at 20 °C (from memory). [kg/m³]
_GAS_KG_PER_M3 = {"oxy-acetylene": 1.09}
_PROPANE_KG_PER_M3 = 1.83
# Patience: an open flame holds and heats for minutes; a fire longer. Common practice. [s]
PATIENCE_S = {"flame": 600.0, "fire": 1800.0}
# Beyond this from the hot stretch a bar stays cold; the rest of it is left out. [mm]
COLD_BEYOND_MM = 150.0
# How far past the zone the flame may go, in thicknesses.
PASTS = (0.25, 0.5, 1.0, 1.5)
# How far past the ends of a long zone it sweeps, in widths of the flame, where by the
# thicknesses above they stay cold: a hand that sees them dull goes on over them.
WIDTHS = (0.25, 0.5)
# A neighbour thinner than this share of the zone comes to heat before it. Estimate.
NECK = 0.75
# An edge is used at its end: at most this share of it is left soft before a thicker body that
# keeps it cold. Common practice. [-]
LEFT_SOFT = 1.0 / 3.0
# Places along the part nearer together than this are one. [mm]
SAME_MM = 1e-6


# Heats at which the operator stops. Low-alloy steels are hardened from 760 to 905 °C,
# high-alloy ones up to 1040 °C; a misread heat lies up to 50 °C beside. [°C]
STOPS_C: dict[SteelClass, tuple[float, ...]] = {
    "low-alloy": (740.0, 785.0, 830.0, 875.0, 920.0),
    "high-alloy": (900.0, 940.0, 980.0, 1020.0, 1060.0),
}


@dataclass(frozen=True, slots=True)
class Stretch:
    """The part for the solver, turned so that the hard zone is near its start, and the zone.

    `zone_mm` is heated; of an edge before a thicker body the last `soft_mm` are not judged.
    """

    sections: tuple[Section, ...]
    shapes: tuple[PartSection, ...]
    zone_mm: tuple[float, float]
    thickest_mm: float
    turned_round: bool
    soft_mm: float = 0.0

    @property
    def edges_mm(self) -> tuple[float, ...]:
        """Where each section begins, and where the last one ends."""
        return (0.0, *accumulate(section.length_mm for section in self.sections))

    @property
    def judged_mm(self) -> tuple[float, float]:
        """Between which places the zone has to come to heat and to be hard."""
        low, high = self.zone_mm
        return low, high - self.soft_mm

    @property
    def hot_shapes(self) -> tuple[PartSection, ...]:
        """The sections of the zone."""
        low, high = self.zone_mm
        return tuple(
            shape
            for shape, (start, end) in zip(self.shapes, pairwise(self.edges_mm), strict=True)
            if start < high and end > low
        )

    @property
    def pasts(self) -> tuple[float, ...]:
        """How far past the zone the flame may go, least first, in thicknesses."""
        # Beside a thinner neck it may stop at the zone: that burns before the zone comes to
        # heat.
        inner = self.edges_mm[1:-1]
        for at, (left, right) in zip(inner, pairwise(self.sections), strict=True):
            begins, ends = (abs(at - edge) < SAME_MM for edge in self.zone_mm)
            hot, cold = (left, right) if ends else (right, left)
            if (begins or ends) and cold.outer_mm < NECK * hot.outer_mm:
                return (0.0, *PASTS)
        return PASTS

    @property
    def beside_mm(self) -> tuple[float, ...]:
        """How thick the sections beside the zone are, 0 where there is none. [mm]."""
        low, high = self.zone_mm
        ends = zip(self.sections, pairwise(self.edges_mm), strict=True)
        beside = [
            s.outer_mm for s, (a, b) in ends if min(abs(b - low), abs(a - high)) < SAME_MM
        ]
        return (0.0, 0.0, *beside)

    @property
    def is_whole(self) -> bool:
        """Whether the zone is the whole part."""
        low, high = self.zone_mm
        return low <= SAME_MM and high >= self.length_mm - SAME_MM

    @property
    def length_mm(self) -> float:
        """Length that is followed; the cold rest is left out."""
        return sum(section.length_mm for section in self.sections)


@dataclass(frozen=True, slots=True)
class Torching:
    """A part at a torch: what is heated, by what flame, how it is held."""

    part: Stretch
    flame: Torch
    steel_class: SteelClass
    turns: bool
    hearth: bool
    patience_s: float

    @property
    def stops_c(self) -> tuple[float, ...]:
        """Heats at which the operator may stop."""
        return STOPS_C[self.steel_class]

    @property
    def in_fire(self) -> bool:
        """Whether it lies in a fire, which heats all that lies in it alike."""
        return self.flame.wall_c > AMBIENT_C

    @property
    def reaches_mm(self) -> tuple[float, ...]:
        """How far past the zone it may be heated, least first; in a fire, into a body too."""
        thick_mm = self.part.thickest_mm
        if self.in_fire:
            thick_mm = max(thick_mm, *self.part.beside_mm)
            return tuple(share * thick_mm for share in self.part.pasts)
        wide = [share * self.flame.width_mm for share in WIDTHS]
        return *self._near_mm, *(mm for mm in wide if mm > self._near_mm[-1])

    @property
    def _near_mm(self) -> tuple[float, ...]:
        """How far past the zone it may be heated by the thickness of the part alone."""
        pasts = (0.0,) if self.part.is_whole else self.part.pasts
        return tuple(share * self.part.thickest_mm for share in pasts)

    def swept_mm(self, past_mm: float) -> tuple[float, float]:
        """Return the stretch that the flame goes over; off a free end only where it must."""
        low, high = self.heated_mm(past_mm)
        off_mm = 0.0 if self.in_fire else max(past_mm - self._near_mm[-1], 0.0)
        return low - off_mm * (low <= 0.0), high + off_mm * (high >= self.part.length_mm)

    def heated_mm(self, past_mm: float) -> tuple[float, float]:
        """Return the stretch that is heated, so far past the zone."""
        low, high = self.part.zone_mm
        return max(low - past_mm, 0.0), min(high + past_mm, self.part.length_mm)


def flame_of(source: HeatSource, workshop: Workshop) -> Torch:
    """Return the flame of a heat source as this workshop sets it."""
    given = next((h.gas_flow for h in workshop.heat if h.source == source.slug), None)
    usual = source.gas_per_h_kg.value if source.gas_per_h_kg else None
    kg_per_h = given if given is not None else usual
    name = TORCH_OF[source.slug]
    if kg_per_h is None:
        return torch(name)
    density = _GAS_KG_PER_M3.get(source.slug, _PROPANE_KG_PER_M3)
    return torch(name, kg_per_h / density * 1000.0 / 60.0)


def round_like(section: PartSection) -> float:
    """Return the round that heats like a section: as much steel for its surface. [mm]."""
    size, width = section.size, section.width or section.size
    if section.shape in {"round", "tube"}:
        return size
    girth = {"square": 4.0, "hexagon": 3.4641}.get(section.shape, 0.0) * size
    full = area_mm2(section.model_copy(update={"bore": None}))
    return 4.0 * full / (girth or 2.0 * (size + width))


def outlines(part: Stretch) -> tuple[Outline | None, ...]:
    """Return the true sections of a part, none where it is round or a tube."""
    return tuple(
        None
        if shape.shape in {"round", "tube"} or shape.bore
        else Outline(
            shape.shape,  # type: ignore[arg-type]
            min(shape.size, shape.width or shape.size),
            max(shape.size, shape.width) if shape.width else None,
            section.outer_mm,
        )
        for shape, section in zip(part.shapes, part.sections, strict=True)
    )


def stretch(asked: Requirement, hard: tuple[int, ...], lead: int | None = None) -> Stretch:
    """Return the part for the solver and where along it the hard zone lies."""
    given = list(asked.part.section)
    about = hard[0] if lead is None or lead not in hard else lead
    first = last = about
    while first - 1 in hard:
        first -= 1
    while last + 1 in hard:
        last += 1
    wanted = [first <= i <= last for i in range(len(given))]
    turned_round = wanted[-1] and not wanted[0]
    if turned_round:
        given, wanted = given[::-1], wanted[::-1]
    first = wanted.index(True)
    last = len(wanted) - 1 - wanted[::-1].index(True)
    start = sum(s.length for s in given[:first])
    end = start + sum(s.length for s in given[first : last + 1])
    sections: list[Section] = []
    place = 0.0
    for section in given:
        length = min(section.length, max(end + COLD_BEYOND_MM - place, 0.0))
        if length > 0.0:
            sections.append(Section(round_like(section), length, section.bore or 0.0))
        place += section.length
    thickest = max(round_like(s) for s in given[first : last + 1])
    shapes = tuple(given[: len(sections)])
    soft = _left_soft_mm(asked, given[first : last + 2]) if start <= SAME_MM else 0.0
    return Stretch(tuple(sections), shapes, (start, end), thickest, turned_round, soft)


def _left_soft_mm(asked: Requirement, along: list[PartSection]) -> float:
    """Return how much of an edge a thicker body behind it may keep cold and soft. [mm]."""
    *edge, body = along
    edged = asked.is_edged or any(zone.wear == "edge-impact" for zone in asked.zone)
    thicker = bool(edge) and round_like(body) > max(round_like(section) for section in edge)
    if not edged or not thicker:
        return 0.0
    return min(round_like(body), LEFT_SOFT * sum(section.length for section in edge))


def torching(
    asked: Requirement,
    hard: tuple[int, ...],
    lead: int,
    source: HeatSource,
    steel_class: SteelClass,
) -> Torching:
    """Return a part at a heat source of this workshop."""
    # The part lies between firebricks where its heat source is a flame.
    shop = asked.workshop
    return _first(
        Torching(
            stretch(asked, hard, lead),
            flame_of(source, shop),
            steel_class,
            turns=shop.turns_part or source.kind == "fire",
            hearth=source.kind == "flame",
            patience_s=PATIENCE_S.get(source.kind, 600.0),
        )
    )


@lru_cache(maxsize=256)
def _first(task: Torching) -> Torching:
    """Return the first of equal parts at a torch, so that looking up what is kept is quick."""
    return task
