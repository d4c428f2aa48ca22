"""Measure the conduction solver: accuracy per millisecond, threads, the machine's own floor.

    python tests/benchmarks/conduction_speed.py

*History*: a bar end under a torch for 120 s, then 20 s of water. *Long*: torch 300 s, water 60
s, an oven for the rest of twenty minutes. Error: largest departure from the same grid at a
hundredth of the step error, at six places, in K. *Floor*: the same cell updates if each pass
over the cells ran alone at the speed this machine gives it. *Others*: the same cells, walls and
properties by a general-purpose library, its steps cut until it is as accurate, all of its time
counted: a stiff solver of scipy; implicit steps of scipy's sparse direct solver, twice, with
step and error control like ours and as plain Euler steps growing after each change.
"""

import os
import statistics
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from types import SimpleNamespace

import numpy as np
from numba import njit
from scipy.integrate import solve_ivp
from scipy.sparse import coo_matrix, csc_matrix, diags
from scipy.sparse.linalg import splu

from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import SURFACE_C, convection, mixed, steady
from selector.heat.grid import Section, bar_grid
from selector.heat.steel_property import cooling_steel, heating_steel

ROOT = Path(__file__).parents[2]
WATER = convection(np.interp(SURFACE_C, [300.0, 600.0], [12e3, 3.5e3]), 20.0)
AIR = convection(10.0, 20.0, 0.8)
FIRST = """
import time; start, busy = time.perf_counter(), time.process_time()
from selector.heat.end_quench import simulate
simulate(); print(time.perf_counter() - start, time.process_time() - busy)
"""


def best(function, repeats=7):
    """Return the best processor time of a call in ms."""
    times = []
    for _ in range(repeats):
        start = time.process_time()
        function()
        times.append(1e3 * (time.process_time() - start))
    return min(times)


class Process:
    """A bar end heated and quenched."""

    def __init__(self, diameter, phases, length=100.0):
        self.grid = bar_grid([Section(diameter, length)])
        self.watch = tuple(
            self.grid.cell(r, z) for r in (0.0, diameter) for z in (0.0, 15.0, 45.0)
        )
        along = self.grid.wall_along_mm()
        share = np.zeros((self.grid.wall_face.size, 2, 2))
        share[..., 0] = 1.0
        share[..., 1] = np.exp(-(((along - 12.0) / 12.0) ** 2))[:, None]
        flame = np.full(SURFACE_C.size, -3.2e4 * diameter**0.7)
        torch = mixed([AIR, flame], share, [0.0, 1.0])
        water = steady(self.grid, {"end": WATER, "side": WATER})
        oven = convection(15.0, 200.0, 0.8)
        kinds = {
            "torch": (heating_steel(), torch),
            "water": (cooling_steel(), water),
            "oven": (heating_steel(), steady(self.grid, {"end": oven, "side": oven})),
        }
        self.phases = [(*kinds[name], seconds) for name, seconds in phases]

    def run(self, tolerance=2.0):
        """Return the histories of the phases."""
        field, out = 20.0, []
        for steel, boundary, seconds in self.phases:
            plan = Plan(seconds, watch=self.watch, tolerance_k=tolerance)
            out.append(conduct(self.grid, steel, boundary, field, plan))
            field = out[-1].end_c
        return out

    def error_k(self, histories, reference):
        """Return the largest departure and the temperature span."""
        worst, span = 0.0, 0.0
        for run, fine in zip(histories, reference, strict=True):
            true = [np.interp(run.time_s, fine.time_s, row) for row in fine.temperature_c]
            worst = max(worst, float(np.abs(run.temperature_c - true).max()))
            span = max(span, float(np.ptp(fine.temperature_c)))
        return worst, span


SHORT = (("torch", 120.0), ("water", 20.0))
LONG = (("torch", 300.0), ("water", 60.0), ("oven", 840.0))


