"""What many tests look at, computed once: the dog's surroundings and its advice."""

import pytest

from catalog import Catalog, load_catalog
from selector.advice.advise import Advice
from selector.job.job import Job, resolved
from tests.dog import FEW, asked, only
from tests.once import advised


@pytest.fixture(scope="session")
def catalog() -> Catalog:
    return load_catalog()


@pytest.fixture(scope="session")
def few() -> Catalog:
    return only(*FEW)


@pytest.fixture(scope="session")
def job(catalog: Catalog) -> Job:
    return resolved(asked(), catalog)


@pytest.fixture(scope="session")
def advice() -> Advice:
    return advised(None, *FEW)
