import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from catalog import load_catalog
from selector import sampling
from selector.hardening.composition import sampled
from selector.job.job import resolved
from selector.option.cracking import crack_sample, crack_steel, crack_words
from selector.option.preparation import prepare
from tests.dog import asked, work
from tests.examples import few

CATALOG = load_catalog()


def of(changes=None, **names):
    treatment = work(**names)
    slug = treatment.steel.slug
    normals = {**sampling.shared(), **sampling.of_steel(slug)}
    near = resolved(asked(changes), CATALOG)
    if treatment.route.extent == "local":
        return prepare(treatment, near).crack
    bar = crack_steel(treatment.steel, sampled(treatment.steel, normals))
    return crack_sample(treatment, near.asked.part, bar, normals, thickness_mm=20.0, skin=False)


@pytest.mark.parametrize("route", ["as-bought", "subcontract-nitride"])
def test_what_is_not_quenched_does_not_crack(route):
    found = of(route=route, medium=None, source=None)
    assert found.risk is None
    assert not found.rate.any()
    assert not found.cracked.any()


@pytest.mark.parametrize("steel", ["c45", "42crmo4", "115crv3", "100mncrw4"])
@pytest.mark.parametrize("medium", ["water", "oil"])
def test_rates_keep_to_the_band_of_the_class(steel, medium):
    found = of(steel=steel, medium=medium)
    assert (found.rate >= found.risk.low_fraction - 1e-12).all()
    assert (found.rate <= found.risk.high_fraction + 1e-12).all()
    # As many crack as the rates say, within the scatter of a sample of 512.
    assert found.cracked.mean() == pytest.approx(found.rate.mean(), abs=3 * 0.5 / np.sqrt(512))


@pytest.mark.parametrize("steel", ["c45", "42crmo4", "115crv3", "100mncrw4"])
def test_water_never_cracks_less_than_oil(steel):
    assert of(steel=steel, medium="water").rate.mean() >= of(steel=steel).rate.mean()


def test_an_oil_steel_in_water_is_worse_than_in_oil():
    assert (
        of(steel="100mncrw4", medium="water").risk.high_fraction
        > of(steel="100mncrw4").risk.high_fraction
    )


@pytest.mark.parametrize("kind", ["cross-hole", "sharp-corner", "keyway", "slot", "thread"])
def test_a_stress_raiser_never_lowers_the_risk(kind):
    bare = of({"part.feature": []}, steel="42crmo4", medium="water")
    notched = of({"part.feature": [{"kind": kind}]}, steel="42crmo4", medium="water")
    assert notched.rate.mean() >= bare.rate.mean()
    assert len(notched.risk.reasons) > len(bare.risk.reasons)


def test_a_step_counts_where_the_whole_part_is_quenched():
    step = {"part.section.1.size": 75}
    whole = of(step, steel="42crmo4", medium="water")
    assert len(whole.risk.reasons) > len(of(steel="42crmo4", medium="water").risk.reasons)
    local = of(step, steel="42crmo4", route="local-torch", medium="water")
    even = of(steel="42crmo4", route="local-torch", medium="water")
    assert local.risk == even.risk


@given(st.floats(0.05, 5.0), st.floats(0.05, 5.0))
@settings(max_examples=few(15))
def test_a_larger_fillet_never_raises_cracking(radius, more):
    stepped = {"part.section.1.size": 20, "part.feature": []}
    sharp, easy = (
        of({**stepped, "part.section.1.fillet": r}).rate for r in (radius, radius + more)
    )
    assert (easy <= sharp).all()


def test_a_sharp_fillet_counts_and_an_unstated_one_does_not():
    stepped = {"part.section.1.size": 20, "part.feature": []}
    reasons = [
        {r.name for r in of(changes).risk.reasons}
        for changes in (stepped, {**stepped, "part.section.1.fillet": 0.2})
    ]
    assert "sharp-corner" not in reasons[0]
    assert "sharp-corner" in reasons[1]


def test_a_reason_to_crack_is_a_sentence_and_no_key():
    found = of(steel="100mncrw4", route="local-torch", medium="water", source="oxy-propane")
    words = crack_words(found.risk)
    assert words.startswith("high, 10 to 40 in 100 (the bath is too fierce for")
