"""What holds for every test: time for examples, who runs which, what is never thrown away."""

import gc
import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Generator
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings
from typer.testing import CliRunner

from tests.examples import USUAL

if TYPE_CHECKING:
    from xdist.scheduler import LoadScopeScheduling
    from xdist.workermanage import WorkerController

# Matrices are small here: a second thread waits longer than it works, the more so as other
# tests run beside. Read when the library of matrices is loaded, by processes started here too.
os.environ["OPENBLAS_NUM_THREADS"] = "1"
# The same examples on every machine, so that a test fails for whoever broke it. The first one
# pays for the imports and the unit registry; no deadline is fair to it.
settings.register_profile("same", deadline=None, derandomize=True, max_examples=USUAL)
# Other examples in every run, and more of them: `--hypothesis-profile many`, on purpose.
settings.register_profile("many", deadline=None, derandomize=False, max_examples=1000)
settings.load_profile("same")


# Rooms that one process runs whole: their tests share what is dear to start, a server with a
# browser and the page's advice.
WHOLE = ("tests/browser", "tests/ui")


def unit_of(nodeid: str) -> str:
    """Return the room or file that a test is handed out with."""
    file = nodeid.split("::", 1)[0]
    return next((room for room in WHOLE if file.startswith(f"{room}/")), file)


def place_of(nodeid: str) -> int:
    """Return the place in the queue: what takes long at its ends, rooms behind loose files."""
    unit = unit_of(nodeid)
    room = unit.rpartition("/")[0]
    return {"tests/browser": 0, "tests/ui": 3}.get(unit, 1 + room.startswith("tests/selector/"))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the tests in the order of the queue, with those of a file as they were."""
    items.sort(key=lambda item: place_of(item.nodeid))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(
    config: pytest.Config, log: object
) -> "LoadScopeScheduling | None":
    """Hand out files, and some rooms whole, from both ends of the queue."""
    if config.getvalue("dist") != "loadfile":
        return None
    from xdist.scheduler import LoadFileScheduling  # noqa: PLC0415

    class FromBothEnds(LoadFileScheduling):
        """Every other process begins at the end: the files of a room look at the same parts."""

        def _split_scope(self, nodeid: str) -> str:
            return unit_of(nodeid)

        def _assign_work_unit(self, node: "WorkerController") -> None:
            if self.nodes.index(node) % 2:
                self.workqueue.move_to_end(next(reversed(self.workqueue)), last=False)
            super()._assign_work_unit(node)

    return FromBothEnds(config, log)


# The loop of conduction takes longer to compile than all tests to collect, so that of several
# processes one alone compiles it, meanwhile. A file stands for it as long as it does.
ROOT = Path(__file__).parent.parent
HEAT = ROOT / "selector" / "heat"
COMPILE = """
import sys
from pathlib import Path
try:
    from selector.heat.conduction import Plan, conduct
    from selector.heat.exchange import convection, steady
    from selector.heat.grid import round_grid
    from selector.heat.steel_property import cooling_steel
    grid = round_grid(8.0, fineness=0.0)
    bath = steady(grid, {"side": convection(4000.0, 20.0)})
    conduct(grid, cooling_steel(), bath, 850.0, Plan(1.0))
finally:
    Path(sys.argv[1]).unlink()
"""
COMPILING = pytest.StashKey[Path]()
PATIENCE_S = 60.0


def is_kept() -> bool:
    """Return whether a loop lies there that is younger than its sources."""
    sources = max(path.stat().st_mtime for path in HEAT.glob("*.py"))
    made = [path.stat().st_mtime for path in (HEAT / "__pycache__").glob("kernel.*.nbc")]
    return max(made, default=0.0) > sources


def pytest_sessionstart(session: pytest.Session) -> None:
    """Begin to compile, ahead of the processes that run tests."""
    config = session.config
    if hasattr(config, "workerinput") or config.getoption("dist", "no") == "no" or is_kept():
        return
    number, name = tempfile.mkstemp(prefix="compiling-")
    os.close(number)
    config.stash[COMPILING] = Path(name)
    program = subprocess.Popen(  # noqa: S603
        [sys.executable, "-c", COMPILE, name],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    config.add_cleanup(program.wait)


@pytest.hookimpl(optionalhook=True)
def pytest_configure_node(node: "WorkerController") -> None:
    """Tell a process which file to wait for."""
    node.workerinput["compiling"] = str(node.config.stash.get(COMPILING, ""))


def pytest_collection_finish(session: pytest.Session) -> None:
    """Wait for the loop; should it never come, each process compiles its own."""
    name = getattr(session.config, "workerinput", {}).get("compiling")
    end = time.monotonic() + PATIENCE_S
    while name and Path(name).exists() and time.monotonic() < end:
        time.sleep(0.1)


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Keep modules and tests, which last to the end, out of every search for garbage."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.freeze()
        # Advice is large, and each search goes through all of it.
        gc.set_threshold(20_000, 20, 20)
        gc.enable()


@pytest.fixture
def cli() -> CliRunner:
    """Return a command line in this process."""
    return CliRunner()
