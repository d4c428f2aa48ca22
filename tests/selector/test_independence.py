"""No number of an option depends on which others are weighed, nor in which order."""

from dataclasses import replace
from functools import cache
from types import MappingProxyType

import numpy as np
import pytest

from catalog import Catalog
from selector.decision.option import scorer_of
from selector.decision.weighing import weigh
from selector.job.candidates import screened
from selector.job.job import resolved
from selector.option.reference_bar import reference_cost
from tests.dog import EVERY_KIND, asked, only
from tests.whole_requirement import requirement_number

# Spheroidised, soft and pre-hardened bar, for oil, water and air, some alike but for carbon.
STEELS = (
    "100cr6", "115crv3", "41cr4", "42crmo4", "51crv4", "55cr3", "817m40", "c45", "c75s",
    "s235", "x100crmov5",
)  # fmt: skip
ALSO_RAN = "c60"
# The thin part takes the longest: those that are asked alone there, and two like one of them.
FEW = (*STEELS[1::3], "41cr4", "c75s")
PARTS = {
    "dog": asked(),
    "thin dog": asked({f"part.section.{n}.size": "8 mm" for n in range(2)}),
    "number 8": requirement_number(8),
}


def in_order(known: Catalog, slugs: list[str]) -> Catalog:
    """Return a catalogue with its steels in another order."""
    return replace(known, steels=MappingProxyType({slug: known.steels[slug] for slug in slugs}))


def numbers(part, known, steel=None):
    """Return by id all that was sampled of what was weighed, ranked or not."""
    job = resolved(PARTS[part], known)
    pool = screened(job.asked, known, job.bench, lambda bar, _: steel in {None, bar.slug})
    weighed = weigh(job, pool, scorer_of(job, reference_cost(job)), whole=True)
    tried = [item.option for item in (*weighed.rejected, *weighed.apart) if item.option]
    found = {}
    for option in (*weighed.options, *tried):
        judged, known = option.judged, option.judged.prediction
        found[option.id] = {
            "values": judged.values,
            "passing": judged.passing.astype(float),
            "scores": option.scores,
            "merit": option.merit,
            "surface": known.surface_hrc,
            "core": known.core_hrc,
            "sections": known.section_hrc,
            "depth": known.depth_mm,
            "moved": known.movement.moved_mm,
            "crack rate": known.crack.rate,
            "cost": known.bill.cost,
            "snap margin": known.snap_margin_hrc,
            "misread": np.array([option.choice.sensitivity_hrc]),
        }
    return found


def steels_of(part):
    """Return the steels that a part is made of."""
    return FEW if part == "thin dog" else STEELS


@cache
def whole(part):
    """Return the numbers of a part with all its steels."""
    return numbers(part, only(*steels_of(part)))


def assert_equal(few, part):
    """Compare options with those of the whole, to the last digits."""
    common = few.keys() & whole(part).keys()
    assert common
    for option in sorted(common):
        for name, values in few[option].items():
            there = whole(part)[option][name]
            np.testing.assert_allclose(
                values, there, rtol=0, atol=1e-9, err_msg=f"{option}: {name}"
            )


@pytest.mark.parametrize(("at", "part"), list(enumerate(PARTS)))
def test_each_steel_alone(at, part):
    # Each steel in one of the parts: what is kept under too short a key shows in any of them.
    known = only(*steels_of(part))
    alone, slugs = {}, STEELS[at :: len(PARTS)]
    for slug in slugs:
        found = numbers(part, known, slug)
        assert all(option.startswith(f"{slug}/") for option in found)
        alone |= found
    assert alone.keys() >= {o for o in whole(part) if o.split("/")[0] in slugs}
    assert_equal(alone, part)


@pytest.mark.parametrize("part", PARTS)
def test_beside_an_also_ran_and_in_another_order_of_the_catalogue(part):
    known = only(*steels_of(part), ALSO_RAN)
    slugs = [*list(known.steels)[1::2], *list(known.steels)[::2]]
    grown = numbers(part, in_order(known, slugs))
    assert any(option.startswith(f"{ALSO_RAN}/") for option in grown)
    assert grown.keys() >= whole(part).keys()
    assert_equal(grown, part)


def test_a_catalogue_of_every_kind_backwards():
    known = only(*EVERY_KIND)
    forth = numbers("dog", known)
    back = numbers("dog", in_order(known, list(known.steels)[::-1]))
    assert forth.keys() == back.keys()
    for option, values in forth.items():
        for name, there in values.items():
            np.testing.assert_allclose(
                back[option][name], there, rtol=0, atol=1e-9, err_msg=f"{option}: {name}"
            )
