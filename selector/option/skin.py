"""The skin that a hardening heat robs of its carbon, and what it takes off the surface."""

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.hardening.hard_depth import DISSOLVED_WT_PCT
from selector.hazards.decarburisation import (
    LOG_SD,
    Atmosphere,
    carbon_left_fraction,
    soft_skin,
)
from selector.job.job import Job, per_job, per_part
from selector.job.process import held_s
from selector.job.screening import heated_thickness
from selector.job.treatment import FLAMES, Treatment
from selector.metallurgy.martensite import hardness
from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.requirement.workshop import Workshop

Floats = NDArray[np.float64]
# Hardness is judged so far under the finished face; a file feels less. Common practice. [mm]
JUDGED_MM, FILE_MM = 0.1, 0.02
# Left on a part to be ground, where nobody says how much. Common practice. [mm]
GROUND_MM, GRINDERS = 0.2, frozenset({"toolpost-grinder", "surface-grinder"})
# An edge that is to be ground is left this thick for hardening. Common practice. [mm]
EDGE_MM = 1.0
# Nobody soaks a part bare in a furnace as hot as this. Common practice. [°C]
WRAPPED_FROM_C = 900.0
_MARTENSITE = 0.999
# A skin no deeper takes nothing where hardness is judged, be it twice as deep. [mm]
_SHALLOW_MM = 0.35 * JUDGED_MM


@dataclass(frozen=True, slots=True)
class Skin:
    """A soft skin at the middle: depth and what grinding leaves [mm], what it costs [HRC].

    `loss_hrc` is taken off as quenched where hardness is judged, `file_loss_hrc` under a file;
    `bare_mm` is the skin of a part that is counted as wrapped, were it not, else 0.
    """

    soft_mm: float
    bare_mm: float
    left_mm: float
    loss_hrc: float
    file_loss_hrc: float
    is_bare: bool = True

    @property
    def remedy(self) -> str:
        """What would keep the carbon in that is not done: nothing of what is wrapped or lit."""
        return "wrap it in foil or coat it, or " if self.is_bare else ""


def atmosphere(work: Treatment, shop: Workshop) -> Atmosphere | None:
    """Return what a part is in while it is hot, None where nothing takes its carbon."""
    # A firm works in vacuum or under gas, a salt bath keeps the air off.
    source = work.source
    if source is None or not work.hardens or source.kind in {"salt-bath", "induction"}:
        return None
    if source.kind in FLAMES:
        return "flame"
    return "pack" if shop.protect or is_presumed_wrapped(work, shop) else "open-furnace"


def is_presumed_wrapped(work: Treatment, shop: Workshop) -> bool:
    """Return whether a part is counted as wrapped although the workshop does not say so."""
    source, hardened = work.source, work.steel.hardened
    if source is None or hardened is None or source.kind != "furnace" or shop.protect:
        return False
    return work.hardens and hardened.temperature_c.middle >= WRAPPED_FROM_C


def ground_mm(part: Part) -> float:
    """Return what is taken off each face after the heat, stated or by grinding. [mm]."""
    if part.stock_removal is not None:
        return part.stock_removal
    return GROUND_MM if GRINDERS & set(part.finish_after) else 0.0


def skin_mm(asked: Requirement, work: Treatment) -> float:
    """Return the soft skin that the hardening heat leaves, before grinding. [mm]."""
    around = atmosphere(work, asked.workshop)
    if around is None or work.steel.hardened is None:
        return 0.0
    heat_c, hold_s = work.steel.hardened.temperature_c.middle, _hold_s(asked, work)
    return float(soft_skin(heat_c, hold_s, around).soft_mm)


def _hold_s(asked: Requirement, work: Treatment) -> float:
    """Return how long the thickest section heated is held at its hardening heat. [s]."""
    kind = work.source.kind if work.source else ""
    return held_s(work.steel, kind, heated_thickness(asked, work))


def _thickness_mm(job: Job) -> float:
    """Return how thick the leading zone is where its carbon leaves it from both sides. [mm]."""
    walls = [2.0 * job.asked.part.section[i].most_depth_mm for i in job.leading.sections]
    edged = any(feature.kind == "edge" for feature in job.asked.part.feature)
    return min([*walls, EDGE_MM] if edged else walls)


def _loss_hrc(job: Job, work: Treatment, under_mm: float, deeper: Floats) -> Floats:
    """Return what lost carbon takes off martensite so far under the finished face. [HRC]."""
    around, hardened = atmosphere(work, job.asked.workshop), work.steel.hardened
    carbon = work.steel.composition_wt_pct.get("C")
    if around is None or hardened is None or carbon is None:
        return np.zeros(deeper.shape)
    heat_c, hold_s = hardened.temperature_c.middle, _hold_s(job.asked, work)
    removed = ground_mm(job.asked.part)
    near = under_mm + removed
    far = max(_thickness_mm(job) + removed - under_mm, under_mm)
    left = np.ones(deeper.shape)
    for depth in (near, far):
        left = left * carbon_left_fraction(depth / deeper, heat_c, hold_s, around)
    # What stays undissolved gives carbon back until it is used up.
    held = np.minimum(carbon.middle * left, DISSOLVED_WT_PCT)
    full = hardness(min(carbon.middle, DISSOLVED_WT_PCT), _MARTENSITE)
    return np.asarray(full - hardness(held, _MARTENSITE))


@lru_cache(maxsize=4096)
def _heated(work: Treatment) -> Treatment:
    """Return the treatment that is heated as this one is, whatever bar and bath it has."""
    return replace(work, condition=work.steel.condition[0], medium=None, stock=None)


def skin(job: Job, work: Treatment) -> Skin | None:
    """Return the soft skin of a treatment at the middle, None where there is none."""
    if atmosphere(work, job.asked.workshop) is None:
        return None
    return _skin(job, _heated(work))


@per_part
def _skin(job: Job, work: Treatment) -> Skin:
    """Return the soft skin of what is heated so, at the middle."""
    shop, even = job.asked.workshop, np.ones(1)
    soft = skin_mm(job.asked, work)
    left = max(soft - ground_mm(job.asked.part), 0.0)
    judged, filed = (_loss_hrc(job, work, mm, even)[0] for mm in (JUDGED_MM, FILE_MM))
    bare = 0.0
    if is_presumed_wrapped(work, shop) and work.steel.hardened is not None:
        heat_c = work.steel.hardened.temperature_c.middle
        bare = float(soft_skin(heat_c, _hold_s(job.asked, work)).soft_mm)
    openly = atmosphere(work, shop) == "open-furnace"
    return Skin(soft, bare, left, float(judged), float(filed), openly)


@per_job
def _losses_hrc(job: Job, work: Treatment) -> Floats:
    """Return what the lost carbon takes where hardness is judged, over the samples. [HRC]."""
    normals = job.of_steel(work.steel.slug)
    return _loss_hrc(job, work, JUDGED_MM, np.exp(LOG_SD * normals["depth"]))


def skinned(hrc: Floats, job: Job, work: Treatment) -> Floats:
    """Return the hardness of a surface, less what its lost carbon takes. [HRC]."""
    carbon, lost = work.steel.composition_wt_pct.get("C"), skin(job, work)
    if carbon is None or lost is None or lost.soft_mm < _SHALLOW_MM:
        return hrc
    # A surface tempered or not fully hard has the less to lose.
    full = hardness(min(carbon.middle, DISSOLVED_WT_PCT), _MARTENSITE)
    return np.asarray(hrc - np.clip(hrc / full, 0.0, 1.0) * _losses_hrc(job, _heated(work)))
