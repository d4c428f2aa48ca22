from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.heat.boiling import Bath
from selector.heat.operator import seen_cell
from selector.job.geometry import POSITIONS
from selector.job.job import resolved
from selector.torch.flame_history import FlameJob, heat
from selector.torch.heating import (
    HOLDS_S,
    LEVEL_LOG_SD,
    LEVELS,
    MIDDLE,
    RING_C,
    STOPS_C,
    Torching,
    heated,
)
from selector.torch.part import flame_of, operator, stretch
from tests.dog import asked

CATALOG = load_catalog()


def task(source="oxy-propane", changes=None):
    job = resolved(asked(changes), CATALOG)
    part, shop = stretch(job.asked, job.hard), job.asked.workshop
    torch = CATALOG.heat_sources[source]
    hand = operator(torch, shop, STOPS_C[-1], 0.0)
    lead = 1 if part.turned_round else 0
    return Torching(part, flame_of(torch, shop), hand, "low-alloy", lead)


@pytest.fixture(scope="module")
def found():
    return heated(task())


def test_readings_have_an_axis_each_for_level_stop_hold_and_probe(found):
    shape = (len(LEVELS), len(STOPS_C), len(HOLDS_S))
    assert found.over_c.shape == (*shape, found.probes.told)
    assert found.ring_log_s.shape == (*shape, len(RING_C))
    assert np.isfinite(found.table).all()
    assert (found.hold_s >= 0.0).all()


def test_a_longer_hold_never_lowers_a_peak_and_draws_further(found):
    assert (np.diff(found.over_c[MIDDLE[0]], axis=1) >= -1e-9).all()
    assert (np.diff(found.drawn_log_s[MIDDLE[0]], axis=1) >= -1e-9).all()


def test_the_zone_comes_to_heat_and_its_shank_does_not(found):
    over = found.over_c[MIDDLE]
    assert (np.abs(over[: found.probes.in_zone - 1]) < 25.0).all()
    assert over[found.probes.in_zone] < -200.0


def test_the_skin_is_ahead_of_the_middle_at_a_short_hold(found):
    assert (np.diff(found.over_c[1, 1, 0, : len(POSITIONS)]) < 0.0).all()


@pytest.mark.parametrize(
    ("level", "stop", "within_c"),
    # Off the middle level and stop at once, what a level changes is taken from the middle stop.
    [(1, 0, 6.0), (1, 2, 6.0), (0, 1, 6.0), (2, 1, 6.0), (2, 0, 12.0), (0, 2, 12.0)],
)
def test_one_heating_read_on_its_way_is_each_heating_of_its_own(found, level, stop, within_c):
    """Against heatings run for one stop, level and hold alone, on the full grid."""
    torching, part = task(), task().part
    flame = torching.flame.stronger(float(np.exp(LEVEL_LOG_SD * LEVELS[level])))
    hand = replace(torching.hand, stop_c=STOPS_C[stop], hold_s=HOLDS_S[MIDDLE[2]])
    end = part.zone_mm[1] + 0.5 * part.thickest_mm
    alone = FlameJob(part.sections, part.zone_mm, (0.0, end), flame, hand, Bath("oil"))
    result, grid = heat(alone)
    cells, middle_mm = grid.cells().tolist(), alone.middle_mm
    peaks = result.temperature_c.max(axis=1) - STOPS_C[stop]
    seen = [cells.index(c) for c in (seen_cell(grid, middle_mm), grid.cell(0.0, middle_mm))]
    read = found.over_c[level, stop, MIDDLE[2]]
    assert read[0] == pytest.approx(peaks[seen[0]], abs=4.0)
    assert read[len(POSITIONS) - 1] == pytest.approx(peaks[seen[1]], abs=within_c)


def test_a_flame_too_small_leaves_the_part_short_of_its_heat():
    size = {f"part.section.{n}.size": 80 for n in (0, 1)}
    found = heated(task("hand-torch", size))
    assert (found.over_c[1, 2] < 0.0).all()
    assert np.isfinite(found.table).all()


def test_a_zone_at_the_far_end_is_turned_round():
    far = {"zone.0.section": [2], "zone.1.section": [1]}
    assert heated(task("oxy-propane", far)).over_c[MIDDLE][0] == pytest.approx(0.0, abs=25.0)
