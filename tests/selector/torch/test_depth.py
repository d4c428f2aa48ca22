import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.torch.depth import layer_mm, local_share
from tests.dog import asked, work

CATALOG = load_catalog()


def near(size=60, light="shade"):
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    return resolved(asked({**sizes, "workshop.light": light}), CATALOG)


@pytest.mark.parametrize("source", ["forge", "charcoal-forge"])
def test_a_forge_soaks_the_end_through(source):
    job, treatment = near(), work("c45", "local-torch", "water", source)
    assert (layer_mm(treatment, job, job.of_steel("c45")) == 30.0).all()
    assert local_share(treatment, job) == 1.0


def test_induction_goes_as_deep_as_published():
    job, treatment = near(), work("c45", "subcontract-induction", "water", None)
    found, span = layer_mm(treatment, job, job.of_steel("c45")), treatment.route.depth_mm
    assert np.mean((found >= span.low) & (found <= span.high)) > 0.9
    assert 0.0 < local_share(treatment, job) < 0.3


def test_a_torch_heats_a_thin_part_through_and_never_a_thick_one():
    treatment = work("c45", "local-torch", "water", "oxy-propane")
    assert local_share(treatment, near(16)) == 1.0
    assert local_share(treatment, near(60)) < 1.0
