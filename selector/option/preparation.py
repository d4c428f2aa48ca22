"""A treatment heated and quenched over the samples, ready for any temper."""

from dataclasses import dataclass, replace
from functools import cached_property, lru_cache

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening.as_quenched import AsQuenched, as_quenched
from selector.hardening.bath_response import Points, Start, cooled, start_of
from selector.hardening.composition import Composition, of_bar
from selector.hardening.kind import start
from selector.hardening.quenched_bar import FERRITE_HV
from selector.hardening.stock import annealed_hrc, supply_hrc
from selector.hardening.tempered import hardened_from
from selector.hardness_scale import hv_from_hrc
from selector.hazards.cracking import CrackSteel
from selector.heat.boiling import Quench
from selector.job.geometry import as_cooled, like_rounds_mm
from selector.job.job import Job, per_job
from selector.job.process import hardening_heat, target_c
from selector.job.screening import heated_thickness
from selector.job.treatment import Treatment, is_torched
from selector.metallurgy.hardening_heat import Heat
from selector.option.cracking import CrackSample, crack_sample, crack_steel
from selector.option.heated_depth import aimed_mm, is_skin, layer_mm
from selector.option.movement import Movement, movement
from selector.option.set_up import alike, bath_of
from selector.option.torched import torched
from selector.requirement.part import Section
from selector.torch.response import Torched

Floats = NDArray[np.float64]
# So many times its depth a hot shell is wide: a plate without ends. [-]
WIDE = 40.0


@dataclass(frozen=True, eq=False)
class Prepared:
    """A treatment with its quench computed once, ready for any temper.

    `alike` is the treatment that comes out of the quench as this one does. The points of
    `fresh` are sections × positions; of a part that was `torched` they go up to the last hard
    section, with the ends of the zone behind.
    """

    treatment: Treatment
    job: Job
    alike: Treatment
    composition: Composition
    heat: Heat | None
    fresh: AsQuenched | None
    supply_hrc: Floats
    normals: dict[str, Floats]
    torched: Torched | None = None

    @cached_property
    def one_heat(self) -> Torched | None:
        """The torched part in one heat: at the middle, or as far off it as the job is."""
        return None if self.torched is None else torched(self.job.one_heat(), self.alike)

    @cached_property
    def sold_hv(self) -> Floats:
        """The bar as bought, shape (samples, 1); as ferrite where unknown. [HV]."""
        sold = np.asarray(hv_from_hrc(self.supply_hrc, outside="extend"))[:, None]
        return np.asarray(np.where(np.isnan(sold), FERRITE_HV, sold))

    @property
    def steel_as_heated(self) -> Steel:
        """The steel with the tempering curve of its heat; of a torch, that of its main one."""
        steel = self.treatment.steel
        if self.heat is None or self.torched is not None:
            return steel
        return hardened_from(steel, self.heat.target_c)

    @cached_property
    def crack(self) -> CrackSample:
        """Whether it cracks in the quench; only options that are sampled ask."""
        part = self.job.asked.part
        radius_mm = 0.5 * max(part.section[i].size for i in self.job.hard)
        asked_mm = self.job.ordered_depth_mm
        layer = layer_mm(self.treatment, radius_mm, asked_mm, {"depth": np.zeros(1)})
        share = self.one_heat.heated_share if self.one_heat else float(layer[0]) / radius_mm
        skin = is_skin(self.treatment, share)
        local = self.treatment.route.extent == "local"
        hot = [part.section[i] for i in self.job.hard] if local else part.section
        thick_mm = max(2.0 * section.most_depth_mm for section in hot)
        return crack_sample(
            self.treatment,
            part,
            _crack_steel(self.treatment.steel, self.job.count),
            self.normals,
            thickness_mm=thick_mm,
            skin=skin,
        )

    @cached_property
    def movement(self) -> Movement:
        """How far it moves; only options that are sampled ask."""
        # A part heated all over is turned over as it is, and bows as one from a furnace does.
        local = self.treatment.route.extent == "local"
        bend = self.one_heat.bow if self.one_heat is not None and local else None
        return movement(self.treatment, self.job.asked, self.normals, bend)


