import numpy as np
import pytest

from catalog import load_catalog
from selector.preparation import prepare
from selector.soft_ring import beside, soft_ring_hrc
from selector.surroundings import surroundings
from selector.treatment import Temper
from selector.zone_hardness import zone_hardness
from tests.dog import asked, work

AROUND = surroundings(asked(), load_catalog())
OVEN = Temper("oven", 200.0, 3600.0)


def hardness(treatment):
    ready = prepare(treatment, AROUND)
    return ready, zone_hardness(ready, OVEN, AROUND)


def test_only_what_adjoins_the_hard_zone_has_a_ring():
    long = {f"part.section.{n}": {"shape": "round", "size": 25, "length": 30} for n in (0, 1)}
    sections = [long["part.section.0"]] * 4
    zones = {"zone.0.section": [2], "zone.1.section": [1, 3, 4], "part.section": sections}
    assert beside(surroundings(asked(zones), load_catalog())) == [0, 2]
    assert beside(AROUND) == [1]


@pytest.mark.parametrize(
    ("steel", "condition", "softer"),
    [("42crmo4", "prehard", True), ("c45", "cold-drawn", True), ("42crmo4", "annealed", False)],
)
def test_the_ring_beside_a_local_heat_is_never_harder_than_the_bar(steel, condition, softer):
    treatment = work(steel, "local-torch", "oil", "oxy-propane", condition)
    ready, found = hardness(treatment)
    ring = soft_ring_hrc(ready)
    assert (ring <= ready.supply_hrc).all()
    assert bool(np.median(ring) < np.median(ready.supply_hrc) - 1) == softer
    # The ring bears the load of the section beside the zone; the shank keeps its own figure.
    np.testing.assert_allclose(found.sections[:, 1], ring)
    np.testing.assert_array_equal(found.shank, ready.supply_hrc)


def test_what_is_hardened_whole_has_no_ring():
    _, found = hardness(work("42crmo4", "through-torch", "oil", "oxy-propane", "prehard"))
    assert np.median(found.sections[:, 1]) > 45
