"""Reading the library: weights, and quenches run one by one against those between nodes."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.heat.boiling import Bath, Quench
from selector.torch.course import least_past_mm
from selector.torch.heating import heatings
from selector.torch.history import ROOM_C, Heats, read, smooth, straight
from selector.torch.probe import probes
from selector.torch.quench import cooled
from selector.torch.response import Library
from tests.tasks import size, task

NODES = np.array([740.0, 785.0, 830.0, 875.0, 920.0])
POSITIONS = (0.98, 0.85, 0.65, 0.4, 0.0)
OIL = Quench(Bath("oil"), 0.5, 0.2, 1.5)


@pytest.fixture(scope="module")
def library():
    part = task(changes=size(20))
    found = heatings(part, least_past_mm(part))
    return Library(found, cooled(found, OIL))


def heats(stop_c=830.0, hold_s=20.0, log_flame=0.0, bath=0.0, delay=0.0):
    return Heats(*(np.atleast_1d(np.asarray(v, float)) for v in
                   (stop_c, hold_s, log_flame, bath, delay)))  # fmt: skip


@given(st.floats(700.0, 960.0))
def test_weights_add_up_and_reproduce_a_line(at):
    for rule in (straight, smooth):
        weight = rule(NODES, np.array([at]))
        assert weight.sum() == pytest.approx(1.0)
        assert float(weight[0] @ NODES) == pytest.approx(np.clip(at, 740.0, 920.0))


@given(st.floats(740.0, 920.0))
def test_a_parabola_is_read_exactly(at):
    bent = (NODES - 800.0) ** 2
    assert float(smooth(NODES, np.array([at]))[0] @ bent) == pytest.approx((at - 800.0) ** 2)


def test_reading_at_a_node_is_the_node(library):
    found = read(
        library.heatings, library.cooled, heats(log_flame=library.heatings.log_flame[1])
    )
    direct = library.cooled.log_time[1, 1]
    assert np.allclose(np.log(found.time_s[0]), direct)


def test_the_distance_is_put_right_by_the_bar_charts(library):
    charted, bare = (
        read(
            library.heatings,
            replace(library.cooled, log_chart=factor * library.cooled.log_chart),
            heats(),
        )
        for factor in (1.0, 0.0)
    )
    assert np.allclose(charted.time_s, bare.time_s)
    assert np.abs(np.log(charted.distance_mm / bare.distance_mm)).max() > 0.1


def test_a_core_still_warms_from_its_rim_on_the_way_to_the_bath(library):
    """The shorter the hold, the more: after 80 s the zone is even."""
    weight = probes(library.heatings.torching.part, POSITIONS).weight
    rim, core = weight[0], weight[len(POSITIONS) - 1]
    gain_k = library.cooled.gain_k[1]
    assert gain_k[0] @ core > 10.0
    assert gain_k[0] @ core > 2.0 * (gain_k[1] @ core) > 4.0 * (gain_k[2] @ core)
    assert gain_k[0] @ rim < 2.0


def test_a_quench_between_nodes_is_near_one_run_for_itself(library):
    lib = library.heatings
    between = read(lib, library.cooled, heats(850.0, 30.0, lib.log_flame[1]))
    moved = replace(lib.torching, part=lib.torching.part)
    other = read(
        lib, cooled(heatings(moved, lib.past_mm), OIL), heats(850.0, 30.0, lib.log_flame[1])
    )
    assert np.allclose(between.time_s, other.time_s)
    nearer = read(lib, library.cooled, heats(830.0, 20.0, lib.log_flame[1]))
    rim = probes(lib.torching.part, POSITIONS).weight[0]
    hot = rim > 0
    assert abs(np.log(between.time_s[0, hot] / nearer.time_s[0, hot])).max() < 0.25


def test_a_keener_bath_cools_the_rim_quicker_and_a_late_one_no_quicker(library):
    weight = probes(library.heatings.torching.part, POSITIONS).weight
    seen = library.at(weight)
    still = seen.read(heats(log_flame=library.heatings.log_flame[1]))
    keen = seen.read(heats(log_flame=library.heatings.log_flame[1], bath=1.0))
    assert keen.time_s[0, 0] < still.time_s[0, 0]
    assert keen.distance_mm[0, 0] <= still.distance_mm[0, 0]


def test_places_between_cells_are_read_like_the_cells_about_them(library):
    weight = probes(library.heatings.torching.part, POSITIONS).weight
    at = heats(log_flame=library.heatings.log_flame[1])
    probed, cells = library.at(weight).read(at), library.read(at)
    assert np.allclose(probed.peak_c, cells.peak_c @ weight.T)


@pytest.mark.parametrize("stop_c", [-300.0, 200.0])
def test_no_place_gets_colder_than_the_workshop_however_wild_the_stop(library, stop_c):
    peak = read(library.heatings, library.cooled, heats(stop_c)).peak_c
    assert peak.min() == ROOM_C
    usual = read(library.heatings, library.cooled, heats()).peak_c
    assert usual.min() > ROOM_C
