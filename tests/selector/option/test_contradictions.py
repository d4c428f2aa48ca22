"""No option is warned of two things that cannot both be done."""

from collections.abc import Iterator
from types import SimpleNamespace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.job.tempers import tempers
from selector.job.treatment import Temper, Treatment
from selector.option.caution import cautions, of_option
from tests.dog import asked

KNOWN = load_catalog()
CONTRARY = (
    # Foam and powder behind the lid, and neither of them.
    ("fire-extinguisher", "vegetable-oil-fire"),
    # The part right under, and its end alone.
    ("oil-fire", "end-dip-oil"),
    ("half-dip-oil", "end-dip-oil"),
    # Not hotter than red, of a steel that hardens from orange heat.
    ("overheated-grain", "stainless-temper-window"),
    # The end moved at the water line, and the whole part put in.
    ("keep-moving-at-water-line", "oil-fire"),
    ("keep-moving-at-water-line", "quench-enter-edge-first"),
    # The bath to be warmed and tried, and not to be thought of.
    ("harsh-bath", "water-for-oil-steel"),
    # An hour an inch, and none.
    ("soak-rule-furnace-only", "electric-furnace"),
)
OF_ROUTE = {route.slug: route for route in KNOWN.routes.values() if route.process != "none"}
SHOP = {
    "part.feature": [],
    "workshop.heat": [{"source": source} for source in KNOWN.heat_sources],
    "workshop.bath": [{"medium": medium} for medium in KNOWN.media],
}
JOB = resolved(asked(SHOP), KNOWN)
STEELS = ("115crv3", "100mncrw4", "x20cr13")
# One heat source of each kind; sources of a kind bring the same way of work.
HEATS = ("oxy-propane", "forge", "muffle-furnace", "induction", "salt-bath")
CEILINGS = {"oven": 250.0, "furnace": 700.0, "plate": 350.0, "torch": 330.0, "blaze": 390.0,
            "residual": 310.0}  # fmt: skip


def treatments(slug: str) -> Iterator[tuple[Treatment, Temper]]:
    """Yield what the catalogue allows by a route: steel, bath, source and means of temper."""
    route = OF_ROUTE[slug]
    for name in STEELS:
        steel = KNOWN.steels[name]
        for bath in route.media or (None,):
            for heat in [name for name in HEATS if name in route.heat_sources] or [None]:
                medium = KNOWN.media[bath] if bath else None
                source = KNOWN.heat_sources[heat] if heat else None
                treatment = Treatment(steel, steel.condition[0], route, medium, source)
                grid = tempers(treatment, CEILINGS, thin=True)
                for temper in {t.means: t for t in grid}.values():
                    yield treatment, temper


@pytest.mark.parametrize("slug", OF_ROUTE)
def test_no_option_is_told_a_thing_and_its_contrary(slug):
    for treatment, temper in treatments(slug):
        outcome = SimpleNamespace(
            treatment=treatment, temper=temper, surface_hrc=np.array([55.0])
        )
        ids = set(of_option(JOB, outcome))
        said = [pair for pair in CONTRARY if set(pair) <= ids]
        assert not said, (treatment.label, temper.label)


def test_every_contrary_pair_is_on_the_list():
    assert {key for pair in CONTRARY for key in pair} <= set(KNOWN.cautions)


def test_a_harsh_bath_of_ones_own_is_not_warned_of_twice():
    steel = KNOWN.steels["100mncrw4"]
    treatment = Treatment(
        steel, steel.condition[0], KNOWN.routes["through-furnace"], KNOWN.media["water"],
        KNOWN.heat_sources["muffle-furnace"],
    )  # fmt: skip
    outcome = SimpleNamespace(
        treatment=treatment, temper=Temper("oven", 200.0, 3600.0), surface_hrc=np.array([60.0])
    )
    ids = {key for key, _ in cautions(JOB, [outcome])}
    assert not {"harsh-bath", "water-for-oil-steel"} <= ids
