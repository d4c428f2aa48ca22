"""The hardness map of a bar whose end was heated by a torch, quenched and drawn.

Every place has its own history: it turned to austenite or not, was cooled at its own pace, and
what did not turn was tempered on the way up. So come the hard end, the transition, the soft
ring of stock that was harder than annealed before, and the shank as it was bought.
"""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.hardening import as_quenched
from selector.hardening.bath_response import centre_s
from selector.hardening.heating_course import REFERENCE_C
from selector.hardening.quenched_bar import (
    BLEND_WT_PCT,
    FURNACE_C_PER_S,
    SOAK_S,
    BarCooling,
    by_critical_time,
    by_curve,
    mixed_hrc,
)
from selector.hardening.stock import Stock, rest_hv
from selector.hardness_scale import hv_from_hrc
from selector.heat.boiling import Bath
from selector.heat.drawing import Drawn
from selector.heat.end_quench import end_quench_time_s, equivalent_distance_mm
from selector.job.treatment import NO_TEMPER, Temper
from selector.metallurgy.austenite import Austenite, austenite
from selector.metallurgy.hardenability import critical_cooling_time
from selector.metallurgy.temper_curve import CONSTANT, HOUR_S, KELVIN, parameter_k
from selector.metallurgy.tempering import (
    equivalent_time,
)
from selector.torch.flame_history import Cooled

Floats = NDArray[np.float64]

HOTTEST_DRAW_C = 700.0
# The class of quench that each bath belongs to, as section limits are published.
MEDIUM_CLASS = {
    "water": "water",
    "warm-water": "water",
    "brine": "water",
    "air": "air",
}


@dataclass(frozen=True, slots=True, eq=False)
class FlameMap:
    """Hardness of every place, HRC carried on below 20; shape (across, along), NaN outside."""

    across_mm: Floats
    along_mm: Floats
    hrc: Floats
    quenched_hrc: Floats
    austenite_fraction: Floats
    peak_c: Floats

    def surface(self, what: Floats | None = None) -> Floats:
        """Return hardness (or another field) at the surface, along the bar."""
        field = self.hrc if what is None else what
        rows = self.hrc.shape[0] - 1 - np.argmax(np.isfinite(self.hrc[::-1]), axis=0)
        return np.asarray(field[rows, np.arange(field.shape[1])])

    def core(self) -> Floats:
        """Return hardness at the innermost steel, along the bar."""
        rows = np.argmax(np.isfinite(self.hrc), axis=0)
        return np.asarray(self.hrc[rows, np.arange(self.hrc.shape[1])])

    def mean(self) -> Floats:
        """Return the hardness of the outer fibres along the bar, from 0.6 of the radius."""
        outer = np.nanmax(np.where(np.isfinite(self.hrc), self.across_mm[:, None], 0.0), axis=0)
        kept = self.across_mm[:, None] >= 0.6 * outer
        return np.asarray(np.nanmean(np.where(kept, self.hrc, np.nan), axis=0))

    def column(self, along_mm: float) -> Floats:
        """Return hardness across, at a distance from the end."""
        return np.asarray(self.hrc[:, int(np.argmin(np.abs(self.along_mm - along_mm)))])


@dataclass(frozen=True, slots=True, eq=False)
class Hardened:
    """What the quench left of each cell: share that turned, its hardness, and of the rest."""

    cooled: Cooled
    stock: Stock
    share: Floats
    turned_hrc: Floats
    rest_hv: Floats

    @property
    def hrc(self) -> Floats:
        """Hardness as quenched, of what turned and what did not."""
        return mixed_hrc(
            self.share, hv_from_hrc(self.turned_hrc, outside="extend"), self.rest_hv
        )


def harden(cooled: Cooled, stock: Stock, bath: Bath) -> Hardened:
    """Return what a heat and a quench leave of a bar.

    Parameters
    ----------
    cooled : Cooled
        Heated and quenched.
    stock : Stock
        What bar it is.
    bath : Bath
        What it was quenched in.

    Returns
    -------
    Hardened
        As quenched, cell by cell.
    """
    state = austenite(
        stock.composition_wt_pct,
        cooled.peak_c,
        cooled.hold_s,
        cooled.rate_c_per_s,
        stock.structure,
    )
    turned = _as_quenched(state, cooled, bath, stock)
    return Hardened(cooled, stock, state.fraction, turned, rest_hv(cooled.drawn_s, stock))


def draw(hardened: Hardened, temper: Temper = NO_TEMPER) -> FlameMap:
    """Return the hardness map of a hardened bar, drawn whole at one temperature.

    Parameters
    ----------
    hardened : Hardened
        As quenched.
    temper : Temper, optional
        How it is drawn.

    Returns
    -------
    FlameMap
        Hardness as quenched and as drawn.
    """
    if temper.means == "none":
        return _map(hardened, hardened.hrc)
    time_s = temper.time_s * temper.cycles
    at_k = parameter_k(temper.temperature_c, time_s)
    more_s = equivalent_time([temper.temperature_c] * 2, [0.0, time_s], REFERENCE_C)
    count = hardened.share.size
    return _drawn(hardened, np.full(count, at_k), np.full(count, float(more_s)))


def draw_along(hardened: Hardened, drawn: Drawn) -> FlameMap:
    """Return the hardness map of a hardened bar whose places are drawn each by its own history.

    Parameters
    ----------
    hardened : Hardened
        As quenched.
    drawn : Drawn
        By a flame behind the hard end, by the heat left there, on a plate: histories along the
        same bar; each section is taken as hot as its surface.

    Returns
    -------
    FlameMap
        Hardness as quenched and as drawn; what came beyond 700 °C is taken to have stopped
        there.
    """
    grid = hardened.cooled.grid
    history = np.minimum(drawn.temperature_c, HOTTEST_DRAW_C)
    peak = history.max(axis=1)
    spent = equivalent_time(history, drawn.time_s, peak)
    more_s = equivalent_time(history, drawn.time_s, REFERENCE_C)
    columns = np.searchsorted(drawn.along_mm, grid.along_mm).clip(0, peak.size - 1)
    column = columns[grid.cells() % grid.along_mm.size]
    return _drawn(hardened, parameter_k(peak, spent)[column], more_s[column])


