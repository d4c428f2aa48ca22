"""Measure a batch: parts a second on one core and two, and what a cluster takes on top.

    python -m tests.benchmarks.batch_speed [PARTS]

The parts are the shipped examples, each time with another quantity and a size off by a little,
so that none is worked out twice. Rates count from the start of the program, so few parts pay
for it; `cpu_s` is processor time of all processes, which a busy machine disturbs less.
"""

import json
import sys
import tempfile
import time
from contextlib import ExitStack
from pathlib import Path
from typing import Any

import psutil

from selector.batch.cluster import connected, on_cluster
from selector.batch.listing import listed
from selector.batch.overlay import Overlay
from tests.benchmarks.advice_time import EXAMPLES, RUN, run
from tests.benchmarks.dask_program import scheduler, worker

PARTS = 12
Figures = dict[str, Any]


def write_list(folder: Path, count: int) -> Path:
    """Write a list of so many parts over the examples, and return it."""
    files = sorted(EXAMPLES.glob("*.toml"))
    lines = ["file,quantity,part.section.1.length"]
    lines += [f"{files[k % len(files)]},{1 + k},{30 + 0.5 * k:g}" for k in range(count)]
    path = folder / f"{count}.csv"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return path


def on_cores(parts: Path, count: int, jobs: int) -> Figures:
    """Return what a batch on so many cores takes, its program started anew."""
    out = parts.parent / f"out-{jobs}"
    command = ("batch", str(parts), "--out", str(out), "--jobs", str(jobs))
    (clock, cpu), _ = run(RUN, *command)
    return figures(f"batch, {jobs} core{'s' * (jobs > 1)}", count, clock, cpu)


def on_two_workers(parts: Path, count: int) -> tuple[Figures, float]:
    """Return what a batch on two workers here takes, and what of that is not the workers'."""
    with tempfile.TemporaryDirectory() as place, ExitStack() as stack:
        address = stack.enter_context(scheduler(Path(place) / "scheduler.json"))
        workers = [stack.enter_context(worker(address, name)) for name in ("one", "two")]
        wait_for_two(address)
        # A cluster stands before it is asked: its own start is not counted.
        start, before = time.perf_counter(), spent()
        with connected(address) as client:
            done = list(on_cluster(listed(parts), Overlay(), client))
        clock, after = time.perf_counter() - start, spent()
    assert len(done) == count
    taken = {pid: s - before.get(pid, 0.0) for pid, s in after.items()}
    beside = sum(taken.values()) - sum(taken[process.pid] for process in workers)
    return figures("batch, two workers", count, clock, sum(taken.values())), beside


def wait_for_two(address: str) -> None:
    """Wait until both workers are there."""
    from distributed import Client  # noqa: PLC0415 - slow to load

    with Client(address, set_as_default=False) as client:
        client.wait_for_workers(2)


def spent() -> dict[int, float]:
    """Return the processor time of this process and of those it has started. [s]"""
    this = psutil.Process()
    times = {process.pid: process.cpu_times() for process in (this, *this.children())}
    return {pid: taken.user + taken.system for pid, taken in times.items()}


def figures(what: str, count: int, clock: float, cpu: float) -> Figures:
    """Return a row of the table."""
    return {
        "what": what,
        "parts": count,
        "clock_s": round(clock, 2),
        "cpu_s": round(cpu, 2),
        "parts_per_s": round(count / clock, 3),
        "cpu_s_per_part": round(cpu / count, 2),
    }


def measured(count: int = PARTS) -> list[Figures]:
    """Return the rows of one core, two cores and a cluster of two workers."""
    with tempfile.TemporaryDirectory() as place:
        parts = write_list(Path(place), count)
        rows = [on_cores(parts, count, jobs) for jobs in (1, 2)]
        cluster, on_top = on_two_workers(parts, count)
    more = 100.0 * (cluster["cpu_s"] / rows[1]["cpu_s"] - 1.0)
    note = f"{more:.0f} % more processor time than two cores; {on_top:.1f} s beside the workers"
    return [*rows, {**cluster, "note": note}]


def main() -> int:
    """Measure and print."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else PARTS
    for row in measured(count):
        sys.stdout.write(json.dumps(row) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