@per_job
def _points(job: Job, bath: Quench, enters: Start, shell_mm: float | None) -> Points:
    """Return the points of the part, sections × positions; of a hot shell those of a plate."""
    sizes_mm = like_rounds_mm(as_cooled(job.asked.part), bath.severity)
    if shell_mm is not None:
        # Behind the shell the steel is cold: it cools at least as a plate of twice its depth
        # does that is quenched from both sides.
        plate = Section(shape="flat", size=2.0 * shell_mm, width=WIDE * shell_mm, length=1.0)
        sizes_mm = np.minimum(sizes_mm, like_rounds_mm([plate], bath.severity))
    return cooled(sizes_mm, bath, enters, job.shared())


def cooled_points(treatment: Treatment, job: Job) -> Points | None:
    """Return the points of the part as they cool in a treatment's bath."""
    # Sections × positions; None where nothing is quenched.
    bath = bath_of(treatment, job.asked.workshop, job.mass_kg)
    if bath is None:
        return None
    radius_mm = 0.5 * max(job.asked.part.section[i].size for i in job.hard)
    shell_mm = aimed_mm(treatment, radius_mm, job.ordered_depth_mm)
    enters, heat_c = start(treatment.steel), target_c(treatment)
    if heat_c is not None:
        enters = start_of(heat_c, enters.steel_class)
    return _points(job, bath, enters, shell_mm)


@lru_cache(maxsize=512)
def _crack_steel(steel: Steel, count: int) -> CrackSteel | None:
    """Return what of a steel decides how it cracks."""
    return crack_steel(steel, of_bar(steel, count))


@per_job
def _heat(job: Job, work: Treatment) -> Heat | None:
    """Return the hardening heat of a treatment over the samples; None of no quench."""
    normals = job.of_steel(work.steel.slug)
    return hardening_heat(work, job.asked.workshop, normals, heated_thickness(job.asked, work))


@per_job
def _fresh(job: Job, work: Treatment) -> AsQuenched | None:
    """Return the as-quenched hardness of a treatment, place by place; None of no quench."""
    normals = job.of_steel(work.steel.slug)
    heat = _heat(job, work)
    if heat is None:
        return None
    composition = of_bar(work.steel, job.count)
    if is_torched(work):
        part = torched(job, work)
        met = part.zone.heat(heat)
        quenched = as_quenched(work.steel, composition, met, part.points, normals)
        return quenched.only(part.columns)
    points = cooled_points(work, job)
    if points is None:
        return None
    return as_quenched(work.steel, composition, heat, points, normals)


def prepare(treatment: Treatment, job: Job) -> Prepared:
    """Return a treatment heated and quenched, over the samples."""
    kept = _prepared(job, treatment)
    # A job of another quantity or price list shares what is kept; a bill reads its own.
    return kept if kept.job is job else replace(kept, job=job)


def _before_layer(treatment: Treatment, normals: dict[str, Floats]) -> Floats:
    """Return the hardness of a bar that nothing quenches: as sold, or annealed. [HRC]."""
    steel, condition = treatment.steel, treatment.condition
    if treatment.route.process == "anneal":
        return annealed_hrc(steel, condition, normals)
    return supply_hrc(condition, normals)


@per_job
def _prepared(job: Job, treatment: Treatment) -> Prepared:
    """Return a treatment heated and quenched, over the samples."""
    normals = job.of_steel(treatment.steel.slug)
    same = alike(treatment)
    return Prepared(
        treatment,
        job,
        same,
        of_bar(treatment.steel, job.count),
        _heat(job, same),
        _fresh(job, same),
        _before_layer(treatment, normals),
        normals,
        torched(job, same) if is_torched(treatment) else None,
    )
