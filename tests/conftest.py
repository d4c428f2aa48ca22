"""What holds for every test: time for examples, the command line, what is never thrown away."""

import gc

import pytest
from hypothesis import settings
from typer.testing import CliRunner

# The first example pays for the imports and the unit registry; no deadline is fair to it.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


def pytest_collection_finish() -> None:
    """Keep modules and tests out of every later search for garbage: they last to the end."""
    gc.collect()
    gc.freeze()


@pytest.fixture
def cli() -> CliRunner:
    """Return a command line in this process."""
    return CliRunner()
