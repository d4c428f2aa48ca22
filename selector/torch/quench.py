"""Design quenches branched from the design heatings, and a smooth response between them.

Each starts from the field that a heating left, hot end and cold shank, with the bath keener or
duller and the way to it shorter or longer. What a place then takes from 700 to 500 °C is fitted
over all five, with its leave-one-out error.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.hardening.bath_response import DELAY_LOG_SD, chart_factor, keener, start_of
from selector.heat.boiling import Bath
from selector.heat.conduction import Plan, Stop
from selector.heat.end_quench import time_between
from selector.heat.immersion import quench_history
from selector.heat.steel_property import cooling_steel
from selector.job.geometry import POSITIONS
from selector.job.process import Quench
from selector.torch.heating import HOLDS_S, LINGER_LOG_SD, STOPS_C, Heating, Torching
from selector.torch.part import outlines
from selector.torch.section import section_factors, start_bin_c

Floats = NDArray[np.float64]

# The design: stop and hold by their place in those of the heatings; sd of the bath and of the
# logarithm of the delay. The level of the flame is left out: it moves the log time by less than
# 0.005 for one sd, since every level is held to the same heat.
DESIGN = (
    (1, 2, 0.0, 0.0),
    (0, 2, 0.0, 0.0),
    (2, 2, 0.0, 0.0),
    (1, 1, -1.5, -1.5),
    (1, 3, 1.5, -1.5),
    (1, 3, -1.5, 1.5),
    (1, 1, 1.5, 1.5),
)
FOLLOWED_S = 1800.0
# A place is followed past this, so that its time from 700 to 500 °C is known. [°C]
PASSED_C = 400.0
# About how far heats are misread, for the weight of a run. [°C]
READ_C = 40.0
# No run can be left out of a fit that hangs on it alone. [-]
MOST_LEVERAGE = 0.95


@dataclass(frozen=True, slots=True, eq=False)
class Cooling:
    """Log time of each probe of the zone by the terms of the response, and its own error.

    `factor` is what the bar charts put right on the equivalent distance.
    """

    coefficient: Floats
    log_sd: Floats
    factor: Floats

    def log_time(self, at: Floats) -> Floats:
        """Return the log time of each probe; `at` as `terms` takes it."""
        return np.asarray(terms(at) @ self.coefficient)


def terms(at: Floats) -> Floats:
    """Return the terms of the response.

    Parameters
    ----------
    at : ndarray
        Stop in °C, log of the hold in s, bath and delay in sd; last axis.

    Returns
    -------
    ndarray
        Terms along the last axis. [-]
    """
    stop_c, log_hold, bath, delay = np.moveaxis(at, -1, 0)
    heat = (stop_c - STOPS_C[1]) / (STOPS_C[2] - STOPS_C[1])
    held = np.clip(log_hold, *np.log([HOLDS_S[1], HOLDS_S[3]])) - np.log(HOLDS_S[2])
    one = np.ones_like(heat)
    return np.stack([one, heat, heat**2, held, bath, delay], axis=-1)


def quenched(torching: Torching, heating: Heating, quench: Quench, bath: Bath) -> Cooling:
    """Return how the zone of a heated part cools.

    Parameters
    ----------
    torching : Torching
        The part.
    heating : Heating
        Its design heatings.
    quench : Quench
        How far the bath is out, and the way to it.
    bath : Bath
        The bath as meant.

    Returns
    -------
    Cooling
        The response at the probes of the zone.
    """
    at = np.array(
        [(STOPS_C[stop], np.log(HOLDS_S[hold]), sds, late) for stop, hold, sds, late in DESIGN]
    )
    runs = [_log_time(torching, heating, (quench, bath), run) for run in DESIGN]
    log_time = np.stack(runs) + _of_sections(torching, heating, bath)
    coefficient, log_sd = _fitted(at, log_time)
    # An end that no design hold brings to heat, but a longer one does, cools like the rim.
    rim = len(POSITIONS) * heating.probes.hard.index(torching.lead)
    first_end = len(POSITIONS) * len(heating.probes.hard)
    cold = np.flatnonzero(~np.isfinite(log_time).any(axis=0))
    cold = cold[cold >= first_end]
    coefficient[:, cold], log_sd[cold] = coefficient[:, [rim]], log_sd[rim]
    return Cooling(coefficient, log_sd, _factor(torching, heating, bath))


def _log_time(
    torching: Torching,
    heating: Heating,
    way: tuple[Quench, Bath],
    run: tuple[int, int, float, float],
) -> Floats:
    """Return the log time of each probe in one quench; NaN of one not hot enough."""
    stop, hold, sds, late = run
    (quench, bath), probes = way, heating.probes
    grid, weight = probes.grid, probes.weight[: probes.in_zone]
    start = heating.start(stop, hold)
    delay_s = quench.delay_s * float(np.exp(DELAY_LOG_SD * late))
    boundary = keener(grid, bath, delay_s, (sds, quench.log_sd))
    used = np.flatnonzero(weight.any(axis=0))
    cells = grid.cells()[used]
    # The slowest is the innermost place of the thickest section.
    last = len(POSITIONS) * (probes.hard.index(torching.lead) + 1) - 1
    slowest = cells[int(np.argmax(weight[last][used]))]
    plan = Plan(
        FOLLOWED_S,
        watch=tuple(int(cell) for cell in cells),
        stop=Stop(int(slowest), PASSED_C, "falling"),
    )
    steel = cooling_steel(torching.steel_class)
    history = quench_history(grid, steel, start, (bath, boundary), plan)
    rows = weight[:, used] @ history.temperature_c
    return np.log(time_between(history.time_s, rows))


def _of_sections(torching: Torching, heating: Heating, bath: Bath) -> Floats:
    """Return what the true section adds to the log time of each probe of the zone."""
    probes = heating.probes
    quench = (bath, start_bin_c(STOPS_C[1]), torching.steel_class)
    true = tuple(
        outline if number in probes.hard else None
        for number, outline in enumerate(outlines(torching.part))
    )
    slower, _ = section_factors(probes.grid, torching.part.sections, true, quench)
    return np.asarray(np.log(probes.weight[: probes.in_zone] @ slower))


def _factor(torching: Torching, heating: Heating, bath: Bath) -> Floats:
    """Return the charts' factor on the distance of each probe of the zone."""
    start = start_of(STOPS_C[1], torching.steel_class)
    found = []
    for number in heating.probes.hard:
        factor = chart_factor(round(torching.part.sections[number].outer_mm, 2), bath, start)
        places = torching.places if number == torching.lead else POSITIONS
        found.append(np.interp(places, POSITIONS[::-1], factor[::-1]))
    last = found[-1][0]
    return np.concatenate([*found, np.full(heating.probes.ends, last)])


