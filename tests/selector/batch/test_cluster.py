"""A batch on a Dask scheduler with two workers on this machine, of which one is killed."""

import sys
from contextlib import ExitStack

import pytest

from selector.batch import cluster
from selector.batch.cluster import connected, on_cluster
from selector.batch.listing import listed
from selector.batch.overlay import Overlay
from selector.errors import RequirementError
from tests.benchmarks.dask_program import PATIENCE_S, scheduler, worker


def test_a_worker_killed_midway_loses_nothing_and_changes_no_digit(shop, answers, tmp_path):
    file = tmp_path / "scheduler.json"
    tasks = listed(shop)
    with ExitStack() as stack:
        address = stack.enter_context(scheduler(file))
        with pytest.raises(RequirementError, match=r"^--scheduler must be a scheduler with"):
            connected(address)
        workers = {name: stack.enter_context(worker(address, name)) for name in ("one", "two")}
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
