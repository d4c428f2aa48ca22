"""How the points of a part cool in a bath, over the samples, from simulated quenches.

A round of like size is quenched in the bath as it is meant to be; a few more quenches, the bath
keener or duller and the way to it shorter or longer, give a smooth response, which the samples
are read from. What the end-quench equivalence misses is put right as for `quenched_bar`, by the
same factor, so that one path serves all.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from selector.errors import demand
from selector.hardening.bar_cooling import bar_cooling, time_on_bar_s, unevenness
from selector.heat.bar_equivalent import jominy_distance_mm
from selector.heat.boiling import Bath, Quench
from selector.heat.conduction import Plan, Stop
from selector.heat.end_quench import (
    FARTHEST_MM,
    NEAREST_MM,
    end_quench_time_s,
    equivalent_distance_mm,
    time_between,
)
from selector.heat.exchange import Boundary
from selector.heat.grid import Grid, round_grid
from selector.heat.immersion import Immersion, quench_boundary, quench_history
from selector.heat.steel_property import SteelClass, cooling_steel
from selector.kept import kept_on_disk, kept_within
from selector.sampling import Normals

Floats = NDArray[np.float64]

# Points of one section, from just under the surface to the centre, as fraction of the radius.
POSITIONS = (0.98, 0.85, 0.65, 0.4, 0.0)
# Hardening heats are simulated at the nearest of these; from the last up the distance moves by
# less than 4 %, as a bar's rim and the chart it is set on start alike. [°C]
BINS_C = (760.0, 800.0, 840.0)
# From here up the start no longer moves the response: a thin part does not cool below 700 °C on
# its way to the bath, and the level of each heat is simulated by itself. Nor does the kind of
# steel: its coefficients differ by less than 0.01. [°C]
ALIKE_FROM_C = 800.0
# The design: sd of the bath's exchange, the film of a dull bath living longer with it; and of
# the logarithm of the delay. [-]
DESIGN = ((-2.0, 0.0), (-1.0, 0.0), (0.0, -1.5), (0.0, 1.5), (1.0, 0.0), (2.0, 0.0))
MOST_SD = 2.0
# How evenly one hand goes from heat to bath. Common practice, no source. [-]
DELAY_LOG_SD = 0.4
UNDER_S, DEEP_MM = 0.3, 1e4
# Rounds simulated of one part, and how much alike two rounds must be to share a response. [-]
MOST_ROUNDS, ALIKE = 4, 1.6
# Rounds that are simulated: a thinner foil leaves nothing to lay a grid on, and a thicker
# forging takes more than the day that is followed. [mm]
SIMULATED_MM = (0.01, 2000.0)
# Time from 700 to 500 °C goes about with this power of the distance on the end-quench bar. [-]
TIME_POWER = 1.5


@dataclass(frozen=True, slots=True, eq=False)
class Points:
    """Points of a part as they cool, over the samples; shape (samples, points).

    `distance_mm` is the equivalent distance on the end-quench bar, `time_s` the time from 700
    to 500 °C as simulated. `place` (share of the radius), `log_sd`, the response's own error on
    the distance, and `uneven` (0 where the section's skin and core cool alike, to 1) have shape
    (points,).
    """

    distance_mm: Floats
    time_s: Floats
    place: Floats
    log_sd: Floats
    uneven: Floats

    @staticmethod
    def joined(parts: Sequence["Points"]) -> "Points":
        """Return the points of several parts side by side."""
        return Points(
            np.concatenate([part.distance_mm for part in parts], axis=1),
            np.concatenate([part.time_s for part in parts], axis=1),
            np.concatenate([part.place for part in parts]),
            np.concatenate([part.log_sd for part in parts]),
            np.concatenate([part.uneven for part in parts]),
        )

    def only(self, index: int) -> "Points":
        """Return one of the points."""
        keep = slice(index, index + 1)
        return Points(
            self.distance_mm[:, keep],
            self.time_s[:, keep],
            self.place[keep],
            self.log_sd[keep],
            self.uneven[keep],
        )


@dataclass(frozen=True, slots=True, eq=False)
class Level:
    """A round in its bath as meant: log time, charts' factor by position, unevenness."""

    log_time: Floats
    factor: Floats
    uneven: float


@dataclass(frozen=True, slots=True, eq=False)
class Response:
    """Log time over the level's, by 1, bath, bath² and delay; and its leave-one-out error."""

    coefficient: Floats
    log_sd: Floats


@dataclass(frozen=True, slots=True)
class Start:
    """How a part enters the quench: its heat and which austenite's properties it has."""

    heat_c: float
    steel_class: SteelClass = "low-alloy"


def start_of(target_c: float, steel_class: SteelClass) -> Start:
    """Return the start of a quench, its heat the nearest that is simulated."""
    return Start(min(BINS_C, key=lambda heat: abs(heat - target_c)), steel_class)


def cooled(sizes_mm: Floats, quench: Quench, start: Start, normals: Normals) -> Points:
    """Return how rounds cool in a quench, at each of `POSITIONS`, over the samples."""
    low, high = SIMULATED_MM
    rule = f"between {low:g} and {high:g} mm"
    demand((sizes_mm >= low) & (sizes_mm <= high), "like round", rule, sizes_mm, "mm")
    at = np.clip(normals["bath_bias"], -MOST_SD, MOST_SD)
    if quench.bath is None:
        return _charted(sizes_mm, quench, at)
    late = np.clip(normals["delay"], -MOST_SD, MOST_SD)
    basis = _basis(at, late)
    rounds = _simulated_rounds(sizes_mm)
    levels = [_level(size, quench.bath, start) for size in rounds]
    responses = [_response_near(size, rounds, quench, start) for size in rounds]
    found = [_at(float(size), rounds, levels, responses) for size in sizes_mm]
    log_time = np.concatenate([level.log_time + basis @ r.coefficient for level, r in found], 1)
    factor = np.concatenate([level.factor for level, _ in found])
    time_s = np.exp(log_time)
    distance = np.clip(equivalent_distance_mm(time_s) * factor, NEAREST_MM, FARTHEST_MM)
    log_sd = np.concatenate([r.log_sd for _, r in found]) / TIME_POWER
    uneven = np.repeat([level.uneven for level, _ in found], len(POSITIONS))
    return Points(distance, time_s, _places(sizes_mm), log_sd, uneven)


@lru_cache(maxsize=256)
def centre_s(size_mm: float, bath: Bath, start: Start) -> float:
    """Return the time from 700 to 500 °C at the centre of a round, quenched as meant. [s]."""
    level = _level(size_mm, bath, start)
    simulated = np.exp(level.log_time[-1:])
    distance = equivalent_distance_mm(simulated) * level.factor[-1:]
    distance = np.clip(distance, NEAREST_MM, FARTHEST_MM)
    return float(time_on_bar_s(distance, simulated)[0])


def chart_factor(size_mm: float, bath: Bath, start: Start) -> Floats:
    """Return what published bar charts put right on the distance, at each of `POSITIONS`."""
    return _level(size_mm, bath, start).factor


@kept_within(16.0)  # megabytes: all reaches of a part are quenched in the same baths
def keener(
    grid: Grid, bath: Bath, delay_s: float, off: tuple[float, float], *, whole: bool = False
) -> Boundary:
    """Return the surroundings of a part dipped whole in a bath that is keener than meant."""
    sds, log_sd = off
    dip = Immersion((delay_s, delay_s + UNDER_S), (0.0, DEEP_MM))
    meant = quench_boundary(
        grid, bath, dip, collapse_normal=-sds, holder=None if whole else "insulated"
    )
    # Air on the way stays as it is; every curve of the bath is keener by the same share.
    keen = np.full(meant.curve.shape[0], np.exp(log_sd * sds))
    keen[0] = 1.0
    return meant._replace(curve=np.ascontiguousarray(meant.curve * keen[:, None]))


def _charted(sizes_mm: Floats, quench: Quench, at: Floats) -> Points:
    """Return the points by the bar charts, for a medium whose boiling is not described."""
    severity = quench.severity * np.exp(quench.log_sd * at)[:, None]
    sizes, places = np.repeat(sizes_mm, len(POSITIONS)), _places(sizes_mm)
    distance = np.minimum(jominy_distance_mm(sizes, places, severity), FARTHEST_MM)
    meant = jominy_distance_mm(sizes_mm[:, None], (1.0, 0.0), quench.severity)
    uneven = np.repeat(unevenness(meant[:, 0], meant[:, 1]), len(POSITIONS))
    time_s = end_quench_time_s(distance)
    return Points(distance, time_s, places, np.zeros(places.size), uneven)


def _places(sizes_mm: Floats) -> Floats:
    """Return the place of each point, sections × positions."""
    return np.tile(np.array(POSITIONS), len(sizes_mm))


def _simulated_rounds(sizes_mm: Floats) -> tuple[float, ...]:
    """Return the rounds to simulate, smallest first: all of a part's, or some between ends."""
    sizes = sorted({round(float(size), 2) for size in sizes_mm})
    if len(sizes) > MOST_ROUNDS:
        sizes = [round(float(s), 2) for s in np.geomspace(sizes[0], sizes[-1], MOST_ROUNDS)]
    return tuple(sizes)


def _response_near(
    size: float, rounds: tuple[float, ...], quench: Quench, start: Start
) -> Response:
    """Return the response of a round, or of the part's end nearest to it if much alike."""
    ends = rounds[0], rounds[-1]
    if ends[1] < ALIKE * ends[0]:
        return _response(ends[1], quench, start)
    if size in ends:
        return _response(size, quench, start)
    part = np.log(size / ends[0]) / np.log(ends[1] / ends[0])
    low, high = (_response(end, quench, start) for end in ends)
    return Response(
        low.coefficient + part * (high.coefficient - low.coefficient),
        low.log_sd + part * (high.log_sd - low.log_sd),
    )


def _at(
    size: float, rounds: tuple[float, ...], levels: list[Level], responses: list[Response]
) -> tuple[Level, Response]:
    """Return level and response of a size, straight in its logarithm between the rounds."""
    k = int(np.clip(np.searchsorted(rounds, size) - 1, 0, max(len(rounds) - 2, 0)))
    n = min(k + 1, len(rounds) - 1)
    span = np.log(rounds[n] / rounds[k])
    part = float(np.clip(np.log(size / rounds[k]) / span, 0.0, 1.0)) if span > 0.0 else 0.0
    a, b, r, s = levels[k], levels[n], responses[k], responses[n]
    return (
        Level(
            a.log_time + part * (b.log_time - a.log_time),
            a.factor + part * (b.factor - a.factor),
            a.uneven + part * (b.uneven - a.uneven),
        ),
        Response(
            r.coefficient + part * (s.coefficient - r.coefficient),
            r.log_sd + part * (s.log_sd - r.log_sd),
        ),
    )


@lru_cache(maxsize=1024)
def _level(size_mm: float, bath: Bath, start: Start) -> Level:
    """Return a round in its bath as meant, without delay, as `quenched_bar` has it."""
    bar = bar_cooling(size_mm, bath, start.heat_c, start.steel_class)
    place = bar.radius_mm / bar.radius_mm[-1]
    factor = bar.jominy_mm / equivalent_distance_mm(bar.time_700_500_s)
    return Level(
        np.interp(POSITIONS, place, np.log(bar.time_700_500_s)),
        np.interp(POSITIONS, place, factor),
        bar.uneven,
    )


def _basis(at: Floats, late: Floats) -> Floats:
    """Return the terms of the response; shape (samples, terms)."""
    return np.stack([np.ones_like(at), at, at**2, late], axis=1)


def _response(size_mm: float, quench: Quench, start: Start) -> Response:
    """Return the response of a round; warmer starts than a low one and both kinds share it."""
    bath = quench.bath
    if bath is None:
        msg = "a charted medium has no simulated response"
        raise ValueError(msg)
    shared = Start(min(start.heat_c, ALIKE_FROM_C))
    return _fitted(size_mm, bath, quench.log_sd, quench.delay_s, shared)


@lru_cache(maxsize=1024)
@kept_on_disk
def _fitted(
    size_mm: float, bath: Bath, log_sd: float, delay_s: float, start: Start
) -> Response:
    """Return the response fitted to the design's quenches, with its leave-one-out error."""
    level = _level(size_mm, bath, start).log_time
    log_time = np.stack(
        [
            _log_time(size_mm, bath, start, (b, log_sd, delay_s * np.exp(DELAY_LOG_SD * d)))
            for b, d in DESIGN
        ]
    )
    at, late = np.array(DESIGN).T
    terms = _basis(at, late)
    solve = np.linalg.pinv(terms)
    coefficient = solve @ (log_time - level)
    missed = log_time - level - terms @ coefficient
    left_out = missed / (1.0 - np.diag(terms @ solve))[:, None]
    # A sample lies seldom where the design reaches: each error counts as often as it is met.
    weight = np.exp(-0.5 * (at**2 + late**2))[:, None]
    return Response(coefficient, np.sqrt((weight * left_out**2).sum(0) / weight.sum()))


def _log_time(
    size_mm: float, bath: Bath, start: Start, out: tuple[float, float, float]
) -> Floats:
    """Return the log time at each position, the bath out by some sd and the part late."""
    sds, log_sd, delay_s = out
    grid = round_grid(size_mm)
    boundary = keener(grid, bath, delay_s, (sds, log_sd))
    cells = tuple(int(c) for c in grid.cells())
    plan = Plan(86400.0, watch=cells, stop=Stop(0, 480.0, "falling"))
    steel = cooling_steel(start.steel_class)
    history = quench_history(grid, steel, start.heat_c, (bath, boundary), plan)
    log_time = np.log(time_between(history.time_s, history.temperature_c))
    return np.interp(POSITIONS, grid.across_mm / (0.5 * size_mm), log_time)
