"""Hardness of a locally heated part: what turned, what did not, the soft ring and the shank.

What did not turn is the bar as bought, tempered by its own time at heat. A ring lies where the
peak stayed just below the transformation of a rapid heating: farther in, hardness rises again.
"""

from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Condition, Steel
from selector.hardening.as_quenched import AsQuenched
from selector.hardening.bath_response import POSITIONS
from selector.hardening.heating_course import REFERENCE_C
from selector.hardening.stock import SOFT, Stock, is_temper_known, rest_hv, stock_of
from selector.hardness_scale import hrc_from_hv
from selector.job.job import Job, per_part
from selector.job.process import temper_peak_c
from selector.job.treatment import Temper, Treatment
from selector.metallurgy.tempering import equivalent_time
from selector.metallurgy.transformation import critical_temperatures, rapid_heating_shift
from selector.option.heated_depth import layer_mm
from selector.option.preparation import Prepared
from selector.torch.response import Torched

Floats = NDArray[np.float64]

# Where the heat itself is not followed, the ring passes this long just below transformation, by
# kind of source. Estimate. [s]
PASSING_S = {"flame": 10.0, "fire": 30.0, "induction": 1.0}
# About how fast a flame heats the ring, for the lift of its transformation. [°C/s]
RING_C_PER_S = 10.0
# Temperings for which the bar's softening is worked out; straight in the logarithm between. [s]
TEMPERED_S = np.geomspace(1e-6, 1e6, 37)
_LOG_TEMPERED_S = np.log(TEMPERED_S)
# How far out the softening of a ring is, as sd of its share: documented for plain carbon only,
# wider for alloy; of bar whose earlier temper nobody knows, anything
# from none to twice as much. Estimates. [-]
RING_SD, RING_SD_ALLOY, RING_SD_PREHARD = 0.1, 0.2, 0.6
THROUGH = 0.95
OUTER = 3
# From where it begins to turn to where all of it has, and how much more slowly than the end of
# the zone a place may cool that hardens with it. Estimates. [K], [-]
TURNING_K, AS_QUICK = 50.0, 2.0


@dataclass(frozen=True, slots=True, eq=False)
class LocalHardness:
    """What a local heat leaves over the samples, tempered. [HRC].

    `zone` and `fresh` (as quenched) have the places of the leading section, rim first, at
    `places` of its radius; `ends` the ends of the hard zone; `outer` the outer fibres of every
    section, ring left out.
    """

    zone: Floats
    fresh: Floats
    places: tuple[float, ...]
    ends: Floats
    outer: Floats
    ring: Floats
    layer_mm: Floats | None = None


def beside(job: Job) -> list[int]:
    """Return the soft sections that adjoin a hard one."""
    hard = set(job.hard)
    count = len(job.asked.part.section)
    return [i for i in range(count) if i not in hard and {i - 1, i + 1} & hard]


def local_hardness(ready: Prepared, temper: Temper, points: AsQuenched) -> LocalHardness:
    """Return the hardness of a locally heated part."""
    # By histories at a torch, by published depths elsewhere.
    job = ready.job
    bar = _bar(job, ready.treatment)
    more_s = np.zeros((1, 1)) if bar is None else _temper_s(ready, temper)
    if ready.torched is not None:
        return _torched(ready, ready.torched, (bar, more_s, points))
    return _layered(ready, (bar, points.hrc))


def hard_ends_mm(ready: Prepared) -> tuple[float, ...]:
    """Return where along the part the hardness of a local heat ends. [mm]."""
    job, work = ready.job, ready.treatment
    if ready.one_heat is not None:
        return ready.one_heat.hard_ends_mm(_turned_c(work.steel, work.condition))
    ends_mm = accumulate(section.length for section in job.asked.part.section[:-1])
    return tuple(at for n, at in enumerate(ends_mm) if (n in job.hard) != (n + 1 in job.hard))


@dataclass(frozen=True, slots=True, eq=False)
class _Bar:
    """A bar that softens: by log time of tempering, and where its ring lies."""

    stock: Stock
    softening: Floats
    ring_c: float


@per_part
def _bar(job: Job, work: Treatment) -> _Bar | None:
    """Return the bar before, worked out once for middle and samples; None of soft bar."""
    del job
    if work.condition.name in SOFT:
        return None
    stock = stock_of(work.steel, work.condition)
    kept = rest_hv(TEMPERED_S, stock)
    return _Bar(stock, np.log(kept / kept[0]), _turned_c(work.steel, work.condition))


@lru_cache(maxsize=1024)
def _turned_c(steel: Steel, condition: Condition) -> float:
    """Return how hot a place of a bar must get in a flame before it turns. [°C]."""
    stock = stock_of(steel, condition)
    lines = critical_temperatures(stock.composition_wt_pct)
    shift = rapid_heating_shift(RING_C_PER_S, stock.structure)
    return float(np.ravel(lines.ac1_c + shift.ac1_c)[0])


def _temper_s(ready: Prepared, temper: Temper) -> Floats:
    """Return the temper as time at the reference; shape (samples, 1). [s]."""
    job = ready.job
    if temper.means == "none":
        return np.zeros((1, 1))
    at_c = temper_peak_c(temper, job.asked.workshop, ready.normals)
    time_s = temper.time_s * temper.cycles
    return equivalent_time(np.hstack([at_c, at_c]), [0.0, time_s], REFERENCE_C)[:, None]


