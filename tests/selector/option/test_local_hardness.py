import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.stock import bought_hrc, stock_of
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.hardness_map import hardness_map
from selector.option.local_hardness import beside
from selector.option.preparation import prepare
from selector.option.set_up import alike
from selector.option.torched import torched
from selector.option.zone_hardness import zone_hardness
from selector.torch.reading import softest_place
from tests.dog import asked, treatment_of, work

CATALOG = load_catalog()
JOB = resolved(asked(), CATALOG)
OVEN = Temper("oven", 200.0, 3600.0)


def hardness(treatment, job=JOB):
    ready = prepare(treatment, job)
    return ready, zone_hardness(ready, OVEN)


def test_only_what_adjoins_the_hard_zone_has_a_ring():
    bar = {"shape": "round", "size": 25, "length": 30}
    zones = {"zone.0.section": [2], "zone.1.section": [1, 3, 4], "part.section": [bar] * 4}
    assert beside(resolved(asked(zones), CATALOG)) == [0, 2]
    assert beside(JOB) == [1]


@pytest.mark.parametrize("source", ["oxy-propane", "hand-torch", "forge"])
@pytest.mark.parametrize(
    ("steel", "condition", "softer"),
    [("c45", "cold-drawn", True), ("42crmo4", "annealed", False)],
)
def test_the_ring_beside_a_local_heat_is_never_harder_than_the_bar(
    source, steel, condition, softer
):
    ready, found = hardness(work(steel, "local-torch", "oil", source, condition))
    ring = found.sections[:, 1]
    assert (ring <= ready.supply_hrc + 1e-6).all()
    assert bool(np.median(ring) < np.median(ready.supply_hrc) - 0.5) == softer
    # The ring bears the load of the section beside the zone; the shank keeps its own figure.
    np.testing.assert_allclose(found.shank, ready.supply_hrc, atol=0.3)


def test_hard_bar_has_a_ring_where_it_was_drawn_beyond_its_temper():
    """Bar drawn at 600 °C loses little in seconds, and nothing of it in the shank."""
    ready, found = hardness(work("42crmo4", "local-torch", "oil", "oxy-propane", "prehard"))
    assert (found.sections[:, 1] <= ready.supply_hrc + 1e-6).all()
    np.testing.assert_allclose(found.shank, ready.supply_hrc, atol=0.3)


def test_what_is_hardened_whole_has_no_ring():
    _, found = hardness(work("42crmo4", "through-torch", "oil", "oxy-propane", "prehard"))
    assert np.median(found.sections[:, 1]) > 45


STEELS = [
    ("42crmo4", "oil", "oxy-propane", "prehard"),
    ("c45", "water", "oxy-propane", None),
    ("c45", "water", "oxy-acetylene", "cold-drawn"),
    ("115crv3", "water", "oxy-propane", None),
    ("c105u", "water", "oxy-propane", None),
    ("c80u", "water", "oxy-propane", None),
    ("100mncrw4", "oil", "oxy-propane", None),
]


@pytest.mark.parametrize("size", [12, 25, 40])
@pytest.mark.parametrize(
    "torching", STEELS, ids=lambda torching: f"{torching[0]} {torching[2]}"
)
def test_the_map_is_the_forecast_at_the_middle(torching, size):
    """What is printed as a map and what is judged differ by their places alone."""
    steel, medium, source, condition = torching
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    job = resolved(asked({**sizes, "part.section.0.length": max(size, 30)}), CATALOG, 1)
    treatment = work(steel, "local-torch", medium, source, condition)
    _, found = hardness(treatment, job)
    shown = hardness_map(job, treatment, OVEN)
    part = torched(job, alike(treatment)).part
    low, high = part.zone_mm
    inside = (shown.along_mm > low) & (shown.along_mm < high)
    assert found.surface[0] == pytest.approx(shown.surface()[inside].min(), abs=1.0)
    at = int(np.argmin(np.abs(shown.along_mm - 0.5 * (low + high))))
    assert found.core[0] == pytest.approx(shown.core()[at], abs=1.5)
    # The ring is a cusp where the peak just missed transformation: columns blunt it.
    ring = softest_place(shown, part, bought_hrc(treatment.condition), job.asked.part)
    softest_hrc = stock_of(treatment.steel, treatment.condition).softest_hrc
    assert softest_hrc - 1.0 <= found.sections[0, 1] <= ring.hrc + 0.5


@pytest.mark.parametrize(("length", "hard"), [("8 mm", True), ("60 mm", False)])
def test_a_short_boss_behind_a_thin_zone_hardens_along_with_it(length, hard):
    ring = {"shape": "round", "size": "34 mm", "bore": "18 mm"}
    part = {
        "part.section": [{**ring, "length": "6 mm"}, {**ring, "length": length}],
        "part.feature": [], "workshop.heat": [{"source": "oxy-propane"}],
    }  # fmt: skip
    job = resolved(asked(part), CATALOG)
    _, found = hardness(treatment_of(job, "42crmo4", "local-torch", "oil"), job)
    assert bool(np.median(found.surface - found.shank) < 3.0) is hard
