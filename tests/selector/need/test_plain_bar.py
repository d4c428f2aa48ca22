import pytest

from catalog import load_catalog
from selector.duty.strength import bearing
from selector.job.job import resolved
from selector.need.plain_bar import plain_bar
from selector.need.section import section_needs
from tests.dog import GONE, asked

CATALOG = load_catalog()
SOFT = {"zone.0.wear": "none", "zone.0.hardness": GONE, "part.feature": []}
BENT = {**SOFT, "load.torque": GONE, "load.bending": "20 N m"}


def of(changes):
    requirement = asked(changes)
    bears = bearing(requirement)
    needs = section_needs(requirement, bears)
    return plain_bar(resolved(requirement, CATALOG), bears, needs)


def test_the_bar_named_is_the_one_in_the_rack_or_else_one_easily_had():
    """Never annealed tool steel because a small bar of it wastes little."""
    small = {**BENT, "part.section.0.size": 9, "part.section.1.size": 2.5,
             "load.bending": "0.3 N m"}  # fmt: skip
    needed = of(small)
    steel = next(s for s in CATALOG.steels.values() if s.name == needed.steel)
    condition = next(c for c in steel.condition if c.name == needed.condition)
    assert condition.availability == "easy"
    stock = [{"steel": "silver steel", "condition": "annealed", "size": "10 mm"}]
    assert of({**small, "workshop.stock": stock}).steel == "115CrV3"


def test_a_bar_of_unknown_hardness_bears_nothing_for_certain():
    rack = {"workshop.only_stock": True, "workshop.stock": [{"steel": "unknown"}]}
    assert of({**BENT, **rack}) is None


@pytest.mark.parametrize("torque", ["2200 N m", "20000 N m"])
def test_a_load_that_no_bar_bears_has_none(torque):
    assert of({**SOFT, "load.torque": torque}) is None