def _drawn(hardened: Hardened, at_k: Floats, more_s: Floats) -> FlameMap:
    """Return the map after each cell's temper, given as parameter and as reference time."""
    turned = drawn_hrc(hardened.stock, hardened.turned_hrc, at_k)
    rest = rest_hv(hardened.cooled.drawn_s + more_s, hardened.stock)
    return _map(
        hardened, mixed_hrc(hardened.share, hv_from_hrc(turned, outside="extend"), rest)
    )


def _map(hardened: Hardened, found_hrc: Floats) -> FlameMap:
    """Return the map of a hardness by cell."""
    grid = hardened.cooled.grid
    return FlameMap(
        grid.across_mm,
        grid.along_mm,
        grid.field(found_hrc),
        grid.field(hardened.hrc),
        grid.field(hardened.share),
        grid.field(hardened.cooled.peak_c),
    )


def _as_quenched(state: Austenite, cooled: Cooled, bath: Bath, stock: Stock) -> Floats:
    """Return the hardness of what was austenite, by the one path all quenches go. [HRC]."""
    hot = state.fraction > 0.0
    whole = replace(
        state,
        fraction=np.ones(int(hot.sum())),
        dissolved_wt_pct={e: np.asarray(v)[hot] for e, v in state.dissolved_wt_pct.items()},
        undissolved_carbide_fraction=state.undissolved_carbide_fraction[hot],
        grain_size_astm=state.grain_size_astm[hot],
    )
    distance = cooled.distance_mm[hot]
    cooling = BarCooling(distance, cooled.time_700_500_s[hot], distance)
    low, high = BLEND_WT_PCT
    rich = float(np.clip((stock.composition_wt_pct["C"] - low) / (high - low), 0.0, 1.0))
    hrc = np.zeros_like(distance)
    if rich < 1.0:
        hrc = hrc + (1.0 - rich) * by_curve(whole, cooling)[0]
    if rich > 0.0:
        hrc = hrc + rich * by_critical_time(whole, _by_limit(cooling, stock, bath), bath)[0]
    field = np.full_like(cooled.distance_mm, stock.softest_hrc)
    field[hot] = np.maximum(hrc, stock.softest_hrc)
    return field


def _by_limit(cooling: BarCooling, stock: Stock, bath: Bath) -> BarCooling:
    """Return the cooling as if the steel hardened just up to its published section limit."""
    ease = limit_factor(stock, bath)
    if ease == 1.0:
        return cooling
    distance = equivalent_distance_mm(end_quench_time_s(cooling.jominy_mm) / ease)
    return BarCooling(distance, cooling.time_700_500_s / ease, distance)


def limit_factor(stock: Stock, bath: Bath) -> float:
    """Return the critical time by the catalogue's section limit over that by composition.

    Parameters
    ----------
    stock : Stock
        The steel.
    bath : Bath
        The bath; the limit of its class counts, else the mean of those there are.

    Returns
    -------
    float
        After a furnace soak at the middle of the hardening range, as limits are published; 1
        where the catalogue has no limit. [-]
    """
    hardened = stock.steel.hardened
    limits = hardened.section_limit_mm if hardened else {}
    if hardened is None or not limits:
        return 1.0
    of_class = {name: mm for name, mm in limits.items() if name == _class_of(bath)}
    begin = as_quenched.start(stock.steel)
    reach = [
        centre_s(mm.value, as_quenched.LIMIT_BATH[name], begin)[0]
        for name, mm in (of_class or limits).items()
    ]
    soaked = austenite(
        stock.composition_wt_pct,
        hardened.temperature_c.middle,
        SOAK_S,
        FURNACE_C_PER_S,
        "spheroidised",
    )
    critical = critical_cooling_time(soaked.dissolved_wt_pct, soaked.grain_size_astm)
    found = as_quenched.LIMIT_TO_HALF * float(np.exp(np.mean(np.log(reach))))
    return found / float(np.ravel(critical)[0])


def _class_of(bath: Bath) -> str:
    """Return the class of quench that section limits are published for."""
    return MEDIUM_CLASS.get(bath.medium, "oil")


def drawn_hrc(stock: Stock, turned_hrc: Floats, at_k: Floats) -> Floats:
    """Return the hardness of what was hardened, after each place's temper.

    Parameters
    ----------
    stock : Stock
        The steel.
    turned_hrc : ndarray
        As quenched. [HRC]
    at_k : ndarray
        Parameter T (18 + log10 t) of the temper of each. [K]

    Returns
    -------
    ndarray
        Hardness, by the path that all tempers go. [HRC]
    """
    fresh = as_quenched.AsQuenched(turned_hrc[None, :], "", "", ())
    composition = {e: np.full((1, 1), v) for e, v in stock.composition_wt_pct.items()}
    # The same temper as an hour at one temperature, where log10 t is nothing.
    hour_c = np.maximum(at_k / CONSTANT - KELVIN, 0.0)[None, :]
    drawn = as_quenched.tempered(stock.steel, composition, fresh, hour_c, HOUR_S, _NO_ERROR)
    return np.asarray(drawn[0])


_NO_ERROR = dict.fromkeys(("tempering", "tempering_family"), np.zeros(1))
