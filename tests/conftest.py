"""What holds for every test: time for examples, the command line, what is never thrown away."""

import gc
import os
from collections.abc import Generator

import pytest
from hypothesis import settings
from typer.testing import CliRunner

from tests.examples import USUAL

# Matrices are small here: a second thread waits longer than it works, the more so as other
# tests run beside. Read when the library of matrices is loaded, by processes started here too.
os.environ["OPENBLAS_NUM_THREADS"] = "1"
# The same examples on every machine, so that a test fails for whoever broke it. The first one
# pays for the imports and the unit registry; no deadline is fair to it.
settings.register_profile("same", deadline=None, derandomize=True, max_examples=USUAL)
# Other examples in every run, and more of them: `--hypothesis-profile many`, on purpose.
settings.register_profile("many", deadline=None, derandomize=False, max_examples=1000)
settings.load_profile("same")


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
