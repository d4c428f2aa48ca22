"""Processes of this machine: one that dies takes one part with it, and no more."""

import os
import sys
from types import ModuleType

import pytest

from selector.batch import local
from selector.batch.answer import failed
from selector.batch.local import on_this_machine
from selector.batch.overlay import Overlay
from selector.batch.record import PartOut
from selector.batch.task import Task


def enter(overlay):
    """Prepare nothing."""
    del overlay


def dying(task, overlay, wanted):
    """Answer nothing of use; a killer ends its process."""
    if task.place.startswith("killer"):
        os._exit(9)
    return failed(task, task.key(wanted, overlay), "no part at all").model_dump_json().encode()


@pytest.fixture
def quick(monkeypatch):
    monkeypatch.setattr(local, "answered", dying)
    monkeypatch.setattr(local, "_enter", enter)
    # A test of the page may have left its script as the program, which a new process would run.
    monkeypatch.setitem(sys.modules, "__main__", ModuleType("__main__"))


@pytest.mark.usefixtures("quick")
def test_a_process_that_dies_ends_no_other_part():
    places = ["killer", "b"]
    tasks = [Task(place, "x.toml", content=place.encode()) for place in places]
    done = {
        t.place: PartOut.model_validate_json(c) for t, c in on_this_machine(tasks, Overlay(), 1)
    }
    assert sorted(done) == sorted(places)
    texts = {place: part.text for place, part in done.items()}
    assert "has died, twice" in texts.pop("killer")
    assert texts == {"b": "no part at all"}
