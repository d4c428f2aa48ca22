import pytest

from catalog import load_catalog
from selector.flame.bath import ROOM_MM
from selector.flame.case import follow
from selector.flame.change import first_change
from selector.flame.outcome import Setup
from selector.job.job import resolved
from tests.dog import asked, work

CATALOG = load_catalog()


def dipped(volume, medium="oil"):
    kept = [{"medium": medium, **({"volume": volume} if volume else {})}]
    job = resolved(asked({"workshop.bath": kept}), CATALOG, count=1)
    treatment = work("42crmo4", "local-torch", medium, "oxy-propane")
    out = follow(treatment, job, Setup(past_mm=12.5), job.leading)
    return out, treatment, job


def check(volume, medium="oil"):
    return next((c for c in dipped(volume, medium)[0].checks if c.name == "bath"), None)


def test_a_mug_of_oil_does_not_take_a_hot_25_mm_end():
    """ASM Handbook vol. 4 (from memory): some 8 litres of oil for each kilogram of steel."""
    found = check("0.3 l")
    assert not found.met
    assert "too few for so much heat" in found.text


def test_a_bath_too_shallow_for_the_hot_end_is_told():
    found = check("0.5 l", "water")
    assert not found.met
    assert "must go right under" in found.text
    assert ROOM_MM > 0.0


@pytest.mark.parametrize(("volume", "medium"), [("12 l", "oil"), ("15 l", "water")])
def test_a_workshop_s_bucket_takes_it(volume, medium):
    assert check(volume, medium).met


def test_a_bath_of_unknown_volume_is_not_judged():
    assert check(None) is None


def test_more_of_it_is_the_one_change():
    out, treatment, job = dipped("0.3 l")
    assert {c.name for c in out.failed} == {"bath"}
    change = first_change(treatment, job, job.leading, out)
    assert "in a deep vessel" in change.text
    assert not change.at_hand