def by_size():
    """Print time and error for bars of all sizes."""
    print("bar mm    cells  short ms  error K  of span %   long ms  error K  of span %")  # noqa: T201
    for diameter in (4.0, 8.0, 16.0, 32.0, 60.0):
        row = f"{diameter:6g} "
        for n, phases in enumerate((SHORT, LONG)):
            process = Process(diameter, phases)
            usual, fine = process.run(), process.run(0.02)
            error, span = process.error_k(usual, fine)
            cells = f"{process.grid.active.size:8d}" if n == 0 else ""
            row += f"{cells} {best(process.run):9.2f} {error:8.2f} {100 * error / span:10.3f}"
        print(row)  # noqa: T201


def ladder(process):
    """Print accuracy per millisecond and return steps, time and error of the usual step."""
    reference = process.run(0.005)
    print("\nstep error K   steps    ms   error K")  # noqa: T201
    usual = (0, 0.0, 0.0)
    for tolerance in (10.0, 5.0, 2.0, 1.0, 0.3, 0.1):
        run = process.run(tolerance)
        error, _ = process.error_k(run, reference)
        taken = best(lambda t=tolerance: process.run(t))
        steps = sum(h.time_s.size for h in run)
        print(f"{tolerance:12g} {steps:7d} {taken:6.2f} {error:8.2f}")  # noqa: T201
        if tolerance == 2.0:
            usual = (steps, taken, error)
    return usual


def threads(process):
    """Print the time of 200 histories on one thread and on two."""
    serial = time.perf_counter()
    for _ in range(50):
        process.run()
    serial = 4 * (time.perf_counter() - serial)
    start = time.perf_counter()
    with ThreadPoolExecutor(2) as pool:
        list(pool.map(lambda _: process.run(), range(200)))
    both = time.perf_counter() - start
    print(f"\n200 histories: one thread {serial:.2f} s, two {both:.2f} s")  # noqa: T201


@njit
def _look(x, table, out):
    for i in range(x.shape[0]):
        for j in range(x.shape[1]):
            k = np.uint32(x[i, j])
            out[i, j] = table[k] + (x[i, j] - k) * (table[k + np.uint32(1)] - table[k])


@njit
def _stencil(x, g, out):
    for i in range(1, x.shape[0] - 1):
        for j in range(1, x.shape[1] - 1):
            out[i, j] = g[i, j] * (
                x[i + 1, j] + x[i - 1, j] + x[i, j + 1] + x[i, j - 1] - x[i, j]
            )


@njit(error_model="numpy")
def _divide(x, g, out):
    for i in range(x.shape[0]):
        for j in range(x.shape[1]):
            out[i, j] = g[i, j] / x[i, j]


@njit
def _triad(x, g, out):
    for i in range(x.shape[0]):
        for j in range(x.shape[1]):
            out[i, j] = x[i, j] - g[i, j] * out[i, j]


def floor_ms(process, steps):
    """Return the time of the step's passes, each measured alone on this grid."""
    shape = process.grid.active.shape
    rng = np.random.default_rng(1)
    x, g, out = (rng.uniform(1.0, 4000.0, shape) for _ in range(3))
    g /= 1e6
    table = np.linspace(0.0, 1.0, 4096)
    taken = {}
    for name, call in {
        "look": lambda: _look(x, table, out),
        "stencil": lambda: _stencil(x, g, out),
        "divide": lambda: _divide(x, g, out),
        "triad": lambda: _triad(x, g, out),
    }.items():
        call()
        taken[name] = best(lambda c=call: [c() for _ in range(400)], 5) / 400
    # Two stages: a look-up of theta and slope, a stencil, a division by volume each; two
    # eliminations of a division and two products; four sweeps of two products; three sums.
    passes = {"look": 5, "stencil": 2, "divide": 4, "triad": 2 * 2 + 4 * 2 + 3}
    return steps * sum(n * taken[name] for name, n in passes.items())


def links(grid):
    """Return the conductances between cells as a sparse matrix."""
    index = np.arange(grid.active.size).reshape(grid.active.shape)
    i = np.concatenate([index[:-1].ravel(), index[:, :-1].ravel()])
    j = np.concatenate([index[1:].ravel(), index[:, 1:].ravel()])
    g = np.concatenate([grid.mesh.across.ravel(), grid.mesh.along.ravel()])
    both = coo_matrix((np.tile(g, 2), (np.r_[i, j], np.r_[j, i])), shape=(index.size,) * 2)
    return (both - diags(np.asarray(both.sum(axis=1)).ravel())).tocsr()


