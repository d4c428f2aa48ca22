"""A batch on a Dask scheduler with two workers on this machine, of which one is killed."""

import json
import os
import subprocess
import sys
import time
from contextlib import ExitStack, contextmanager
from pathlib import Path

import pytest

from selector.batch import cluster
from selector.batch.cluster import connected, on_cluster
from selector.batch.listing import listed
from selector.batch.overlay import Overlay
from selector.errors import RequirementError

ROOT = Path(__file__).parents[3]
PATIENCE_S = 60.0


@contextmanager
def started(program, *arguments):
    """Run one of the programs of Dask, killed at the end."""
    run = [sys.executable, "-m", f"distributed.cli.{program}", *arguments, "--no-dashboard"]
    with subprocess.Popen(  # noqa: S603
        run, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)},
        stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
    ) as process:  # fmt: skip
        try:
            yield process
        finally:
            process.kill()


def address_in(file):
    """Return the address of a scheduler once it has written it."""
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        try:
            return json.loads(file.read_text(encoding="utf-8"))["address"]
        except (OSError, ValueError):
            time.sleep(0.05)
    raise TimeoutError(file)


def test_a_worker_killed_midway_loses_nothing_and_changes_no_digit(shop, answers, tmp_path):
    file = tmp_path / "scheduler.json"
    tasks = listed(shop)
    with ExitStack() as stack:
        loopback = ("--host", "127.0.0.1")
        stack.enter_context(
            started("dask_scheduler", *loopback, "--port", "0", "--scheduler-file", str(file))
        )
        address = address_in(file)
        with pytest.raises(RequirementError, match=r"^--scheduler must be a scheduler with"):
            connected(address)
        workers = {
            name: stack.enter_context(
                started("dask_worker", address, *loopback, "--name", name,
                        "--nthreads", "1", "--no-nanny")
            )
            for name in ("one", "two")
        }  # fmt: skip
        with cluster._client(address) as client:
            client.wait_for_workers(2, timeout=PATIENCE_S)
        with connected(address) as client:
            done = on_cluster(tasks, Overlay(), client)
            first = next(done)
            busy = client.processing()
            names = {w["id"]: a for a, w in client.scheduler_info()["workers"].items()}
            victim = max(workers, key=lambda name: len(busy[names[name]]))
            assert busy[names[victim]]
            workers[victim].kill()
            rest = list(done)
            assert len(client.scheduler_info()["workers"]) == 1
    found = {task.place: content for task, content in (first, *rest)}
    assert found == answers


def test_an_address_where_nobody_is_names_the_option(monkeypatch):
    monkeypatch.setattr(cluster, "_ANSWERS_WITHIN", "0.3s")
    with pytest.raises(RequirementError, match=r"^--scheduler must be .*127\.0\.0\.1:9"):
        connected("tcp://127.0.0.1:9")
    with pytest.raises(RequirementError, match=r"^--scheduler must be .*'no such thing'"):
        connected("no such thing")


def test_without_the_package_the_next_step_is_to_install_it(monkeypatch):
    monkeypatch.setitem(sys.modules, "distributed", None)
    with pytest.raises(RequirementError, match=r"none installed.*temperwright\[cluster\]"):
        connected("tcp://127.0.0.1:9")
