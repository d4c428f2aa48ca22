"""Histories of a part at a torch, read off the library for any set-up, place and error."""

from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from selector.bounded import bounded
from selector.hardening.bath_response import BINS_C, Points
from selector.heat.end_quench import FARTHEST_MM, NEAREST_MM, equivalent_distance_mm
from selector.metallurgy.hardening_heat import Heat
from selector.torch.course import HOLDS_S
from selector.torch.heating import Heatings
from selector.torch.quench import QUENCHED_AFTER_S, Cooled

Floats = NDArray[np.float64]

MOST_SD = 2.0
# Own error of the library on the log of the distance, as read against direct simulations. [-]
READ_LOG_SD = 0.03
# A place that the flame hardly reaches is no colder than the workshop. [°C]
ROOM_C = 20.0


@dataclass(frozen=True, slots=True, eq=False)
class Heats:
    """Ways one heat and quench may go; every field has shape (heats,).

    The heat at which the flame was taken away, the hold, the log flame on the part, and how
    many sd the bath and the delay were off.
    """

    stop_c: Floats
    hold_s: Floats
    log_flame: Floats
    bath_sd: Floats
    delay_sd: Floats


@dataclass(frozen=True, slots=True, eq=False)
class History:
    """What each place of a part went through; shape (heats, places).

    Peak, heating rate, hold at the peak that dissolves as much, tempering on the way up as time
    at 600 °C, time from 700 to 500 °C, and the equivalent distance on the end-quench bar.
    """

    peak_c: Floats
    rate_c_per_s: Floats
    hold_s: Floats
    tempered_s: Floats
    time_s: Floats
    distance_mm: Floats

    def only(self, places: slice | list[int]) -> "History":
        """Return the same at some of the places."""
        return History(
            self.peak_c[:, places],
            self.rate_c_per_s[:, places],
            self.hold_s[:, places],
            self.tempered_s[:, places],
            self.time_s[:, places],
            self.distance_mm[:, places],
        )

    def points(self, place: Floats) -> Points:
        """Return the places as they cool, each at its share of the section, 1 at the rim."""
        # What a torch heated is quenched, so that its skin cools before its core.
        log_sd, uneven = np.full(place.size, READ_LOG_SD), np.ones(place.size)
        return Points(self.distance_mm, self.time_s, place, log_sd, uneven)

    def heat(self, meant: Heat) -> Heat:
        """Return a hardening heat as each place had it."""
        return replace(
            meant,
            peak_c=self.peak_c,
            hold_s=self.hold_s,
            rate_c_per_s=self.rate_c_per_s,
        )


def read(heatings: Heatings, cooled: Cooled, heats: Heats) -> History:
    """Return what each place went through in each heat."""
    count = len(heats.stop_c)
    stop = smooth(np.array(heatings.torching.stops_c), heats.stop_c)
    flame = smooth(heatings.log_flame, heats.log_flame)
    weight = flame[:, :, None, None] * stop[:, None, :, None]
    weight = weight * straight(np.array(HOLDS_S), heats.hold_s)[:, None, None, :]
    flat = weight.reshape(count, -1)
    used = np.flatnonzero(flat.any(axis=0))
    table = flat[:, used] @ heatings.table[used]
    over, rate, hold, tempered = np.split(table, 4, axis=1)
    held = straight(np.log(QUENCHED_AFTER_S), np.log(np.maximum(heats.hold_s, 1e-3)))
    from_stop = smooth(np.array(cooled.stops_c), heats.stop_c)
    branch = (from_stop[:, :, None] * held[:, None, :]).reshape(count, -1)
    places = over.shape[1]
    bath, delay = (bounded(sd, -MOST_SD, MOST_SD) for sd in (heats.bath_sd, heats.delay_sd))
    log_time = branch @ cooled.log_time.reshape(-1, places)
    for sd, (one, square) in ((bath, cooled.bath), (delay, cooled.delay)):
        log_time = log_time + sd[:, None] * one + (sd**2)[:, None] * square
    time_s = np.exp(log_time)
    chart = straight(np.array(BINS_C), heats.stop_c) @ cooled.log_chart
    distance = equivalent_distance_mm(time_s) * np.exp(chart)
    gain = np.maximum(branch @ cooled.gain_k.reshape(-1, places), 0.0)
    return History(
        np.maximum(heats.stop_c[:, None] + over + gain, ROOM_C),
        np.exp(rate),
        np.maximum(hold, 0.0),
        np.exp(tempered),
        time_s,
        bounded(distance, NEAREST_MM, FARTHEST_MM),
    )


def field_at(heatings: Heatings, stop_c: float, hold_s: float) -> Floats:
    """Return how hot every place is as the part leaves the flame. [°C]."""
    stop = straight(np.array(heatings.torching.stops_c), np.array([stop_c]))[0]
    hold = straight(np.array(HOLDS_S), np.array([hold_s]))[0]
    return np.asarray(np.einsum("s,h,shn->n", stop, hold, heatings.field_c))


def between(heatings: Heatings, field: Floats, stop_c: float, log_flame: float) -> float:
    """Return a figure over flames and stops at one of each, straight in its logarithm."""
    flame = straight(heatings.log_flame, np.array([log_flame]))[0]
    stop = straight(np.array(heatings.torching.stops_c), np.array([stop_c]))[0]
    return float(np.exp(flame @ np.log(field) @ stop))


def straight(nodes: Floats, at: Floats) -> Floats:
    """Return the weight of each node, straight between them and held beyond the ends."""
    place = bounded(at, nodes[0], nodes[-1])
    k = bounded(np.searchsorted(nodes, place) - 1, 0, len(nodes) - 2)
    part = (place - nodes[k]) / (nodes[k + 1] - nodes[k])
    weight = np.zeros((len(place), len(nodes)))
    rows = np.arange(len(place))
    weight[rows, k], weight[rows, k + 1] = 1.0 - part, part
    return weight


def smooth(nodes: Floats, at: Floats) -> Floats:
    """Return the weight of each node by parabolas through three, blended between them."""
    place, last = bounded(at, nodes[0], nodes[-1]), len(nodes) - 2
    k = bounded(np.searchsorted(nodes, place) - 1, 0, last)
    part = ((place - nodes[k]) / (nodes[k + 1] - nodes[k]))[:, None]
    low, high = bounded(k, 1, last), bounded(k + 1, 1, last)
    return np.asarray(
        (1.0 - part) * _parabola(nodes, place, low) + part * _parabola(nodes, place, high)
    )


def _parabola(nodes: Floats, place: Floats, middle: NDArray[np.intp]) -> Floats:
    """Return the weights of the parabola through a node and its two neighbours."""
    weight, rows = np.zeros((len(place), len(nodes))), np.arange(len(place))
    trio = [middle - 1, middle, middle + 1]
    for n, j in enumerate(trio):
        a, b = (nodes[other] for m, other in enumerate(trio) if m != n)
        weight[rows, j] = (place - a) * (place - b) / ((nodes[j] - a) * (nodes[j] - b))
    return weight