class Cells:
    """The process as ordinary differential equations of enthalpy, for any general solver."""

    def __init__(self, grid):
        self.link = links(grid).tocsc()
        self.volume = grid.mesh.volume.ravel()
        self.wall = grid.mesh.wall_row * grid.active.shape[1] + grid.mesh.wall_column
        self.gap, self.area = grid.mesh.wall_gap, grid.mesh.wall_area
        self.column = np.repeat(np.arange(self.volume.size), np.diff(self.link.indptr))
        self.on_diagonal = np.flatnonzero(self.link.indices == self.column)

    def enter(self, steel, boundary):
        """Begin a phase."""
        table = steel.table()
        self.even = np.arange(table.theta.size) / table.per_enthalpy
        self.theta, self.temperature = table.theta, table.temperature
        self.slope = np.append(np.diff(table.theta), 0.0) * table.per_enthalpy
        self.outer, self.conductivity = table.theta_by_c, steel.conductivity
        self.at_c = steel.temperature_c
        share = boundary.share[:, -1]
        self.flux = [
            (share[:, c], curve, np.gradient(curve, SURFACE_C))
            for c, curve in enumerate(boundary.curve)
        ]

    def rate(self, h):
        """Return the change of enthalpy in time; keep the slope of heat lost by theta."""
        theta, at = (np.interp(h, self.even, y) for y in (self.theta, self.temperature))
        at = at[self.wall]
        for _ in range(4):
            outer, k = (np.interp(at, self.at_c, y) for y in (self.outer, self.conductivity))
            q = sum(part * np.interp(at, SURFACE_C, curve) for part, curve, _ in self.flux)
            dq = sum(part * np.interp(at, SURFACE_C, slope) for part, _, slope in self.flux)
            excess = (theta[self.wall] - outer) / self.gap - q
            at = at + excess / np.maximum(k / self.gap + dq, 0.3 * k / self.gap)
        self.bond = self.area * np.maximum(dq, 0.0) / (k + self.gap * np.maximum(dq, 0.0))
        lost = np.bincount(self.wall, self.area * q, h.size)
        return (self.link @ theta - lost) / self.volume

    def factor(self, h, step):
        """Return a solver of 1 - step J, J as of the last call of `rate`."""
        slope = self.slope[(h / self.even[1]).astype(int)]
        entry = self.link.data.copy()
        entry[self.on_diagonal] -= np.bincount(self.wall, self.bond, h.size)
        entry *= -step * slope[self.column] / self.volume[self.link.indices]
        entry[self.on_diagonal] += 1.0
        matrix = csc_matrix((entry, self.link.indices, self.link.indptr), self.link.shape)
        return splu(matrix, permc_spec="MMD_AT_PLUS_A", options={"SymmetricMode": True}).solve

    def in_k(self, h):
        """Return temperatures."""
        return np.interp(h, self.even, self.temperature)


def phases(process, solve):
    """Return the histories of a process by `solve(cells, enthalpy, seconds)`."""
    cells, watch = Cells(process.grid), list(process.watch)
    t, out = np.full(cells.volume.size, 20.0), []
    for steel, boundary, seconds in process.phases:
        cells.enter(steel, boundary)
        times, h = solve(cells, steel.enthalpy_j_per_m3(t), seconds)
        t = cells.in_k(h[-1])
        watched = cells.in_k(h[:, watch].T)
        out.append(SimpleNamespace(time_s=times, temperature_c=watched))
    return out


def stiff_solver(tolerance):
    """Return scipy's BDF of variable order."""

    def solve(cells, h, seconds):
        run = solve_ivp(
            lambda _, h: cells.rate(h), (0.0, seconds), h, method="BDF",
            jac_sparsity=cells.link, rtol=tolerance, atol=tolerance * 4e9,
        )  # fmt: skip
        return run.t, run.y.T

    return solve


