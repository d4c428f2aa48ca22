import numpy as np
import pytest

from catalog import load_catalog
from selector.surroundings import surroundings
from selector.torch_depth import hardened_depth_mm
from tests.dog import asked, work

CATALOG = load_catalog()
TORCHES = ["hand-torch", "propylene-torch", "oxy-propane", "oxy-acetylene"]
FLAT = {name: np.zeros(3) for name in ("depth", "eye_bias", "eye_scatter")}


def depth(source, size=60, normals=None, light="shade"):
    changes = {"part.section.0.size": size, "part.section.1.size": size}
    around = surroundings(asked({**changes, "workshop.light": light}), CATALOG)
    treatment = work("c45", "local-torch", "water", source)
    return hardened_depth_mm(treatment, around, normals or around.of_steel("c45"))


@pytest.mark.parametrize("source", TORCHES)
@pytest.mark.parametrize("size", [6, 16, 60])
def test_depth_is_positive_and_ends_at_the_centre(source, size):
    found = depth(source, size)
    assert found.shape == (512,)
    assert (found > 0).all()
    assert (found <= size / 2).all()


def test_a_thin_part_is_heated_through():
    assert np.mean(depth("oxy-propane", 6) > 2.9) > 0.9


@pytest.mark.parametrize(
    ("name", "deeper"), [("eye_scatter", True), ("eye_bias", True), ("depth", False)]
)
def test_hotter_and_longer_heat_goes_deeper_and_a_stronger_flame_less(name, deeper):
    """A strong flame brings the skin to heat before the middle follows."""
    normals = {**FLAT, "eye_scatter": np.full(3, -1.0)}
    normals[name] = normals[name] + np.array([-0.4, 0.0, 0.4])
    steps = np.diff(depth("oxy-acetylene", 30, normals))
    assert (steps > 0).all() if deeper else (steps < 0).all()


def test_the_response_is_smooth():
    fine = np.linspace(-1.4, 1.4, 57)
    normals = {**{name: np.zeros(57) for name in FLAT}, "eye_bias": fine}
    steps = np.diff(depth("oxy-propane", 40, normals))
    assert (steps >= 0).all()
    assert steps.max() < 0.6


def test_who_is_misled_by_the_sun_heats_deeper():
    shade, sun = (depth("oxy-propane", 40, light=light) for light in ("shade", "sun"))
    assert np.median(sun) > np.median(shade)


@pytest.mark.parametrize("source", ["forge", "charcoal-forge"])
def test_a_forge_soaks_the_end_through(source):
    assert (depth(source) == 30.0).all()


def test_induction_goes_as_deep_as_published():
    around = surroundings(asked({"part.section.0.size": 60}), CATALOG)
    treatment = work("c45", "subcontract-induction", "water", None)
    found = hardened_depth_mm(treatment, around, around.of_steel("c45"))
    span = treatment.route.depth_mm
    assert np.mean((found >= span.low) & (found <= span.high)) > 0.9
