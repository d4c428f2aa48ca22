import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.option.heated_depth import SKIN_SHARE, is_skin, layer_mm
from selector.option.preparation import cooled_points
from selector.option.set_up import alike
from selector.option.torched import torched
from tests.dog import asked, work

CATALOG = load_catalog()


def near(size=60):
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    return resolved(asked(sizes), CATALOG)


@pytest.mark.parametrize("source", ["forge", "charcoal-forge"])
def test_a_forge_soaks_the_end_through(source):
    treatment = work("c45", "local-torch", "water", source)
    assert torched(near(25).middle(), alike(treatment)).heated_share == 1.0


@pytest.mark.parametrize("asked_mm", [0.1, 1.5, 4.0])
def test_induction_goes_as_deep_as_it_is_ordered(asked_mm):
    job, treatment = near(), work("c45", "subcontract-induction", "water", None)
    depth = layer_mm(treatment, 30.0, asked_mm, job.of_steel("c45"))
    assert np.mean(depth >= asked_mm) > 0.9
    span = treatment.route.depth_mm
    assert np.mean((depth >= span.low) & (depth <= span.high)) > 0.9


def test_a_hot_shell_over_a_cold_core_hardens_though_the_bar_would_not():
    treatment = work("c45", "subcontract-induction", "water", None)
    job = near(45)
    hot = cooled_points(treatment, job).distance_mm
    whole = cooled_points(work("c45", "through-torch", "water"), job).distance_mm
    assert np.median(hot[:, 0]) < np.median(whole[:, 0])


def test_a_torch_heats_a_thin_part_through_and_never_a_thick_one():
    treatment = work("c45", "local-torch", "water", "oxy-propane")
    thin, thick = (torched(near(mm).middle(), alike(treatment)) for mm in (16, 60))
    assert thin.heated_share == 1.0
    assert thick.heated_share < 1.0


def test_a_skin_is_a_thin_local_layer_in_a_watery_bath():
    wet, oiled = (work("c45", "local-torch", medium) for medium in ("water", "oil"))
    assert is_skin(wet, 0.9 * SKIN_SHARE)
    assert not is_skin(wet, 1.1 * SKIN_SHARE)
    assert not is_skin(oiled, 0.9 * SKIN_SHARE)
    assert not is_skin(work("c45", "through-torch", "water"), 0.9 * SKIN_SHARE)