def controlled_steps(tolerance_k):
    """Return implicit steps of second order, each of one sparse factorisation, two solves."""
    gamma = 1.0 - 1.0 / np.sqrt(2.0)

    def solve(cells, h, seconds):
        times, fields, step = [0.0], [h], 1e-4
        while times[-1] < seconds:
            step = min(step, seconds - times[-1], seconds / 20.0)
            rate = cells.rate(h)
            solved = cells.factor(h, gamma * step)
            first = solved(step * rate)
            second = solved(step * cells.rate(h + first) - 2.0 * first)
            new = h + 1.5 * first + 0.5 * second
            error = np.abs(cells.in_k(new) - cells.in_k(h + first)).max() / tolerance_k
            if error <= 1.0:
                times.append(seconds if step >= seconds - times[-1] else times[-1] + step)
                fields.append(new)
                h = new
            step *= min(max(0.85 / np.sqrt(max(error, 1e-6)), 0.15), 2.5)
        return np.array(times), np.array(fields)

    return solve


def euler_steps(count):
    """Return backward Euler steps, growing with the square root of time, of one Newton each."""

    def solve(cells, h, seconds):
        times, fields = seconds * np.linspace(0.0, 1.0, count + 1) ** 2, [h]
        for step in np.diff(times):
            rate = cells.rate(h)
            h = h + cells.factor(h, step)(step * rate)
            fields.append(h)
        return times, np.array(fields)

    return solve


OTHERS = (
    ("stiff solver, relative tolerance", stiff_solver, (3e-3, 1e-3, 3e-4, 1e-4, 3e-5)),
    ("sparse direct, step error K", controlled_steps, (4.0, 3.0, 2.0, 1.5, 1.0)),
    ("sparse direct, Euler steps", euler_steps, (100, 200, 400)),
)


def others(process, taken, error):
    """Print and return the ratio to general solvers at equal accuracy, to a twentieth."""
    reference, ratios = process.run(0.005), {}
    for name, method, settings in OTHERS:
        print(f"\n{name:34s}    ms   error K")  # noqa: T201
        for setting in settings:
            start = time.process_time()
            run = phases(process, method(setting))
            spent = 1e3 * (time.process_time() - start)
            found, _ = process.error_k(run, reference)
            print(f"{setting:30g} {spent:10.0f} {found:9.2f}")  # noqa: T201
            if found <= 1.05 * error:
                break
        else:  # the error of Euler halves as its steps double
            print("carried on to our error, as its error halves with twice the steps:")  # noqa: T201
            spent, found = spent * found / error, error
        ratios[name] = spent / taken
        print(f"ratio at {found:.2f} K (ours {error:.2f} K): {spent / taken:.0f}")  # noqa: T201
    return ratios


def first_call():
    """Print the first call ever and the first of a new process."""
    with tempfile.TemporaryDirectory() as folder:
        environment = {**os.environ, "NUMBA_CACHE_DIR": folder, "PYTHONPATH": str(ROOT)}
        for name in ("first ever", "new process"):
            run = [sys.executable, "-c", FIRST]
            spent = subprocess.run(run, env=environment, capture_output=True, check=True)  # noqa: S603
            clock, busy = map(float, spent.stdout.split())
            print(f"{name}: {clock:.2f} s, processor {busy:.2f} s")  # noqa: T201


def main():
    """Run all."""
    by_size()
    process = Process(32.0, SHORT, 160.0)
    process.run()
    steps, taken, error = ladder(process)
    cells = process.grid.active.size
    lowest = floor_ms(process, steps)
    each, least = (1e6 * ms / (steps * cells) for ms in (taken, lowest))
    print(f"\n{cells} cells, a cell and step: {each:.1f} ns, floor {least:.1f} ns,")  # noqa: T201
    print(f"share of the floor {100 * lowest / taken:.0f} %")  # noqa: T201
    threads(process)
    others(process, taken, error)
    first_call()
    print(f"median of 5: {statistics.median(best(process.run, 1) for _ in range(5)):.2f} ms")  # noqa: T201


if __name__ == "__main__":
    main()
