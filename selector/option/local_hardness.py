"""Hardness of a locally heated part: what turned, what did not, the soft ring and the shank.

What did not turn is the bar as bought, tempered by its own time at heat. A ring lies where the
peak stayed just below the transformation of a rapid heating: farther in, hardness rises again.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.hardening import as_quenched
from selector.hardening.heating_course import REFERENCE_C
from selector.hardening.quenched_bar import FERRITE_HV, mixed_hrc
from selector.hardening.stock import SOFT, Stock, rest_hv, stock_of
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.job.geometry import POSITIONS
from selector.job.job import Job
from selector.job.process import temper_peak_c
from selector.job.treatment import Temper
from selector.metallurgy.austenite import austenite
from selector.metallurgy.tempering import equivalent_time
from selector.metallurgy.transformation import critical_temperatures, rapid_heating_shift
from selector.option.preparation import Prepared
from selector.torch.depth import layer_mm
from selector.torch.response import Torched

Floats = NDArray[np.float64]

# Where the heat itself is not followed, the ring passes this long just below transformation, by
# kind of source. Estimate. [s]
PASSING_S = {"flame": 10.0, "fire": 30.0, "induction": 1.0}
# Temperings for which the bar's softening is worked out; straight in the logarithm between. [s]
DRAWN_S = np.geomspace(1e-6, 1e6, 37)
# How far out the softening of a ring is, as sd of its share: documented for plain carbon only,
# wider for alloy. Estimates. [-]
RING_SD, RING_SD_ALLOY = 0.1, 0.2
THROUGH = 0.95
OUTER = 3


@dataclass(frozen=True, slots=True, eq=False)
class LocalHardness:
    """What a local heat leaves over the draws, drawn. [HRC].

    `zone` has the places of the leading section, rim first, at `places` of its radius; `ends`
    the ends of the hard zone; `outer` the outer fibres of every section, ring left out.
    """

    zone: Floats
    places: tuple[float, ...]
    ends: Floats
    outer: Floats
    ring: Floats
    layer_mm: Floats | None = None


def beside(job: Job) -> list[int]:
    """Return the soft sections that adjoin a hard one.

    Parameters
    ----------
    job : Job
        Part and demands.

    Returns
    -------
    list of int
        Counted from 0.
    """
    hard = set(job.hard)
    count = len(job.asked.part.section)
    return [i for i in range(count) if i not in hard and {i - 1, i + 1} & hard]


def local_hardness(
    ready: Prepared, temper: Temper, job: Job, points_hrc: Floats
) -> LocalHardness:
    """Return the hardness of a locally heated part.

    Parameters
    ----------
    ready : Prepared
        A local treatment, heated and quenched.
    temper : Temper
        How it is drawn.
    job : Job
        Part, workshop, draws.
    points_hrc : ndarray
        The points of the quench after the temper. [HRC]

    Returns
    -------
    LocalHardness
        By histories at a torch, by published depths elsewhere.
    """
    bar = _bar(ready, job)
    more_s = np.zeros((1, 1)) if bar is None else _temper_s(ready, temper, job)
    if ready.torched is not None:
        return _torched(ready, ready.torched, job, (bar, more_s, points_hrc))
    return _layered(ready, job, (bar, points_hrc))


@dataclass(frozen=True, slots=True, eq=False)
class _Bar:
    """A bar that softens: by log time of tempering, and where its ring lies."""

    stock: Stock
    softening: Floats
    ring_c: float


def _bar(ready: Prepared, job: Job) -> _Bar | None:
    """Return the bar before, worked out once for middle and draws; None of soft bar."""
    work = ready.treatment
    if work.condition.name in SOFT:
        return None
    source = work.source.slug if work.source else ""

    def made() -> _Bar:
        stock = stock_of(work)
        kept = rest_hv(DRAWN_S, stock)
        lines = critical_temperatures(stock.composition_wt_pct)
        shift = rapid_heating_shift(_rate(ready), stock.structure)
        ring_c = float(np.ravel(lines.ac1_c + shift.ac1_c)[0])
        return _Bar(stock, np.log(kept / kept[0]), ring_c)

    key = ("bar", work.steel.slug, work.condition.name, source)
    return job.course(key, made)


def _rate(ready: Prepared) -> float:
    """Return about how fast the ring is heated. [°C/s]."""
    if ready.torched is not None:
        return float(np.round(np.median(ready.torched.rate_c_per_s[:, -1])))
    return float(ready.heat.rate_c_per_s) if ready.heat else 1.0


def _temper_s(ready: Prepared, temper: Temper, job: Job) -> Floats:
    """Return the temper as time at the reference; shape (draws, 1). [s]."""
    if temper.means == "none":
        return np.zeros((1, 1))
    at_c = temper_peak_c(temper, job.asked.workshop, ready.normals)
    time_s = temper.time_s * temper.cycles
    return equivalent_time(np.hstack([at_c, at_c]), [0.0, time_s], REFERENCE_C)[:, None]


def _sold_hv(ready: Prepared) -> Floats:
    """Return the hardness of the bar as bought, shape (draws, 1); as ferrite where unknown."""
    sold = np.asarray(hv_from_hrc(ready.supply_hrc, outside="extend"))[:, None]
    return np.asarray(np.where(np.isnan(sold), FERRITE_HV, sold))


def _rest_hv(ready: Prepared, bar: _Bar, drawn_s: Floats) -> Floats:
    """Return the hardness of what did not turn, over the draws. [HV]."""
    softened = np.interp(np.log(drawn_s + DRAWN_S[0]), np.log(DRAWN_S), bar.softening)
    spread = RING_SD_ALLOY if _is_alloy(bar.stock) else RING_SD
    off = np.maximum(1.0 + spread * ready.normals["tempering"], 0.0)[:, None]
    return np.asarray(_sold_hv(ready) * np.exp(softened * off))


def _is_alloy(stock: Stock) -> bool:
    """Return whether a steel holds back its softening by Cr, Mo or V."""
    held = stock.composition_wt_pct
    return sum(held.get(element, 0.0) for element in ("Cr", "Mo", "V")) > 0.4


def _torched(
    ready: Prepared,
    found: Torched,
    job: Job,
    way: tuple[_Bar | None, Floats, Floats],
) -> LocalHardness:
    """Return the hardness of a part that a torch heated, each place by its own history."""
    bar, more_s, points_hrc = way
    sections, shape = job.asked.part.section, points_hrc.shape
    if bar is None:
        soft = np.broadcast_to(ready.supply_hrc[:, None], (shape[0], len(sections)))
        ring, rest = ready.supply_hrc, _sold_hv(ready)
    else:
        drawn = _rest_hv(ready, bar, np.exp(found.drawn_log_s) + more_s)
        soft = _shanks(ready, found, len(sections), (bar, more_s, drawn))
        ring_s = found.ring_s(bar.ring_c)[:, None]
        ring = _hrc(_rest_hv(ready, bar, ring_s + more_s))[:, 0]
        rest = drawn[:, list(found.columns)]
    mixed = _mixed(ready, found, bar, (points_hrc, rest), job)
    lead, count = max(job.leading.sections, key=lambda i: sections[i].size), len(POSITIONS)
    outer = soft.copy()
    for i in job.hard:
        outer[:, i] = mixed[:, i * count : i * count + OUTER].mean(axis=1)
    zone = mixed[:, lead * count : (lead + 1) * count]
    return LocalHardness(zone, found.places, mixed[:, shape[1] - found.ends :], outer, ring)


def _shanks(
    ready: Prepared, found: Torched, count: int, way: tuple[_Bar, Floats, Floats]
) -> Floats:
    """Return the hardness of every section as if none had turned, drawn as it was. [HRC]."""
    bar, more_s, drawn = way
    soft = np.repeat(_rest_hv(ready, bar, more_s), count, axis=1)
    soft[:, list(found.soft)] = drawn[:, found.in_zone :]
    return _hrc(soft)


def _mixed(
    ready: Prepared,
    found: Torched,
    bar: _Bar | None,
    parts: tuple[Floats, Floats],
    job: Job,
) -> Floats:
    """Return the hardness of the zone's points, of what turned and what did not. [HRC]."""
    points_hrc, rest = parts
    steel, columns = ready.treatment.steel, list(found.columns)
    if not as_quenched.by_composition(steel):
        share = _formed(steel, found.peak_c)[:, columns]
        turned = hv_from_hrc(points_hrc, outside="extend")
        return mixed_hrc(share, np.maximum(turned, rest), rest)
    if bar is None or bar.stock.condition != "prehard":
        # Soft bar is about as hard as the ferrite that its points are mixed with.
        return np.maximum(points_hrc, _hrc(rest))
    share = job.once(
        ("share", *ready.alike, bar.stock.condition),
        lambda: austenite(
            ready.composition, found.peak_c, found.hold_s, found.rate_c_per_s,
            bar.stock.structure,
        ).fraction,
    )[:, columns]  # fmt: skip
    log_hv = np.log(hv_from_hrc(points_hrc, outside="extend"))
    return _hrc(np.exp(log_hv + (1.0 - share) * np.log(np.maximum(rest / FERRITE_HV, 1.0))))


def _formed(steel: Steel, peak_c: Floats) -> Floats:
    """Return the share that turned, by how far the peak missed the steel's range."""
    missed = (steel.hardened.temperature_c.low if steel.hardened else 800.0) - peak_c
    full, none = as_quenched.FORMED_FULL_C, as_quenched.FORMED_NONE_C
    return np.clip((none - missed) / (none - full), 0.0, 1.0)


def _hrc(hv: Floats) -> Floats:
    """Return Rockwell hardness, carried on below 20. [HRC]."""
    return np.asarray(hrc_from_hv(np.maximum(hv, 90.0), outside="extend"))


def _layered(ready: Prepared, job: Job, way: tuple[_Bar | None, Floats]) -> LocalHardness:
    """Return the hardness of a part heated to a published depth, or soaked through its end."""
    bar, points_hrc = way
    sections = job.asked.part.section
    grid = points_hrc.reshape(len(points_hrc), len(sections), len(POSITIONS))
    lead = max(job.leading.sections, key=lambda i: sections[i].size)
    zone = grid[:, lead, :].copy()
    layer = layer_mm(ready.treatment, job, ready.normals)
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
    return LocalHardness(zone, POSITIONS, ends, outer, ring, layer)
