"""What is simulated is kept for the next run: the same numbers, and never a reason to fail."""

import os
from dataclasses import dataclass

import numpy as np
import pytest

from catalog import kept as files
from selector import kept as room
from selector.kept import kept_on_disk


@dataclass(frozen=True)
class Asked:
    """What a simulation is asked."""

    size_mm: float
    name: str = "bar"


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """Return where it is kept, in a folder of the test's own, with nothing written so far."""
    monkeypatch.setattr(room, "cache_folder", lambda: tmp_path)
    monkeypatch.setattr(room, "_written", [0])
    room._made_room.cache_clear()
    yield tmp_path / "heat"
    room._made_room.cache_clear()


@pytest.fixture
def simulated():
    """Return a function that is kept, and what it was asked so far."""
    asked = []

    @kept_on_disk
    def simulate(what: Asked, times: int = 1) -> np.ndarray:
        asked.append((what, times))
        return np.array([what.size_mm / 3.0]) * times

    return simulate, asked


def test_the_same_is_read_back_to_the_last_digit(folder, simulated):
    simulate, asked = simulated
    first = simulate(Asked(10.0), 2)
    assert len(list(folder.iterdir())) == 1
    assert simulate(Asked(10.0), 2) == first
    assert len(asked) == 1


@pytest.mark.usefixtures("folder")
@pytest.mark.parametrize("other", [(Asked(10.0), 3), (Asked(10.1), 2), (Asked(10.0, "b"), 2)])
def test_whatever_differs_is_worked_out(simulated, other):
    simulate, asked = simulated
    simulate(Asked(10.0), 2)
    simulate(*other)
    assert len(asked) == 2


@pytest.mark.usefixtures("folder")
def test_another_source_is_another_answer(simulated, monkeypatch):
    simulate, asked = simulated
    simulate(Asked(10.0))
    monkeypatch.setattr(room, "_stamp", lambda: b"another text")
    simulate(Asked(10.0))
    assert len(asked) == 2


def test_each_source_it_may_come_from_changes_the_stamp(tmp_path, monkeypatch):
    here = tmp_path / "selector"
    for name in ("selector", "catalog", "selector/heat"):
        (tmp_path / name).mkdir(exist_ok=True)
        (tmp_path / name / "one.py").write_text("1", encoding="utf-8")
    monkeypatch.setattr(room, "_HERE", here)
    monkeypatch.setattr(room, "_STARTED_S", room._STARTED_S + 3600.0)
    stamps = {room._stamp.__wrapped__()}
    for name in ("selector", "catalog", "selector/heat"):
        (tmp_path / name / "one.py").write_text("2", encoding="utf-8")
        stamps.add(room._stamp.__wrapped__())
    assert len(stamps) == 4


def test_a_source_changed_under_a_running_program_keeps_nothing(tmp_path, monkeypatch):
    (tmp_path / "catalog").mkdir()
    (tmp_path / "selector").mkdir()
    (tmp_path / "selector" / "one.py").write_text("1", encoding="utf-8")
    monkeypatch.setattr(room, "_HERE", tmp_path / "selector")
    monkeypatch.setattr(room, "_STARTED_S", 0.0)
    assert room._stamp.__wrapped__() is None


@pytest.mark.parametrize(
    "damage", [lambda held: held[:20], lambda _: b"", lambda held: held[:-9] + b"\0" * 9]
)
def test_a_damaged_file_is_worked_out_and_made_anew(folder, simulated, damage):
    simulate, asked = simulated
    first = simulate(Asked(10.0))
    (file,) = folder.iterdir()
    file.write_bytes(damage(file.read_bytes()))
    assert simulate(Asked(10.0)) == first
    assert simulate(Asked(10.0)) == first
    assert len(asked) == 2


def test_without_a_place_it_is_worked_out(simulated, monkeypatch):
    monkeypatch.setattr(room, "cache_folder", lambda: None)
    simulate, _ = simulated
    assert simulate(Asked(3.0)) == 1.0


def test_a_full_disk_ends_no_run(folder, simulated, monkeypatch):
    def full(*_, **__):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(files, "put_in_place", full)
    simulate, _ = simulated
    assert simulate(Asked(3.0)) == 1.0
    assert not list(folder.iterdir())


def test_what_was_not_asked_for_the_longest_goes_first(folder, simulated, monkeypatch):
    simulate, asked = simulated
    for day, size in enumerate((1.0, 2.0, 3.0)):
        before = set(folder.iterdir()) if folder.exists() else set()
        simulate(Asked(size))
        (new,) = set(folder.iterdir()) - before
        os.utime(new, (day, day))
    simulate(Asked(1.0))  # which makes it the latest
    one = next(folder.iterdir()).stat().st_size
    monkeypatch.setattr(room, "HOLDS_MB", 2.5 * one / room.MEGABYTE)
    room._made_room.cache_clear()
    simulate(Asked(4.0))  # the next run
    asked.clear()
    for size in (1.0, 3.0, 4.0):
        simulate(Asked(size))
    assert not asked
    simulate(Asked(2.0))
    assert len(asked) == 1


def test_a_run_adds_so_much_and_no_more(folder, simulated, monkeypatch):
    simulate, _ = simulated
    monkeypatch.setattr(room, "ADDS_MB", 1e-6)
    for size in (1.0, 2.0, 3.0):
        simulate(Asked(size))
    assert len(list(folder.iterdir())) == 1
