"""What many tests look at, computed once: the dog's surroundings and its advice."""

import pytest
from hypothesis import settings
from typer.testing import CliRunner

from catalog import Catalog, load_catalog
from selector.advice import Advice, advise
from selector.surroundings import Surroundings, surroundings
from tests.dog import FEW, asked, only

# The first example pays for the imports and the unit registry; no deadline is fair to it.
settings.register_profile("unhurried", deadline=None)
settings.load_profile("unhurried")


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    return load_catalog()


@pytest.fixture(scope="session")
def few() -> Catalog:
    return only(*FEW)


@pytest.fixture(scope="session")
def around(catalog: Catalog) -> Surroundings:
    return surroundings(asked(), catalog)


@pytest.fixture(scope="session")
def advice(few: Catalog) -> Advice:
    return advise(asked(), few)


@pytest.fixture
def cli() -> CliRunner:
    return CliRunner()
