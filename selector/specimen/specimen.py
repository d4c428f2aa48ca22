"""A steel in one section, heated in a furnace and quenched by itself, over the samples.

The furnace, the bath and the samples are those of an option of `advise` that goes through the
workshop's own furnace, so that both give one set of numbers.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from catalog.medium import Medium
from catalog.route import Route
from catalog.steel import Condition, Steel
from selector import sampling
from selector.errors import OutOfRangeError, Problem
from selector.hardening.as_quenched import AsQuenched, as_quenched, cased_core
from selector.hardening.bar_limit import COLDEST_HEAT_C
from selector.hardening.bath_response import (
    POSITIONS,
    SIMULATED_MM,
    Points,
    Start,
    cooled,
    start_of,
)
from selector.hardening.composition import Composition, sampled
from selector.hardening.hard_depth import Limit, hard_depth_mm
from selector.hardening.kind import start
from selector.hardening.stock import supply_hrc
from selector.hardening.tempered import hardened_from
from selector.heat.boiling import Quench
from selector.job.geometry import like_rounds_mm
from selector.job.process import hardening_heat, quench
from selector.job.screening import section_like
from selector.job.treatment import Treatment
from selector.metallurgy.hardening_heat import Heat
from selector.requirement.part import Section
from selector.requirement.workshop import Heat as HeatSource
from selector.requirement.workshop import Workshop
from selector.sampling import Normals
from selector.specimen.hardening import hardening

Floats = NDArray[np.float64]

# A furnace with its own instrument, baths as warm as usual.
ROUTE, FURNACE = "through-furnace", "muffle-furnace"
SHOP = Workshop(heat=(HeatSource(source=FURNACE),))
HOTTEST_HEAT_C = 1300.0
# Rounds that are tried for how thick a bar hardens through; neighbours differ by a tenth. [mm]
TRIED_MM = np.geomspace(1.0, 400.0, 64)
THROUGH = 0.98


@dataclass(frozen=True, slots=True, eq=False)
class Specimen:
    """One steel, section, bath and heat, its quench computed over the samples.

    `heat` is None for the core of a case-hardening steel, which is heated with its case, and
    `heat_given` whether it was asked for.
    `fresh` has one point for each of `POSITIONS`, skin first.
    """

    treatment: Treatment
    section: Section
    quench: Quench
    heat: Heat | None
    heat_given: bool
    composition: Composition
    normals: dict[str, Floats]
    fresh: AsQuenched

    @property
    def steel(self) -> Steel:
        """The steel."""
        return self.treatment.steel

    @property
    def bar(self) -> tuple[Steel, Composition]:
        """Steel and composition as a temper finds them."""
        if self.heat is None:
            return self.steel, self.composition
        return hardened_from(self.steel, self.heat.target_c), self.composition

    @property
    def inwards_mm(self) -> Floats:
        """How deep each point lies under the surface; the last is the middle of the steel."""
        return self.section.most_depth_mm * (1.0 - np.array(POSITIONS))

    @property
    def limit(self) -> Limit:
        """Where hardness ends: at half martensite."""
        return Limit.half_martensite(self.steel)

    def depth_mm(self) -> Floats:
        """Return how deep it is hardened, over the samples. [mm]."""
        hrc = self.fresh.hrc
        return hard_depth_mm(hrc, hrc, self.inwards_mm, self.limit)

    def through(self) -> NDArray[np.bool_]:
        """Return in which samples it is hardened to the middle."""
        return np.asarray(self.depth_mm() >= THROUGH * self.inwards_mm[-1])


def specimen(
    catalog: Catalog,
    steel: Steel,
    section: Section,
    medium: Medium,
    heat_c: float | None = None,
) -> Specimen:
    """Return a steel quenched in a section.

    Parameters
    ----------
    catalog : Catalog
        What is known.
    steel : Steel
        One that a quench hardens, itself or its core.
    section : Section
        A long bar.
    medium : Medium
        The bath.
    heat_c : float, optional
        Hardening heat; left out, the middle of the steel's own range. [°C]

    Returns
    -------
    Specimen
        Over the samples of this steel.

    Raises
    ------
    OutOfRangeError
        The heat is no hardening heat, or the section is outside what is simulated.
    """
    if heat_c is not None and not COLDEST_HEAT_C <= heat_c <= HOTTEST_HEAT_C:
        rule = f"between {COLDEST_HEAT_C:g} and {HOTTEST_HEAT_C:g} °C"
        step = "Give the hardening heat, or leave it out."
        raise OutOfRangeError(Problem("--heat", rule, f"{heat_c:g} °C", step))
    furnace = catalog.heat_sources[FURNACE]
    route = catalog.routes[ROUTE]
    work = Treatment(steel, _condition(steel, route), route, medium, furnace)
    normals = sampling.with_shared(steel.slug)
    bath, bar = quench(medium, SHOP, 0.0), sampled(steel, normals)
    heat = _heat(work, normals, heat_c, section_like(section))
    rounds_mm = like_rounds_mm([section], bath.severity)
    low, high = SIMULATED_MM
    if not low <= rounds_mm[0] <= high:
        rule = f"one that cools like a round of {low:g} to {high:g} mm"
        step = "Give the real size."
        raise OutOfRangeError(Problem("--section", rule, f"{rounds_mm[0]:.4g} mm", step))
    fresh = _quenched(work, (bar, heat), rounds_mm, bath, normals)
    return Specimen(work, section, bath, heat, heat_c is not None, bar, normals, fresh)


def thickest_mm(of: Specimen) -> Floats:
    """Return the thickest round with half martensite at its centre, over the samples. [mm]."""
    # 0 where none has, the last of those tried where all have.
    # Each by itself in its bath; then all points at once, as those of one part.
    sizes = [np.array([mm]) for mm in TRIED_MM]
    bar, enters = (of.composition, of.heat), _enters(of.treatment, of.heat)
    points = Points.joined([cooled(mm, of.quench, enters, of.normals) for mm in sizes])
    fresh_hrc = _fresh(of.treatment, bar, points, of.normals).hrc
    softest = fresh_hrc.reshape(len(fresh_hrc), len(TRIED_MM), -1).min(axis=2)
    through = of.limit.least_fresh_hrc <= softest.T
    last = len(TRIED_MM) - 1 - np.argmax(through[::-1], axis=0)
    between = np.sqrt(TRIED_MM * np.append(TRIED_MM[1:], TRIED_MM[-1]))
    return np.asarray(np.where(through.any(axis=0), between[last], 0.0))


def _condition(steel: Steel, route: Route) -> Condition:
    """Return the first condition that goes into a furnace soft, else the first."""
    soft = [c for c in steel.condition if c.name in route.conditions]
    return (*soft, *steel.condition)[0]


def _heat(
    work: Treatment, normals: Normals, heat_c: float | None, thick_mm: float
) -> Heat | None:
    """Return the hardening heat, moved to the one asked for; None for a core as it comes."""
    heat = hardening_heat(work, SHOP, normals, thick_mm)
    if heat is None or heat_c is None:
        return heat if hardening(work.steel) == "itself" else None
    return replace(heat, target_c=heat_c, peak_c=heat.peak_c + (heat_c - heat.target_c))


def _quenched(
    work: Treatment,
    bar: tuple[Composition, Heat | None],
    rounds_mm: Floats,
    bath: Quench,
    normals: Normals,
) -> AsQuenched:
    """Return rounds as quenched, rounds × `POSITIONS`."""
    points = cooled(rounds_mm, bath, _enters(work, bar[1]), normals)
    return _fresh(work, bar, points, normals)


def _enters(work: Treatment, heat: Heat | None) -> Start:
    """Return how a bar enters its quench."""
    enters = start(work.steel)
    return enters if heat is None else start_of(heat.target_c, enters.steel_class)


def _fresh(
    work: Treatment, bar: tuple[Composition, Heat | None], points: Points, normals: Normals
) -> AsQuenched:
    """Return points of a bar as quenched; of a core as it comes where there is no heat."""
    composition, heat = bar
    if heat is None:
        sold = supply_hrc(work.condition, normals)
        return cased_core(work.steel, composition, points, normals, sold)
    return as_quenched(work.steel, composition, heat, points, normals)
