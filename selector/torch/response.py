"""A part as a torch leaves it, over the draws, read off its design histories."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.hardening import as_quenched
from selector.hardening.as_quenched import Points
from selector.hardening.bath_response import TIME_POWER
from selector.heat.boiling import Bath
from selector.heat.end_quench import FARTHEST_MM, NEAREST_MM, equivalent_distance_mm
from selector.job.geometry import POSITIONS
from selector.job.job import Job
from selector.job.process import Heat, Quench, hardening_heat
from selector.job.treatment import Treatment
from selector.sampling import Normals
from selector.torch.heating import (
    HOLDS_S,
    LEVELS,
    LINGER_LOG_SD,
    LINGER_S,
    MIDDLE,
    RIM,
    RING_C,
    STOPS_C,
    Heating,
    Torching,
    heated,
)
from selector.torch.part import EDGE_C, flame_of, operator, stretch
from selector.torch.quench import Cooling, quenched

Floats = NDArray[np.float64]
MOST_SD = 2.0
# A place hardens that comes within this of the heat the zone was brought to: hardening heats
# leave so much room above Ac3. [°C]
ROOM_C = 45.0
# Heats are read at the nearest multiple of this: within it the lead of one place on another
# moves by less than 2 °C, and the log of the cooling time by less than 0.03.
BIN_C = 20.0


@dataclass(frozen=True, slots=True, eq=False)
class Torched:
    """A part as a torch leaves it; sections count as in the part, columns are probes.

    `columns` puts the probes of the zone in the order sections × positions, up to the last hard
    section, and its ends behind. `drawn_log_s` has the probes of the `soft` sections behind
    those of the zone. `at` is where each draw lies in the design, its bath and delay left out.
    """

    hard: tuple[int, ...]
    soft: tuple[int, ...]
    ends: int
    places: tuple[float, ...]
    columns: tuple[int, ...]
    peak_c: Floats
    rate_c_per_s: Floats
    hold_s: Floats
    drawn_log_s: Floats
    ring_log_s: Floats
    at: Floats
    bin_c: float

    @property
    def in_zone(self) -> int:
        """How many probes lie in the zone."""
        return int(self.peak_c.shape[1])

    @property
    def rim_c(self) -> Floats:
        """How hot the coldest hard section gets at its rim, shape (draws,). [°C]."""
        inside = self.peak_c[:, : len(self.hard) * len(self.places)]
        return np.asarray(inside[:, :: len(self.places)].min(axis=1))

    def heat(self, meant: Heat) -> Heat:
        """Return a hardening heat as each place of the zone had it."""
        return replace(
            meant, peak_c=self.peak_c, hold_s=self.hold_s, rate_c_per_s=self.rate_c_per_s
        )

    def ring_s(self, peak_c: float) -> Floats:
        """Return the tempering of the ring, where the peak was just this, over the draws."""
        k = int(np.clip(np.searchsorted(RING_C, peak_c) - 1, 0, len(RING_C) - 2))
        part = np.clip((peak_c - RING_C[k]) / (RING_C[k + 1] - RING_C[k]), 0.0, 1.0)
        low, high = self.ring_log_s[:, k], self.ring_log_s[:, k + 1]
        return np.asarray(np.exp(low + part * (high - low)))


def torched(treatment: Treatment, job: Job) -> Torched:
    """Return a part as its torch leaves it, over the draws.

    Parameters
    ----------
    treatment : Treatment
        A local route at a flame.
    job : Job
        Part and workshop.

    Returns
    -------
    Torched
        Read once for all steels of one hardening heat.

    Raises
    ------
    ValueError
        The treatment does not harden by a quench.
    """
    heat = hardening_heat(treatment, job.asked.workshop, job.shared())
    if heat is None:
        msg = f"{treatment.label} is not quenched"
        raise ValueError(msg)
    near_c = _bin_c(heat.target_c)
    # Steel rich in carbon is held longer.
    key = (*_key(treatment), near_c, heat.structure == "spheroidised")
    found = job.once(("torched", *key), lambda: _read(treatment, job, heat, near_c))
    off_c = heat.target_c - near_c
    if off_c == 0.0:
        return found
    exact = ("torched", *key, f"{off_c:g}")
    return job.once(exact, lambda: replace(found, peak_c=found.peak_c + off_c))


def torched_points(treatment: Treatment, job: Job, quench: Quench) -> Points:
    """Return how the zone of a torch-heated part cools, over the draws.

    Parameters
    ----------
    treatment : Treatment
        A local route at a flame.
    job : Job
        Part and workshop.
    quench : Quench
        Its bath.

    Returns
    -------
    Points
        The probes of the zone.

    Raises
    ------
    ValueError
        The boiling of the bath is not described.
    """
    part, bath = torched(treatment, job), quench.bath
    if bath is None:
        msg = f"{treatment.label} is quenched in a medium whose boiling is not described"
        raise ValueError(msg)
    key = ("torch-quench", *_key(treatment), bath)
    cooling = job.course(key, lambda: _cooling(treatment, job, (quench, bath)))
    return job.once((*key, part.bin_c), lambda: _points(part, cooling, job.shared()))


def heated_share(treatment: Treatment, job: Job) -> float:
    """Return the share of the radius that comes to hardening heat, at the middle.

    Parameters
    ----------
    treatment : Treatment
        A local route at a flame.
    job : Job
        Part and workshop.

    Returns
    -------
    float
        1 where the section is heated through. [-]
    """
    key = ("heated-share", *_key(treatment), _target_c(treatment))
    return job.course(key, lambda: _heated_share(treatment, job.middle()))


def _heated_share(treatment: Treatment, middle: Job) -> float:
    """Return the share of the radius that comes to hardening heat."""
    found = torched(treatment, middle)
    lead = found.hard.index(_lead(middle)) * len(POSITIONS)
    over = found.peak_c[0, lead : lead + len(POSITIONS)] - _target_c(treatment) + ROOM_C
    if over.min() >= 0.0:
        return 1.0
    return float(1.0 - np.interp(0.0, over[::-1], found.places[::-1]))


def _key(treatment: Treatment) -> tuple[str, str]:
    """Return what the design heatings depend on, besides part and workshop."""
    slug = treatment.source.slug if treatment.source else ""
    return slug, as_quenched.start(treatment.steel).steel_class


def _target_c(treatment: Treatment) -> float:
    """Return the hardening heat that is meant. [°C]."""
    hardened = treatment.steel.hardened
    return hardened.temperature_c.middle if hardened else 850.0


def _bin_c(target_c: float) -> float:
    """Return the bin of a hardening heat. [°C]."""
    return BIN_C * round(target_c / BIN_C)


def _lead(job: Job) -> int:
    """Return the thickest section of the leading zone."""
    sections = job.asked.part.section
    return max(job.leading.sections, key=lambda i: sections[i].size)


def _job(treatment: Treatment, job: Job) -> Torching:
    """Return a part at the torch of a treatment."""
    source, shop = treatment.source, job.asked.workshop
    kind = as_quenched.start(treatment.steel).steel_class
    if source is None:
        msg = f"{treatment.label} has no heat source"
        raise ValueError(msg)
    part = stretch(job.asked, job.hard, job.leading.sections[0])
    lead = _lead(job)
    if part.turned_round:
        lead = len(job.asked.part.section) - 1 - lead
    hand = operator(source, shop, STOPS_C[-1], 0.0)
    return Torching(part, flame_of(source, shop), hand, kind, lead, _places(job))


def _places(job: Job) -> tuple[float, ...]:
    """Return the places of the leading section, one of them at the depth that is asked for."""
    radius = 0.5 * job.asked.part.section[_lead(job)].size
    asked = 1.0 - job.leading.depth_mm / radius
    if job.leading.depth_mm <= 0.0 or not 0.05 < asked < POSITIONS[0] - 0.01:
        return POSITIONS
    near = min(range(1, len(POSITIONS) - 1), key=lambda k: abs(POSITIONS[k] - asked))
    return (*POSITIONS[:near], asked, *POSITIONS[near + 1 :])


def _heating(treatment: Treatment, job: Job) -> Heating:
    """Return the design heatings of a part at a torch, once for all steels of a class."""
    key = ("torch-heat", *_key(treatment))
    return job.course(key, lambda: heated(_job(treatment, job)))


def _cooling(treatment: Treatment, job: Job, way: tuple[Quench, Bath]) -> Cooling:
    """Return the response of the design quenches in one bath."""
    return quenched(_job(treatment, job), _heating(treatment, job), *way)


def _read(treatment: Treatment, job: Job, heat: Heat, near_c: float) -> Torched:
    """Return the response of the design heatings at each draw, for the heat of a bin."""
    heating, normals = _heating(treatment, job), job.shared()
    probes, torching = heating.probes, _job(treatment, job)
    stop_c = np.asarray(heat.peak_c)[:, 0] + near_c - heat.target_c
    soak_s = 60.0 * treatment.source.soak_max_min.value if treatment.source else HOLDS_S[-1]
    meant_s = _meant_hold_s(heating, torching, job.leading.depth_mm > 0.0, soak_s)
    if heat.structure == "spheroidised":
        allowed = (hold for hold in HOLDS_S if hold <= soak_s)
        meant_s = max(meant_s, max(allowed, default=meant_s))
    log_hold = np.log(meant_s) + LINGER_LOG_SD * normals["eye_scatter"]
    log_hold = np.clip(log_hold, np.log(HOLDS_S[0]), np.log(HOLDS_S[-1]))
    weight = _hats(LEVELS, normals["torch_bias"])[:, :, None, None]
    weight = weight * _hats(STOPS_C, stop_c)[:, None, :, None]
    weight = weight * _hats(tuple(np.log(HOLDS_S)), log_hold)[:, None, None, :]
    count = len(stop_c)
    table = heating.table
    found = weight.reshape(count, -1) @ table.reshape(-1, table.shape[-1])
    over, rate, hold, drawn, ring = np.split(found, np.arange(1, 5) * probes.told, axis=1)
    zone = probes.in_zone
    # The response's own error goes by an instrument that nobody at a torch reads.
    miss = _left_out_c(heating)[:zone] * normals["furnace_bias"][:, None]
    count_all = len(job.asked.part.section)

    def of_part(numbers: tuple[int, ...]) -> tuple[int, ...]:
        if not torching.part.turned_round:
            return numbers
        return tuple(count_all - 1 - number for number in numbers)

    hard = of_part(probes.hard)
    return Torched(
        hard,
        of_part(probes.soft),
        probes.ends,
        torching.places,
        _columns(hard, (hard.index(_lead(job)), max(job.hard)), probes.ends),
        stop_c[:, None] + over[:, :zone] + miss,
        np.exp(rate[:, :zone]),
        hold[:, :zone],
        drawn,
        ring,
        np.stack([stop_c, log_hold], axis=1),
        near_c,
    )


def _meant_hold_s(heating: Heating, torching: Torching, deep: bool, soak_s: float) -> float:
    """Return the hold that brings the zone to heat, to the depth asked for and to its ends."""
    place = next((k for k, at in enumerate(torching.places) if at not in POSITIONS), 0)
    column = heating.probes.hard.index(torching.lead) * len(POSITIONS) + (place if deep else 0)
    ends = range(len(heating.probes.hard) * len(POSITIONS), heating.probes.in_zone)
    over = heating.over_c[MIDDLE[0], MIDDLE[1]][:, [column, *ends]].min(axis=1)
    usual = HOLDS_S.index(LINGER_S)
    for k in range(usual, len(HOLDS_S)):
        if over[k] >= -EDGE_C or (k + 1 < len(HOLDS_S) and HOLDS_S[k + 1] > soak_s):
            return HOLDS_S[k]
    return HOLDS_S[-1]


def _columns(hard: tuple[int, ...], of: tuple[int, int], ends: int) -> tuple[int, ...]:
    """Return the probe of each section × position; what is apart has the leading one's."""
    count, (lead, last) = len(POSITIONS), of
    found: list[int] = []
    for section in range(last + 1):
        first = (hard.index(section) if section in hard else lead) * count
        found += range(first, first + count)
    return (*found, *range(len(hard) * count, len(hard) * count + ends))


