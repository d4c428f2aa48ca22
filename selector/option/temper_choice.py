"""Which tempers of a treatment are worth choosing, and how wide the band is that serves too.

Everything here is at the middle of all uncertainties, over the whole grid at once.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.duty.named_duty import duty_of
from selector.duty.temper_colour import usual_temper_c
from selector.hardening.as_quenched import as_quenched
from selector.hardening.bath_response import POSITIONS, Points
from selector.hardening.tempered import austempered, curve_reach_c, tempered
from selector.job.demand import FOR_WEAR, Demand
from selector.job.job import Job, per_job
from selector.job.screening import heated_thickness
from selector.job.tempers import BLAZE_THIN_MM, tempers
from selector.job.treatment import Means, Temper, Treatment
from selector.metallurgy.temper_curve import CONSTANT, KELVIN, parameter_k
from selector.option.layered import case_softening_hrc
from selector.option.prediction import embrittled
from selector.option.preparation import Prepared, prepare
from selector.option.set_up import MISREAD_C, at_torch
from selector.requirement import Requirement

Floats = NDArray[np.float64]
# TemperCourse this much further at most by the instruments of an oven than by eye. [-]
INSTRUMENT_SHARE = 0.4
BY_COLOUR = frozenset({"torch", "residual", "plate", "blaze"})
# Struck ends are tempered at least to dark straw or bronze. Common practice. [°C]
STRUCK_LEAST_TEMPER_C = 225.0
# What is tapped is tempered at least to pale straw; gauges, drill bushes, small cutters and
# races, which nothing strikes, are relieved at 150 °C at least. Common practice. [°C]
_LEAST_C = {"hammered": STRUCK_LEAST_TEMPER_C, "light": 180.0, "none": 150.0}
# A temper must be hotter than the service temperature by this. Common practice. [°C]
SERVICE_MARGIN_C = 30.0
# What a temper that the service would go on with counts as, beside hardness off the window:
# it is taken where there is no other. [HRC]
_UNDONE_HRC = 20.0
# Share of its window at which a zone that wears is tempered, one that wears and is tapped, and
# one that takes blows; what turns something, or wears by nothing, is best at the middle. Common
# practice: gauges and faces that rub are left as hard as a straw temper leaves them, dies run
# at the hard end, struck tools at the tough one where no colour of the trade says it better.
# [-]
WEARING_AIM, TAPPED_AIM, STRUCK_AIM = 0.85, 0.6, 0.3
# Of a window that its duty gives, the hard end counts there, so much of it: what is softer
# serves, and nobody aims at it. Common practice. [HRC]
_AIMED_WITHIN_HRC = 7.0
# A means that ends further from what a duty is best at is passed over where another comes
# nearer by a good part of that. Estimates. [HRC], [°C], [-]
_ASTRAY_HRC, _ASTRAY_C, _NEARER = 2.5, 40.0, 0.5
# Tempers tried where the zone asks for no hardness: low, spring, tough; the low one as hot as
# the duty asks for, in steps of the grid. [°C]
_SAMPLES_C, _STEP_C = (200.0, 400.0, 550.0), 25.0


@dataclass(frozen=True, slots=True)
class Choice:
    """A temper to choose, the band that keeps the window, and its sensitivity."""

    temper: Temper
    band_c: tuple[float, float] | None
    middle_hrc: float
    sensitivity_hrc: float
    aimed: bool = True


def _grid_hrc(ready: Prepared, grid: tuple[Temper, ...], lead: int) -> Floats:
    """Return the surface hardness of the leading section for each temper; shape (tempers,)."""
    fresh, case_hrc = ready.fresh, ready.treatment.route.surface_hrc
    if ready.treatment.route.process == "case" and case_hrc is not None:
        return case_hrc.middle - np.array([case_softening_hrc(t) for t in grid])
    if fresh is None:
        return np.full(len(grid), float(ready.supply_hrc[0]))
    surface = fresh.only([lead * len(POSITIONS)])
    hrc = np.full(len(grid), float(surface.hrc[0, 0]))
    places = [place for place, temper in enumerate(grid) if temper.means != "none"]
    if places:
        heats = np.array([[grid[place].temperature_c] for place in places])
        turned, normals = surface.turned_hrc, ready.normals
        if ready.treatment.route.process == "austemper":
            after = austempered(ready.composition, turned, heats, normals)
        else:
            times = np.array([[grid[place].time_s * grid[place].cycles] for place in places])
            bar = ready.steel_as_heated, ready.composition
            after = tempered(*bar, turned, heats, times, normals)
        hrc[places] = replace(
            surface, turned_hrc=after, share=np.broadcast_to(surface.share, after.shape)
        ).hrc[:, 0]
    return hrc


def _misread_heat_hrc(ready: Prepared, lead: int, points: Points) -> float:
    """Return how much hardness a hardening heat misread by 25 °C costs, as quenched."""
    heat = ready.heat
    if heat is None or ready.fresh is None or not ready.treatment.by_eye:
        return 0.0
    if ready.torched is not None:
        return at_torch(ready.job, ready.alike).misread_hrc
    peaks = np.array(
        [[heat.target_c - MISREAD_C], [heat.target_c], [heat.target_c + MISREAD_C]]
    )
    hrc = as_quenched(
        ready.treatment.steel,
        ready.composition,
        replace(heat, peak_c=peaks),
        points.only(lead * len(POSITIONS)),
        ready.normals,
    ).hrc[:, 0]
    return float(np.max(np.abs(hrc - hrc[1])))


def _response(ready: Prepared, grid: tuple[Temper, ...], lead: int) -> tuple[Floats, Floats]:
    """Return the hardness for each temper, and its change where that is misread by 25 °C."""
    hotter = tuple(
        Temper(t.means, t.temperature_c + MISREAD_C, t.time_s, t.cycles) for t in grid
    )
    hrc, then = _grid_hrc(ready, grid + hotter, lead).reshape(2, len(grid))
    share = [
        0.0 if t.means == "none" else 1.0 if t.means in BY_COLOUR else INSTRUMENT_SHARE
        for t in grid
    ]
    return hrc, np.abs(then - hrc) * np.array(share)


def section_hrc(ready: Prepared, grid: tuple[Temper, ...], section: int) -> Floats:
    """Return the hardness under the surface of one section for each temper. [HRC]."""
    return _grid_hrc(ready, grid, section)


@per_job
def _responses(
    job: Job, alike: Treatment, grid: tuple[Temper, ...], lead: int
) -> tuple[Floats, Floats]:
    """Return hardness and change for each temper, for all bars that harden alike."""
    return _response(prepare(alike, job), grid, lead)


@per_job
def _misread(job: Job, alike: Treatment, lead: int, points: Points) -> float:
    """Return what a misread heat costs, for all bars that harden alike. [HRC]."""
    return _misread_heat_hrc(prepare(alike, job), lead, points)


def aim_of(asked: Requirement, demand: Demand) -> float:
    """Return where in its window a zone is best, 0 at the soft end, 1 at the hard one. [-]."""
    wear, impact = asked.zone[demand.zone].wear, asked.load.impact
    if impact == "hammered" or (wear == "edge-impact" and not asked.presses):
        return STRUCK_AIM
    turns = duty_of(demand, asked) == "drive"
    if wear == "none" or turns or demand.purpose != FOR_WEAR:
        return 0.5
    tapped = impact == "light" or wear == "edge-impact"
    return TAPPED_AIM if tapped else WEARING_AIM


def _window(demand: Demand) -> tuple[float, float]:
    """Return the hardness that a zone is aimed at, as wide as any where no end is asked."""
    low, high = demand.low_hrc, demand.high_hrc
    return (-100.0 if low is None else low, 100.0 if high is None else high)


def _astray(
    asked: Requirement, demand: Demand, grid: tuple[Temper, ...], hrc: Floats
) -> Floats:
    """Return how far tempers lie from what a duty is best at, 1 as far as matters. [-]."""
    colour_c = usual_temper_c(demand, asked) if demand.derived else None
    if colour_c is None:
        low, high = _window(demand)
        within = min(high - low, _AIMED_WITHIN_HRC) if demand.derived else high - low
        aim_hrc = high - (1.0 - aim_of(asked, demand)) * within
        return np.abs(hrc - aim_hrc) / _ASTRAY_HRC
    heats = np.array([t.temperature_c for t in grid])
    times = np.array([t.time_s * t.cycles for t in grid])
    in_an_hour_c = parameter_k(heats, times) / CONSTANT - KELVIN
    return np.abs(in_an_hour_c - colour_c) / _ASTRAY_C


def _least_c(asked: Requirement) -> float:
    """Return the coolest temper that stands the blows and the heat of the service. [°C]."""
    least = _LEAST_C[asked.load.impact]
    service = asked.limit.service_temperature
    return least if service is None else max(least, service + SERVICE_MARGIN_C)


def _worth(
    treatment: Treatment,
    grid: tuple[Temper, ...],
    hrc: Floats,
    window: tuple[float, float],
    least_c: float,
    astray: Floats,
) -> dict[int, bool]:
    """Return the places in the grid that are worth choosing, and which of them are aimed at."""
    low, high = window
    off = np.maximum(low - hrc, 0) + np.maximum(hrc - high, 0)
    cool = _UNDONE_HRC if least_c > STRUCK_LEAST_TEMPER_C else 1.0
    penalty = np.array(
        [2.0 * embrittled(treatment, t) + cool * (t.temperature_c < least_c) for t in grid]
    )
    chosen: dict[int, bool] = {}
    within = [k for k in range(len(grid)) if off[k] == 0 and penalty[k] == 0]
    nearest = min((astray[k] for k in within), default=np.inf)
    means: tuple[Means, ...] = tuple(dict.fromkeys(t.means for t in grid))
    for kind in means:
        places = [k for k, t in enumerate(grid) if t.means == kind]
        best = min(places, key=lambda k: (off[k] + penalty[k], -grid[k].temperature_c))
        # Inside the window the duty decides, not the score: which end of it is no detail.
        aimed = min((k for k in within if k in places), key=lambda k: astray[k], default=best)
        near = astray[aimed] <= max(nearest + _NEARER, 1.0)
        chosen[aimed] = near if aimed in within else bool(off[aimed]) or not within
        # The toughest is the way out where the aimed one fails.
        chosen.setdefault(best, False)
    return chosen


def _band(
    treatment: Treatment,
    grid: tuple[Temper, ...],
    hrc: Floats,
    place: int,
    window: tuple[float, float],
    least_c: float,
) -> tuple[float, float] | None:
    """Return the unbroken run of tempers about a chosen one that serve as well."""
    # A run does not reach below the least temper of the service unless the choice itself does.
    chosen = grid[place]
    if chosen.means == "none":
        return None
    like = [k for k, t in enumerate(grid) if t.means == chosen.means]
    floor_c = min(least_c, chosen.temperature_c)
    serves = [
        window[0] <= hrc[k] <= window[1]
        and grid[k].temperature_c >= floor_c
        and not embrittled(treatment, grid[k])
        for k in like
    ]
    at = like.index(place)
    if not serves[at]:
        return None
    first = last = at
    while first > 0 and serves[first - 1]:
        first -= 1
    while last < len(like) - 1 and serves[last + 1]:
        last += 1
    return grid[like[first]].temperature_c, grid[like[last]].temperature_c


def choice_of(ready: Prepared, temper: Temper, points: Points | None) -> Choice:
    """Return one temper of a treatment as a choice, wherever it lies in the grid."""
    lead = ready.job.lead_section
    hrc, slope = _response(ready, (temper,), lead)
    if ready.fresh is None and ready.treatment.route.process != "case":
        return Choice(temper, None, float(hrc[0]), 0.0)
    heat_cost = 0.0 if points is None else _misread_heat_hrc(ready, lead, points)
    return Choice(temper, None, float(hrc[0]), heat_cost + float(slope[0]))


def choices(
    ready: Prepared,
    ceilings: Mapping[Means, float],
    points: Points | None,
) -> tuple[Choice, ...]:
    """Return the tempers of a treatment that are worth choosing."""
    return misread_too(tempers_worth(ready, ceilings), ready, points)


def misread_too(
    chosen: tuple[Choice, ...], ready: Prepared, points: Points | None
) -> tuple[Choice, ...]:
    """Return choices with what a misread hardening heat costs, beside a misread temper."""
    if points is None:
        return chosen
    cost_hrc = _misread(ready.job, ready.alike, ready.job.lead_section, points)
    return tuple(replace(c, sensitivity_hrc=cost_hrc + c.sensitivity_hrc) for c in chosen)


def tempers_worth(ready: Prepared, ceilings: Mapping[Means, float]) -> tuple[Choice, ...]:
    """Return the tempers that are worth choosing, sensitive to a misread temper alone."""
    job = ready.job
    thin = heated_thickness(job.asked, ready.treatment) <= BLAZE_THIN_MM
    reach = curve_reach_c(ready.treatment.steel)
    struck = job.asked.load.impact == "hammered"
    grid = tuple(
        temper
        for temper in tempers(ready.treatment, dict(ceilings), thin=thin, struck=struck)
        if temper.temperature_c <= reach
    )
    lead_demand, lead = job.leading, job.lead_section
    cased = ready.treatment.route.process == "case"
    if ready.fresh is None and not cased:
        supply = float(ready.supply_hrc[0])
        return tuple(Choice(temper, None, supply, 0.0) for temper in grid)
    # Treatments that come out of the quench alike are tempered alike.
    hrc, slopes = _responses(job, ready.alike, grid, lead)
    least, window = _least_c(job.asked), _window(lead_demand)
    if lead_demand.low_hrc is None and lead_demand.high_hrc is None:
        least_step = _STEP_C * np.ceil(least / _STEP_C)
        heats = {max(heat, least_step) for heat in _SAMPLES_C}
        places = {
            k: True
            for k, t in enumerate(grid)
            if t.means == "none" or any(abs(t.temperature_c - heat) < 1 for heat in heats)
        } or {len(grid) - 1: True}
    else:
        astray = _astray(job.asked, lead_demand, grid, hrc)
        places = _worth(ready.treatment, grid, hrc, window, least, astray)
    return tuple(
        Choice(
            grid[k],
            _band(ready.treatment, grid, hrc, k, window, least),
            float(hrc[k]),
            float(slopes[k]),
            aimed,
        )
        for k, aimed in places.items()
    )
