"""What the compiled loop promises whoever calls it: records, clock, order."""

import numpy as np
import pytest

from selector.heat.boiling import Bath
from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import Section, bar_grid, round_grid
from selector.heat.immersion import Immersion, quench_boundary
from selector.heat.section_slice import plate_grid, slice_grid
from selector.heat.steel_property import cooling_steel


def quenched(grid, **plan):
    faces = set(map(str, grid.wall_face)) - {"held"}
    boundary = steady(grid, {face: convection(4000.0, 20.0) for face in faces})
    return conduct(grid, cooling_steel(), boundary, 850.0, Plan(**plan))


def test_every_kind_of_part_and_dip_shares_one_compilation():
    """Another layout of an array in memory would cost seconds once more."""
    from selector.heat.kernel import advance  # noqa: PLC0415

    steel = cooling_steel()
    for grid in (
        round_grid(8.0),
        round_grid(3.0, fineness=0.0),
        bar_grid([Section(8.0, 20.0)]),
    ):
        dip = quench_boundary(grid, Bath("oil"), Immersion((0.5,), (10.0,)))
        ended = conduct(grid, steel, dip, 850.0, Plan(1.0)).end_c
        conduct(grid, steel, dip, ended, Plan(1, stop=Stop(0, 20, "falling")))
    for grid in (slice_grid("hexagon", 12.0), slice_grid("square", 12.0), plate_grid(5.0)):
        boundary = steady(grid, {"left": convection(50.0, 20.0)})
        conduct(grid, steel, boundary, 850, Plan(1, watch=(0,)))
    assert len(advance.signatures) == 1


def test_clock_ends_exactly_and_runs_forward():
    history = quenched(round_grid(20.0), seconds_s=7.3, start_s=100.0)
    assert history.time_s[[0, -1]] == pytest.approx((100.0, 107.3), abs=0.0)
    assert np.all(np.diff(history.time_s) > 0.0)


def test_full_record_is_carried_on():
    """Some 1300 steps fill the record of 512 twice."""
    fine = quenched(round_grid(20.0, fineness=0.5), seconds_s=20.0, tolerance_k=1e-4)
    assert fine.time_s.size > 1100
    assert fine.temperature_c.shape[1] == fine.time_s.size
    assert np.all(np.diff(fine.time_s) > 0.0)


def test_step_error_falls_with_the_square_of_the_step():
    """The local error is held, and steps go with its root: a hundredth makes ten times more."""
    grid = bar_grid([Section(16.0, 30.0)], fineness=0.5)
    watch = (grid.cell(8.0, 0.0), grid.cell(0.0, 15.0))
    exact = quenched(grid, seconds_s=8.0, watch=watch, tolerance_k=1e-4)
    steps, errors = [], []
    for tolerance in (1.0, 0.1, 0.01):
        run = quenched(grid, seconds_s=8.0, watch=watch, tolerance_k=tolerance)
        true = [np.interp(run.time_s, exact.time_s, row) for row in exact.temperature_c]
        steps.append(run.time_s.size)
        errors.append(np.abs(run.temperature_c - true)[:, -steps[-1] // 2 :].max())
    order = np.log(errors[0] / errors[2]) / np.log(steps[2] / steps[0])
    assert order > 1.6


def test_whether_the_loop_is_compiled_is_known(monkeypatch):
    from selector.heat import kernel  # noqa: PLC0415

    quenched(round_grid(8.0), seconds_s=1.0)
    assert kernel.is_compiled()
    monkeypatch.setattr(kernel, "KEPT", None)  # no folder to keep it in
    assert not kernel.is_compiled()
    monkeypatch.setattr(kernel, "advance", lambda: None)  # compiling switched off
    assert kernel.is_compiled()
