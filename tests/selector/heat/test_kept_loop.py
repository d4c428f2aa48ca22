"""The compiled loop on disk: damage is made good, and without a folder it runs all the same.

A small function stands for the loop, compiled in a second; the real one is loaded once in a
process that can write nowhere.
"""

import os
import shutil
import subprocess
import sys
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path

import pytest
from numba.core.caching import CacheImpl

from selector.heat import conduction, kept_loop, kernel
from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import convection, steady
from selector.heat.grid import round_grid
from selector.heat.kept_loop import KeptLoop, keep
from selector.heat.steel_property import cooling_steel

ROOT = Path(__file__).parents[3]
TEXT = """
from numba import njit

@njit
def thrice(x):
    return 3 * x
"""
# What may be left of a file by a power cut, a full disk or another program.
DAMAGE = {
    "empty": lambda _: b"",
    "truncated": lambda whole: whole[: len(whole) // 2],
    "garbage": lambda _: b"\x80\x04garbage" * 40,
    "another record": lambda _: b"\x80\x04K*.",
    "bytes turned": lambda whole: (
        whole[:-60] + bytes(b ^ 0x55 for b in whole[-60:-20]) + whole[-20:]
    ),
}


@pytest.fixture
def source(tmp_path):
    path = tmp_path / "small.py"
    path.write_text(TEXT, encoding="utf-8")
    return path


def fresh(source):
    """Return the function as a new process would find it, and where it is kept."""
    spec = spec_from_file_location("small", source)
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module.thrice, keep(module.thrice)


def files(source, ending):
    return list((source.parent / "__pycache__").glob(f"*.{ending}"))


def test_it_is_compiled_once_and_then_read(source):
    first, kept = fresh(source)
    assert not kept.holds()
    assert first(2) == 6
    assert kept.holds()
    again, _ = fresh(source)
    assert again(2) == 6
    assert sum(again.stats.cache_hits.values()) == 1


@pytest.mark.parametrize("ending", ["nbi", "nbc"])
@pytest.mark.parametrize("damage", DAMAGE)
def test_a_damaged_file_is_thrown_away_and_made_anew(source, ending, damage):
    fresh(source)[0](2)
    (file,) = files(source, ending)
    file.write_bytes(DAMAGE[damage](file.read_bytes()))
    torn, _ = fresh(source)
    assert torn(2) == 6
    mended, kept = fresh(source)
    assert kept.holds()
    assert mended(2) == 6
    assert sum(mended.stats.cache_hits.values()) == 1


def test_it_holds_for_the_text_of_every_source_and_not_for_its_age(source, monkeypatch):
    fresh(source)[0](2)
    os.utime(source)
    assert fresh(source)[1].holds()
    monkeypatch.setattr(kept_loop, "_stamp", lambda: b"another text")
    assert not fresh(source)[1].holds()


def test_the_stamp_changes_with_any_file_of_the_room(tmp_path, monkeypatch):
    room = tmp_path / "heat"
    shutil.copytree(
        ROOT / "selector" / "heat", room, ignore=shutil.ignore_patterns("__pycache__")
    )
    before = kept_loop._stamp()
    monkeypatch.setattr(kept_loop, "__file__", str(room / "kept_loop.py"))
    assert kept_loop._stamp() == before
    with (room / "sweep.py").open("a", encoding="utf-8") as sweep:
        sweep.write("# another line\n")
    assert kept_loop._stamp() != before


def test_a_full_disk_keeps_nothing_and_computes(source, monkeypatch):
    def full(*_):
        raise OSError(28, "No space left on device")

    function, kept = fresh(source)
    monkeypatch.setattr(kept._cache_file, "_save_data", full)
    assert function(2) == 6


def test_without_a_folder_it_is_compiled_for_the_run(source, monkeypatch):
    monkeypatch.setattr(CacheImpl, "_locator_classes", [])
    function, kept = fresh(source)
    assert kept is None
    assert function(2) == 6
    with pytest.raises(RuntimeError, match="no locator available"):
        KeptLoop(function.py_func)


NOWHERE = """
from numba.core.caching import _CacheLocator

def refused(self):
    raise PermissionError(13, "Permission denied", self.get_cache_path())

_CacheLocator.ensure_cache_path = refused

from selector.heat import kernel

print(kernel.KEPT, kernel.is_compiled())
"""


def test_the_loop_is_loaded_where_nothing_can_be_written(tmp_path):
    """As of an installation on a read-only disk, used by nobody who has a home."""
    home = tmp_path / "home"
    environment = {
        key: os.environ[key] for key in ("PATH", "LD_LIBRARY_PATH") if key in os.environ
    }
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", NOWHERE],
        env={**environment, "HOME": str(home), "PYTHONPATH": str(ROOT)},
        cwd=tmp_path,
        capture_output=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout == "None False\n"
    assert not home.exists()


def test_where_it_is_not_kept_it_runs_and_says_that_it_is_compiled_each_time(
    monkeypatch, caplog
):
    monkeypatch.setattr(kernel, "KEPT", None)
    conduction._announce_compiling.cache_clear()
    grid = round_grid(8.0, fineness=0.0)
    boundary = steady(grid, {"side": convection(4000.0, 20.0)})
    end_c = conduct(grid, cooling_steel(), boundary, 850.0, Plan(1.0)).end_c
    assert 20.0 < float(end_c.max()) < 850.0
    assert "each time" in caplog.text
