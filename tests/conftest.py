"""What holds for every test: time for examples, who runs which, what is never thrown away."""

import gc
import os
from collections.abc import Generator
from typing import TYPE_CHECKING

import pytest
from hypothesis import settings
from typer.testing import CliRunner

from tests.examples import USUAL

if TYPE_CHECKING:
    from xdist.scheduler import LoadScopeScheduling

# Matrices are small here: a second thread waits longer than it works, the more so as other
# tests run beside. Read when the library of matrices is loaded, by processes started here too.
os.environ["OPENBLAS_NUM_THREADS"] = "1"
# The same examples on every machine, so that a test fails for whoever broke it. The first one
# pays for the imports and the unit registry; no deadline is fair to it.
settings.register_profile("same", deadline=None, derandomize=True, max_examples=USUAL)
# Other examples in every run, and more of them: `--hypothesis-profile many`, on purpose.
settings.register_profile("many", deadline=None, derandomize=False, max_examples=1000)
settings.load_profile("same")


# Rooms that one process runs whole, before all others: their tests share what is dear to start,
# a server with a browser and the page's advice.
WHOLE = ("tests/browser", "tests/ui")


def unit_of(nodeid: str) -> str:
    """Return the room or file that a test is handed out with."""
    file = nodeid.split("::", 1)[0]
    return next((room for room in WHOLE if file.startswith(f"{room}/")), file)


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put rooms that are run whole first: at the end one would keep a process alone."""
    places = {room: place for place, room in enumerate(WHOLE)}
    items.sort(key=lambda item: places.get(unit_of(item.nodeid), len(WHOLE)))


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: object) -> "LoadScopeScheduling":
    """Hand out tests by room or file."""
    from xdist.scheduler import LoadFileScheduling  # noqa: PLC0415

    class ByRoom(LoadFileScheduling):
        def _split_scope(self, nodeid: str) -> str:
            return unit_of(nodeid)

    return ByRoom(config, log)


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Keep modules and tests, which last to the end, out of every search for garbage."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.collect()
        gc.freeze()
        # Advice is large, and each search goes through all of it.
        gc.set_threshold(20_000, 20, 20)
        gc.enable()


@pytest.fixture
def cli() -> CliRunner:
    """Return a command line in this process."""
    return CliRunner()
