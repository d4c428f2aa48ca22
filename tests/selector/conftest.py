"""What many tests look at, computed once: the dog's surroundings and its advice."""

import pytest
from typer.testing import CliRunner

from catalog import Catalog, load_catalog
from selector.advice import Advice, advise
from selector.surroundings import Surroundings, surroundings
from tests.dog import asked, only

FEW = ("42crmo4", "817m40", "c45", "115crv3", "16mncr5", "s235", "100mncrw4")


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
