import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.gate import Gate
from selector.option.mildest_bath import (
    but_for_bath,
    hardens_fully,
    mild_first,
    needless,
)
from tests.dog import asked, only, work

CATALOG = load_catalog()
PASS = Gate("hard_enough", "pass", "hard", 1.0)


def baths(became):
    """Return by bath what became of the local torch hardening of the one steel."""
    kept = {o.treatment.medium.slug: "kept" for o in became.options if local(o.treatment)}
    return kept | {
        r.treatment.medium.slug: r.gate.text for r in became.rejected if local(r.treatment)
    }


def local(treatment):
    return treatment.route.slug == "local-torch" and treatment.medium is not None


def test_oil_comes_before_warm_water_and_no_bath_before_both():
    given = [work("42crmo4", medium=m) for m in ("warm-water", "oil")]
    bought = work("42crmo4", "as-bought", None)
    ordered = mild_first([*given, bought], asked().workshop)
    assert [w.medium.slug if w.medium else None for w in ordered] == [None, "oil", "warm-water"]


@pytest.mark.parametrize(
    ("gate", "fully"),
    [
        (Gate("depth", "pass", "deep", 0.97), True),
        (Gate("depth", "marginal", "hardly deep", 0.7), False),
        (Gate("strength", "fail", "weak", 0.2), False),
        (Gate("cracking", "fail", "cracks", 0.6), True),
        (Gate("movement", "marginal", "bends", 0.8), True),
    ],
)
def test_only_what_a_faster_quench_mends_counts(gate, fully):
    assert hardens_fully(work("42crmo4", medium="oil"), [PASS, gate]) is fully


def test_a_quench_makes_a_case_no_deeper_unless_it_has_none():
    shallow, none = (
        Gate("depth", "marginal", "shallow", 0.6),
        Gate("depth", "fail", "none", 0.1),
    )
    assert hardens_fully(work("16mncr5", "case-compound"), [PASS, shallow])
    assert not hardens_fully(work("16mncr5", "case-compound"), [PASS, none])
    assert not hardens_fully(work("16mncr5", "through-torch"), [PASS, shallow])


def test_a_part_left_as_bought_is_never_hardened_fully():
    assert not hardens_fully(work("42crmo4", "as-bought", None), [PASS])


def test_bar_and_route_tell_treatments_apart_and_the_bath_does_not():
    oil, water = (work("42crmo4", medium=m) for m in ("oil", "warm-water"))
    assert but_for_bath(oil) == but_for_bath(water)
    assert but_for_bath(oil) != but_for_bath(work("c45", medium="oil"))


def test_the_reason_names_both_baths():
    oil, water = (work("42crmo4", medium=m) for m in ("oil", "warm-water"))
    gate = needless(water, oil)
    assert gate.verdict == "fail"
    assert gate.text.startswith("medium or slow quench oil hardens it as asked")
    assert "warm water (30 to 60 °C) would only add" in gate.text


def test_where_oil_hardens_the_dog_warm_water_is_not_weighed():
    became = baths(advise(asked(), only("42crmo4")))
    assert became["oil"] == "kept"
    assert "only add cracks" in became["warm-water"]


def test_where_oil_leaves_the_dog_soft_water_is_weighed():
    became = baths(advise(asked(), only("c45"), route="local-torch"))
    assert became["oil"] != "kept"
    assert "only add cracks" not in became["warm-water"]