def _hats(nodes: tuple[float, ...], at: Floats) -> Floats:
    """Return the weight of each node, straight between them and held beyond the ends."""
    found = [np.interp(at, nodes, unit) for unit in np.eye(len(nodes))]
    return np.stack(found, axis=1)


def _left_out_c(heating: Heating) -> Floats:
    """Return the error of the peaks between the nodes, from leaving the middle ones out."""
    # What misses a curve by so much over twice the span misses it by a quarter between nodes.
    over = heating.over_c
    middle = over[MIDDLE[0], MIDDLE[1]]
    level = 0.5 * (over[0, 1] + over[2, 1]) - middle
    stop = 0.5 * (over[1, 0] + over[1, 2]) - middle
    hold = 0.5 * (middle[:-2] + middle[2:]) - middle[1:-1]
    usual = MIDDLE[2]
    found = level[usual] ** 2 + stop[usual] ** 2 + hold[usual - 1] ** 2
    return np.asarray(0.25 * np.sqrt(found))


def _points(part: Torched, cooling: Cooling, normals: Normals) -> Points:
    """Return the probes of the zone as they cool, over the draws."""
    bath = np.clip(normals["bath_bias"], -MOST_SD, MOST_SD)
    late = np.clip(normals["delay"], -MOST_SD, MOST_SD)
    time_s = np.exp(cooling.log_time(np.column_stack([part.at, bath, late])))
    distance = np.clip(equivalent_distance_mm(time_s) * cooling.factor, NEAREST_MM, FARTHEST_MM)
    count = len(POSITIONS)
    centre = np.repeat(time_s[:, count - 1 : len(part.hard) * count : count], count, axis=1)
    centre = np.hstack([centre, time_s[:, len(part.hard) * count :]])
    position = np.array([*POSITIONS * len(part.hard), *[RIM] * part.ends])
    return Points(distance, centre, position, cooling.log_sd / TIME_POWER)