def _fitted(at: Floats, log_time: Floats) -> tuple[Floats, Floats]:
    """Return coefficients and leave-one-out error of each probe."""
    known = np.isfinite(log_time)
    count = terms(at).shape[1]
    coefficient = np.zeros((count, log_time.shape[1]))
    log_sd = np.zeros(log_time.shape[1])
    whole = known.all(axis=0)
    if whole.any():
        coefficient[:, whole], log_sd[whole] = _fit(at, log_time[:, whole])
    for probe in np.flatnonzero(~whole):
        # Hot enough in some runs only: their mean will do for what hardly hardens.
        some = log_time[known[:, probe], probe]
        coefficient[0, probe] = some.mean() if some.size else np.log(FOLLOWED_S)
        log_sd[probe] = some.std() if some.size > 1 else 0.0
    return coefficient, log_sd


def _fit(at: Floats, log_time: Floats) -> tuple[Floats, Floats]:
    """Return the least-squares fit, each error counted as often as it is met."""
    read = (at[:, 0] - STOPS_C[1]) / READ_C
    held = (at[:, 1] - np.log(HOLDS_S[2])) / LINGER_LOG_SD
    away = read**2 + held**2 + at[:, 2] ** 2 + at[:, 3] ** 2
    weight = np.exp(-0.25 * away)[:, None]
    basis = terms(at)
    solve = np.linalg.pinv(weight * basis)
    coefficient = solve @ (weight * log_time)
    leverage = np.minimum(np.diag((weight * basis) @ solve), MOST_LEVERAGE)
    left_out = (log_time - basis @ coefficient) / (1.0 - leverage)[:, None]
    often = weight**2
    return coefficient, np.sqrt((often * left_out**2).sum(0) / often.sum())
