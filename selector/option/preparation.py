"""A treatment heated and quenched over the draws, ready for any temper."""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from selector.hardening import as_quenched
from selector.hardening.bath_response import Points, Start, cooled
from selector.hardening.composition import Composition, drawn, middle
from selector.hardness_scale import hrc_from_hb
from selector.heat.ruling_section import round_equivalent_mm
from selector.job.geometry import as_cooled
from selector.job.job import Job
from selector.job.process import Heat, Quench, hardening_heat, quench
from selector.job.treatment import Treatment, is_torched
from selector.option.cracking import CrackSample, crack_sample
from selector.option.movement import Movement, movement
from selector.sampling import Normals
from selector.torch.depth import is_skin
from selector.torch.response import Torched, torched, torched_points

Floats = NDArray[np.float64]


@dataclass(frozen=True, eq=False)
class Prepared:
    """A treatment with its quench computed once, ready for any temper.

    `alike` is what the quench depends on, last of all the torch whose histories count;
    treatments of equal `alike` share `fresh`, whose points are sections × positions. Of a part
    that was `torched` they go up to the last hard section, with the ends of the zone behind,
    and are those that turned to austenite.
    """

    treatment: Treatment
    job: Job
    composition: Composition
    heat: Heat | None
    fresh: as_quenched.AsQuenched | None
    supply_hrc: Floats
    normals: dict[str, Floats]
    alike: tuple[object, ...]
    torched: Torched | None = None

    @cached_property
    def crack(self) -> CrackSample:
        """Whether it cracks in the quench; only options that are drawn ask."""
        part, skin = self.job.asked.part, is_skin(self.treatment, self.job)
        return crack_sample(self.treatment, part, self.composition, self.normals, skin=skin)

    @cached_property
    def movement(self) -> Movement:
        """How far it moves; only options that are drawn ask."""
        return movement(self.treatment, self.job.asked, self.normals)


def supply_hrc(treatment: Treatment, normals: Normals) -> Floats:
    """Return the hardness of the bar as sold, over the draws. [HRC].

    Parameters
    ----------
    treatment : Treatment
        Steel and supply condition.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    ndarray
        Shape (draws,); carried on below 20 HRC.
    """
    condition = treatment.condition
    spread = normals["supply_hardness"]
    if condition.hardness_hrc is not None:
        span = condition.hardness_hrc
        return np.asarray(span.middle + 0.25 * (span.high - span.low) * spread)
    if condition.hardness_hb is not None:
        span = condition.hardness_hb
        # A maximum alone: bar usually comes a good tenth softer than its limit.
        low = span.min if span.min is not None else 0.8 * span.high
        high = span.max if span.max is not None else 1.2 * low
        brinell = 0.5 * (low + high) + 0.25 * (high - low) * spread
        return np.asarray(hrc_from_hb(np.maximum(brinell, 80.0), outside="extend"))
    return np.full(spread.shape, np.nan)


def _points(job: Job, bath: Quench, start: Start) -> Points:
    """Return the points of the part, sections × positions."""
    sizes = [
        float(round_equivalent_mm(s.shape, s.size, bath.severity, s.width, s.bore))
        for s in as_cooled(job.asked.part)
    ]
    return cooled(np.array(sizes), bath, start, job.shared())


def cooled_points(treatment: Treatment, job: Job) -> Points | None:
    """Return the points of the part as they cool in a treatment's bath.

    Parameters
    ----------
    treatment : Treatment
        What is quenched in what.
    job : Job
        Part, workshop, draws.

    Returns
    -------
    Points or None
        Sections × positions; None where nothing is quenched.
    """
    medium, bath = treatment.medium, bath_of(treatment, job)
    if medium is None or bath is None:
        return None
    place = treatment.route.place
    start = as_quenched.start(treatment.steel)
    key = ("points", medium.slug, place, f"{start.heat_c:g}", start.steel_class)
    return job.once(key, lambda: _points(job, bath, start))


def _alike(treatment: Treatment, heat: Heat | None) -> tuple[object, ...]:
    """Return what the as-quenched hardness depends on, besides part and workshop."""
    medium = treatment.medium.slug if treatment.medium else ""
    torch = treatment.source.slug if treatment.source and is_torched(treatment) else ""
    quench = (treatment.steel.slug, medium, treatment.route.place)
    if heat is None:
        return (*quench, torch)
    course = (heat.target_c, treatment.by_eye, heat.hold_s, heat.rate_c_per_s, heat.structure)
    return (*quench, *course, torch)


def bath_of(treatment: Treatment, job: Job) -> Quench | None:
    """Return the quench of a treatment in the workshop's bath, or the firm's.

    Parameters
    ----------
    treatment : Treatment
        What is quenched in what.
    job : Job
        Part and workshop.

    Returns
    -------
    Quench or None
        None where nothing is quenched.
    """
    if treatment.medium is None:
        return None
    medium, shop = treatment.medium, job.asked.workshop
    sent_out = treatment.route.place == "subcontract"
    return job.course(
        ("bath", medium.slug, sent_out),
        lambda: quench(medium, shop, job.mass_kg, sent_out=sent_out),
    )


def _torched(treatment: Treatment, job: Job) -> Torched | None:
    """Return the part as a torch leaves it, where its heat and its quench can be followed."""
    bath = bath_of(treatment, job)
    if bath is None or bath.bath is None or not is_torched(treatment):
        return None
    return torched(treatment, job)


def _torch_quenched(
    treatment: Treatment,
    job: Job,
    bar: tuple[Composition, Heat],
    found: Torched,
) -> as_quenched.AsQuenched:
    """Return the hardness of what turned to austenite, each place by its own history."""
    steel, (composition, meant), bath = treatment.steel, bar, bath_of(treatment, job)
    if bath is None:
        msg = f"{treatment.label} is not quenched"
        raise ValueError(msg)
    points = torched_points(treatment, job, bath)
    heat = found.heat(meant)
    if not as_quenched.by_composition(steel) and steel.hardened is not None:
        # How much of a place turned is counted apart; here it is what did.
        turned_c = steel.hardened.temperature_c.low - as_quenched.FORMED_FULL_C
        heat = replace(heat, peak_c=np.maximum(heat.peak_c, turned_c))
    normals = job.of_steel(steel.slug)
    fresh = as_quenched.as_quenched(steel, composition, heat, points, normals)
    return replace(fresh, hrc=fresh.hrc[:, found.columns])


def prepare(treatment: Treatment, job: Job) -> Prepared:
    """Return a treatment heated and quenched, over the draws.

    Parameters
    ----------
    treatment : Treatment
        What is done.
    job : Job
        To what part, where.

    Returns
    -------
    Prepared
        Ready for any temper.
    """
    steel = treatment.steel
    normals = job.of_steel(steel.slug)
    composition = job.once(
        ("composition", steel.slug),
        lambda: middle(steel) if job.count == 1 else drawn(steel, normals),
    )
    shop = job.asked.workshop
    heat = hardening_heat(treatment, shop, normals)
    found = _torched(treatment, job)
    points = cooled_points(treatment, job) if found is None else None
    fresh, alike = None, _alike(treatment, heat)
    if heat is not None and found is not None:
        fresh = job.once(
            ("fresh", *alike),
            lambda: _torch_quenched(treatment, job, (composition, heat), found),
        )
    elif heat is not None and points is not None:
        fresh = job.once(
            ("fresh", *alike),
            lambda: as_quenched.as_quenched(steel, composition, heat, points, normals),
        )
    return Prepared(
        treatment,
        job,
        composition,
        heat,
        fresh,
        supply_hrc(treatment, normals),
        normals,
        alike,
        found,
    )
