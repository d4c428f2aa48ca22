from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.flame.arrangement import arranged
from selector.flame.case import follow
from selector.flame.outcome import Setup
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.local_hardness import beside
from selector.option.preparation import prepare
from selector.option.zone_hardness import zone_hardness
from tests.dog import asked, work

CATALOG = load_catalog()
JOB = resolved(asked(), CATALOG)
OVEN = Temper("oven", 200.0, 3600.0)


def hardness(treatment, job=JOB):
    ready = prepare(treatment, job)
    return ready, zone_hardness(ready, OVEN, job)


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
]


def both(torching, size):
    steel, medium, source, condition = torching
    sizes = {f"part.section.{n}.size": size for n in (0, 1)}
    job = resolved(asked({**sizes, "part.section.0.length": max(size, 30)}), CATALOG, 1)
    treatment = work(steel, "local-torch", medium, source, condition)
    ready, found = hardness(treatment, job)
    setup = arranged(treatment, job, job.leading, Setup(temper=OVEN)).setup
    hold_s = float(np.exp(ready.torched.at[0, 1]))
    return found, follow(treatment, job, replace(setup, hold_s=hold_s), job.leading)


@pytest.mark.parametrize("size", [12, 25, 40])
@pytest.mark.parametrize(
    "torching", STEELS, ids=lambda torching: f"{torching[0]} {torching[2]}"
)
def test_advice_and_the_flame_verdict_agree_at_the_middle(torching, size):
    """Held as long, the same part comes out alike: the grids and places differ, no more."""
    found, verdict = both(torching, size)
    assert found.surface[0] == pytest.approx(verdict.surface_hrc, abs=1.0)
    assert found.core[0] == pytest.approx(verdict.core_hrc, abs=1.5)
    assert found.depth_mm[0] == pytest.approx(verdict.depth_mm, abs=0.06 * size)
    # The ring is a cusp where the peak just missed transformation: columns blunt it.
    assert found.sections[0, 1] == pytest.approx(verdict.ring.hrc, abs=3.5)


@pytest.mark.parametrize("size", [6, 25])
@pytest.mark.parametrize(
    ("steel", "medium"),
    [("115crv3", "water"), ("c105u", "water"), ("c80u", "water"), ("100mncrw4", "oil")],
)
def test_advice_and_the_flame_verdict_agree_on_tool_steel(steel, medium, size):
    """The verdict goes by composition, advice by the published hardness; both count time."""
    found, verdict = both((steel, medium, "oxy-propane", None), size)
    assert found.surface[0] == pytest.approx(verdict.surface_hrc, abs=1.5)
