"""A part as a torch leaves it, over the samples, read off its library of heatings."""

import math
from dataclasses import dataclass, field, fields
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from selector.hardening.bath_response import Points
from selector.hazards.distortion import Bow
from selector.hazards.one_sided import bath_side_k, bow_mm
from selector.heat.boiling import Quench
from selector.heat.grid import Grid
from selector.heat.operator import SEEN_C
from selector.kept import kept_on_disk, kept_within
from selector.sampling import Normals
from selector.torch.course import HOLDS_S
from selector.torch.heating import HEATINGS_MB, Heatings, heatings
from selector.torch.history import Heats, History, between, field_at, read
from selector.torch.overheating import hottest_edge_c
from selector.torch.part import Stretch, Torching
from selector.torch.probe import Probes
from selector.torch.quench import Cooled, cooled, end_dipped

Floats = NDArray[np.float64]

# The flame on the part, tip, gas and distance together: sd of its logarithm (published bands of
# flux span a factor of two to three either side, one torch in one hand less; estimated).
LEVEL_LOG_SD = 0.3
# Time at heat in one hand, log sd (common practice).
HOLD_LOG_SD = 0.5
# Steel hotter than this gives way to a difference from side to side. Estimate. [°C]
HOT_C = 600.0
# Median of the absolute of a standard normal, and log sd of the bow: a factor of two.
HALF, BOW_LOG_SD = 0.674, 0.7
# A place hardens that comes within this of the heat the zone was brought to: hardening heats
# leave so much room above Ac3. [°C]
ROOM_C = 45.0
# A zone is of one colour once its dullest place is within this of what it comes to, or of the
# heat. Common practice: half of what an eye can distinguish. [K]
ONE_COLOUR_K = 15.0


@dataclass(frozen=True, slots=True)
class SetUp:
    """What the man at the torch keeps to: heat, how far past the zone, and how long held."""

    heat_c: float
    hold_s: float
    past_mm: float


@dataclass(frozen=True, slots=True, eq=False)
class Library:
    """A part at a torch with its quenches in one bath: all cells, or some places.

    `under_mm` is how much of it goes under. What is made of it goes when it goes: the same at
    probes, `seen` by their places in the radius, and with its end alone `dipped` so deep.
    """

    heatings: Heatings
    cooled: Cooled
    under_mm: float = math.inf
    seen: dict[tuple[float, ...], "Library"] = field(default_factory=dict, repr=False)
    dips: dict[float, "Library"] = field(default_factory=dict, repr=False)

    def at(self, weight: Floats) -> "Library":
        """Return the same at places that lie between cells; weight is (places, cells)."""
        return Library(self.heatings.at(weight), self.cooled.at(weight), self.under_mm)

    def read(self, heats: Heats) -> History:
        """Return what each place went through in each heat."""
        return read(self.heatings, self.cooled, heats)


@kept_within(HEATINGS_MB)
def library(task: Torching, past_mm: float, quench: Quench) -> Library:
    """Return the heatings of a part and its quenches in one bath."""
    return Library(heatings(task, past_mm), _cooled(task, past_mm, quench))


@kept_on_disk
def _cooled(task: Torching, past_mm: float, quench: Quench) -> Cooled:
    """Return how a heated part cools in a bath."""
    return cooled(heatings(task, past_mm), quench)


def dipped(whole: Library, under_mm: float) -> Library:
    """Return the library of a part whose end alone is dipped, so far under. [mm]."""
    library = whole.dips.get(under_mm)
    if library is None:
        cooled_so = end_dipped(whole.cooled, whole.heatings, under_mm)
        library = whole.dips[under_mm] = Library(whole.heatings, cooled_so, under_mm)
    return library


def looked_at(whole: Library, places: Probes) -> Library:
    """Return a library at the probes of its part."""
    library = whole.seen.get(places.places)
    if library is None:
        library = whole.seen[places.places] = whole.at(places.weight)
    return library


