import numpy as np
import pytest

from catalog import load_catalog
from selector.surroundings import surroundings
from selector.torch_depth import hardened_depth_mm
from tests.dog import asked, work

CATALOG = load_catalog()
TORCHES = ["hand-torch", "propylene-torch", "oxy-propane", "oxy-acetylene"]


def depth(source, size=60, normals=None):
    around = surroundings(
        asked({"part.section.0.size": size, "part.section.1.size": size}), CATALOG
    )
    treatment = work("c45", "local-torch", "water", source)
    return hardened_depth_mm(treatment, around, normals or around.of_steel("c45"))


@pytest.mark.parametrize("source", TORCHES)
@pytest.mark.parametrize("size", [6, 16, 60])
def test_depth_is_positive_and_ends_at_the_centre(source, size):
    found = depth(source, size)
    assert (found > 0).all()
    assert (found <= size / 2).all()


def test_a_thin_part_is_heated_through():
    assert (depth("oxy-propane", 6) == 3.0).all()


def test_who_lingers_heats_deeper():
    flat = {"depth": np.zeros(3), "eye_scatter": np.array([-1.0, 0.0, 1.0])}
    assert (np.diff(depth("oxy-acetylene", 60, flat)) > 0).all()


@pytest.mark.parametrize("source", ["forge", "charcoal-forge"])
def test_a_forge_soaks_the_end_through(source):
    assert (depth(source) == 30.0).all()


def test_induction_goes_as_deep_as_published():
    around = surroundings(asked({"part.section.0.size": 60}), CATALOG)
    treatment = work("c45", "subcontract-induction", "water", None)
    found = hardened_depth_mm(treatment, around, around.of_steel("c45"))
    span = treatment.route.depth_mm
    assert np.mean((found >= span.low) & (found <= span.high)) > 0.9