def _rest_hv(ready: Prepared, bar: _Bar, tempered_s: Floats) -> Floats:
    """Return the hardness of what did not turn, over the samples. [HV]."""
    softened = np.interp(np.log(tempered_s + TEMPERED_S[0]), _LOG_TEMPERED_S, bar.softening)
    spread = RING_SD_ALLOY if _is_alloy(bar.stock) else RING_SD
    spread = spread if is_temper_known(bar.stock) else RING_SD_PREHARD
    off = np.clip(1.0 + spread * ready.normals["tempering"], 0.0, 2.0)[:, None]
    return np.asarray(ready.sold_hv * np.exp(softened * off))


def _is_alloy(stock: Stock) -> bool:
    """Return whether a steel holds back its softening by Cr, Mo or V."""
    held = stock.composition_wt_pct
    return sum(held.get(element, 0.0) for element in ("Cr", "Mo", "V")) > 0.4


def _torched(
    ready: Prepared,
    part: Torched,
    bath: tuple[_Bar | None, Floats, AsQuenched],
) -> LocalHardness:
    """Return the hardness of a part that a torch heated, each place by its own history."""
    job = ready.job
    bar, more_s, points = bath
    sections, count = job.asked.part.section, len(POSITIONS)
    shape = (len(points.share), len(sections))
    columns = list(part.columns)
    if bar is None:
        soft = np.broadcast_to(ready.supply_hrc[:, None], shape)
        ring, rest = ready.supply_hrc, ready.sold_hv
    else:
        tempered = _rest_hv(ready, bar, part.history.tempered_s + more_s)
        soft = _shanks(ready, part, len(sections), (bar, more_s, tempered))
        ring_s = part.ring_tempered_s(bar.ring_c)[:, None]
        ring = _hrc(_rest_hv(ready, bar, ring_s + more_s))[:, 0]
        rest = tempered[:, columns]
    mixed = points.mixed(rest)
    lead = job.lead_section
    outer = soft.copy()
    # A hard section that lies apart gets a heat of its own, like the leading one.
    for i in {*part.hard, *job.hard}:
        outer[:, i] = mixed[:, i * count : i * count + OUTER].mean(axis=1)
    here = slice(lead * count, (lead + 1) * count)
    fresh = mixed[:, here]
    if ready.fresh is not None and ready.fresh is not points:
        beside_it = np.broadcast_to(rest, mixed.shape)[:, here]
        fresh = ready.fresh.only(here).mixed(beside_it)
    ends = mixed[:, mixed.shape[1] - part.probes.ends :]
    beyond = list(part.soft)
    hard = ends.min(axis=1)[:, None]
    outer[:, beyond] += _turned_too(ready, part) * np.maximum(hard - outer[:, beyond], 0.0)
    return LocalHardness(mixed[:, here], fresh, part.probes.places, ends, outer, ring)


def _turned_too(ready: Prepared, part: Torched) -> Floats:
    """Return how far the middle of each section beside the zone hardens along with it. [-]."""
    # A short boss behind a thin zone is as hot as that, and goes into the bath with it.
    seen, history = part.probes, part.history
    shanks = slice(seen.in_zone, seen.before_ring)
    turned_c = _turned_c(ready.treatment.steel, ready.treatment.condition)
    hot = np.clip((history.peak_c[:, shanks] - turned_c) / TURNING_K, 0.0, 1.0)
    ends_s = history.time_s[:, seen.in_zone - seen.ends : seen.in_zone].max(axis=1)[:, None]
    return np.asarray(hot * (history.time_s[:, shanks] <= AS_QUICK * ends_s))


def _shanks(
    ready: Prepared, part: Torched, count: int, bar: tuple[_Bar, Floats, Floats]
) -> Floats:
    """Return the hardness of every section as if none had turned, tempered as it was. [HRC]."""
    before, more_s, tempered = bar
    soft = np.repeat(_rest_hv(ready, before, more_s), count, axis=1)
    shanks = slice(part.probes.in_zone, part.probes.before_ring)
    soft[:, list(part.soft)] = tempered[:, shanks]
    return _hrc(soft)


def _hrc(hv: Floats) -> Floats:
    """Return Rockwell hardness, carried on below 20. [HRC]."""
    return np.asarray(hrc_from_hv(np.maximum(hv, 90.0), outside="extend"))


def _layered(ready: Prepared, bath: tuple[_Bar | None, Floats]) -> LocalHardness:
    """Return the hardness of a part heated to a published depth, or soaked through its end."""
    job = ready.job
    bar, points_hrc = bath
    sections = job.asked.part.section
    grid = points_hrc.reshape(len(points_hrc), len(sections), len(POSITIONS))
    lead = job.lead_section
    zone = grid[:, lead, :].copy()
    heated_mm = 0.5 * max(sections[i].size for i in job.hard)
    layer = layer_mm(ready.treatment, heated_mm, job.ordered_depth_mm, ready.normals)
    radius = 0.5 * max(sections[i].size for i in job.leading.sections)
    zone[:, -1] = np.where(layer >= THROUGH * radius, zone[:, -1], ready.supply_hrc)
    hard = np.isin(np.arange(len(sections)), job.hard)
    outer = np.where(hard, grid[:, :, :OUTER].mean(axis=2), ready.supply_hrc[:, None])
    ring = ready.supply_hrc
    if bar is not None:
        source = ready.treatment.source
        passing_s = PASSING_S["induction" if source is None else source.kind]
        passed = equivalent_time([bar.ring_c] * 2, [0.0, passing_s], REFERENCE_C)
        ring = _hrc(_rest_hv(ready, bar, np.full((1, 1), float(passed))))[:, 0]
    ends = zone[:, :1]
    return LocalHardness(zone, zone, POSITIONS, ends, outer, ring, layer)