@dataclass(frozen=True, eq=False)
class Torched:
    """A part as a torch leaves it, over the samples; sections count as in the part.

    `columns` puts the probes of the zone in the order sections × places, up to the last hard
    section, and the zone's ends behind. `lead` is the place of the leading section among the
    hard ones, `long_mm` the length of the whole part, `holes` are place and width of each
    cross-hole along the stretch. What is looked at cell by cell is the first of the samples.
    """

    whole: Library
    set_up: SetUp
    probes: Probes
    heats: Heats
    history: History
    hard: tuple[int, ...]
    soft: tuple[int, ...]
    columns: tuple[int, ...]
    lead: int
    long_mm: float
    holes: tuple[tuple[float, float], ...]

    @property
    def part(self) -> Stretch:
        """The part as the solver has it."""
        return self.whole.heatings.torching.part

    @property
    def grid(self) -> Grid:
        """Its cells."""
        return self.whole.heatings.grid

    @cached_property
    def field(self) -> History:
        """What every cell went through in the first of the heats."""
        first = Heats(*(np.asarray(getattr(self.heats, f.name))[:1] for f in fields(Heats)))
        return self.whole.read(first)

    @property
    def hold_s(self) -> float:
        """How long the first of the heats is held."""
        return float(self.heats.hold_s[0])

    @cached_property
    def even_s(self) -> float:
        """How much of the hold goes by until the zone is of one colour. [s]."""
        start_mm, end_mm = self.part.zone_mm
        along_mm, active = self.grid.along_mm, self.grid.active
        inside = np.flatnonzero((along_mm >= start_mm) & (along_mm <= end_mm))
        outermost = len(active) - 1 - np.argmax(active[::-1], axis=0)[inside]
        holds = [hold for hold in HOLDS_S if hold < self.hold_s] + [self.hold_s]
        stop_c = float(self.heats.stop_c[0])
        dullest_c = np.array(
            [
                self.grid.field(field_at(self.whole.heatings, stop_c, hold))[
                    outermost, inside
                ].min()
                for hold in holds
            ]
        )
        wanted_c = min(float(dullest_c.max()), stop_c) - ONE_COLOUR_K
        return float(holds[int(np.argmax(dullest_c >= wanted_c))])

    @property
    def flame_share(self) -> float:
        """Share of the flame that is on the part in the first of the heats. [-]."""
        return float(np.exp(self.heats.log_flame[0]))

    @cached_property
    def to_heat_s(self) -> float:
        """How long the first of the heats takes from cold. [s]."""
        lib = self.whole.heatings
        return between(lib, lib.to_stop_s, *self._stopped)

    @cached_property
    def uneven_k(self) -> float:
        """Difference from side to side as the flame is taken away. [K]."""
        lib = self.whole.heatings
        return between(lib, np.maximum(lib.uneven_k, 1e-3), *self._stopped)

    @property
    def is_uneven(self) -> bool:
        """Whether the operator sees that it is hotter on one side."""
        return self.uneven_k > SEEN_C

    @cached_property
    def hottest_c(self) -> float:
        """How hot the hottest place gets by the time the zone is at its heat. [°C]."""
        return hottest_edge_c(self.whole.heatings, *self._stopped, self.holes)

    @property
    def _stopped(self) -> tuple[float, float]:
        """Heat and log flame of the first of the heats."""
        return float(self.heats.stop_c[0]), float(self.heats.log_flame[0])

    @cached_property
    def heated_share(self) -> float:
        """Share of the radius that comes to hardening heat, 1 where all of it does. [-]."""
        count = len(self.probes.places)
        here = slice(self.lead * count, (self.lead + 1) * count)
        over = self.history.peak_c[0, here] - self.set_up.heat_c + ROOM_C
        if over.min() >= 0.0:
            return 1.0
        return float(1.0 - np.interp(0.0, over[::-1], self.probes.places[::-1]))

    @cached_property
    def bow(self) -> Bow:
        """The bow that an uneven flame and an uneven bath leave, by the part's history."""
        peak, time_s, thick_mm = (
            self.field.peak_c[0],
            self.field.time_s[0],
            self.part.thickest_mm,
        )
        hot = peak > HOT_C
        along = self.grid.along_mm[self.grid.cells() % self.grid.along_mm.size][hot]
        if along.size == 0:
            return Bow(np.zeros(()), BOW_LOG_SD, "estimated")
        mean_s = float(np.exp(np.mean(np.log(time_s[hot]))))
        side_k = np.hypot(bath_side_k(mean_s, thick_mm, 1.0), self.uneven_k)
        bent = bow_mm(float(side_k), thick_mm, float(np.ptp(along)), self.long_mm)
        return Bow(np.asarray(HALF * bent), BOW_LOG_SD, "estimated")

    @property
    def zone(self) -> History:
        """The probes of the zone and its ends."""
        return self.history.only(slice(0, self.probes.in_zone))

    @property
    def rim_c(self) -> Floats:
        """How hot the coldest hard section gets at its rim, shape (samples,). [°C]."""
        inside = self.history.peak_c[:, : len(self.hard) * len(self.probes.places)]
        return np.asarray(inside[:, :: len(self.probes.places)].min(axis=1))

    @property
    def points(self) -> Points:
        """The probes of the zone as they cool."""
        return self.zone.points(self.probes.place)

    @cached_property
    def _surface_peak_c(self) -> Floats:
        """How hot the surface gets in the first of the heats, along the part. [°C]."""
        peak_c = self.grid.field(self.field.peak_c[0])
        outermost = len(peak_c) - 1 - np.argmax(self.grid.active[::-1], axis=0)
        return np.asarray(peak_c[outermost, np.arange(peak_c.shape[1])])

    def hard_ends_mm(self, turned_c: float) -> tuple[float, ...]:
        """Return where its surface stops being hotter than this, or quenched. [mm]."""
        along_mm, hot = self.grid.along_mm, self._surface_peak_c > turned_c
        ends = np.flatnonzero(hot[1:] != hot[:-1])
        ends_mm = 0.5 * (along_mm[ends] + along_mm[ends + 1])
        ends_mm = np.minimum(ends_mm, self.whole.under_mm)
        return tuple((self.long_mm - ends_mm if self.part.turned_round else ends_mm).tolist())

    def ring_tempered_s(self, ring_c: float) -> Floats:
        """Return the tempering beside the zone where the peak was just this hot. [s]."""
        ring = self.history.only(slice(self.probes.before_ring, None))
        if ring.peak_c.shape[1] == 0:
            return np.full(len(ring.peak_c), 1e-9)
        # From the zone outwards the peak falls: the first place below lies past the ring.
        below = ring.peak_c < ring_c
        at = np.where(below.any(axis=1), np.argmax(below, axis=1), below.shape[1] - 1)
        rows, inner = np.arange(len(at)), np.maximum(at - 1, 0)
        high, low = ring.peak_c[rows, inner], ring.peak_c[rows, at]
        part = np.clip((high - ring_c) / np.maximum(high - low, 1e-6), 0.0, 1.0)
        logs = np.log(np.maximum(ring.tempered_s, 1e-9))
        return np.asarray(
            np.exp(logs[rows, inner] + part * (logs[rows, at] - logs[rows, inner]))
        )


def heats_of(library: Library, set_up: SetUp, stop_c: Floats, normals: Normals) -> Heats:
    """Return the heats of one set-up over the samples."""
    strength = LEVEL_LOG_SD * normals["torch_bias"]
    return Heats(
        stop_c,
        set_up.hold_s * np.exp(HOLD_LOG_SD * normals["eye_scatter"]),
        library.heatings.effective_log(strength, stop_c),
        normals["bath_bias"],
        normals["delay"],
    )
