from catalog import load_catalog
from selector.job.bath_check import bath_problems
from tests.dog import asked

MEDIA = load_catalog().media


def baths(*kept):
    return asked({"workshop.bath": list(kept)}).workshop


def test_a_bath_too_hot_is_named_by_its_place_in_the_file():
    oil, water = (
        {"medium": medium, "temperature": heat}
        for medium, heat in (("oil", "900 degC"), ("water", "120 degC"))
    )
    first, second = map(str, bath_problems(baths({"medium": "water"}, oil, water), MEDIA))
    assert first.startswith("workshop.bath.2.temperature must be between 0 and 200 °C in oil")
    assert second.startswith("workshop.bath.3.temperature must be between 0 and 99 °C in water")


def test_baths_that_can_be_computed_or_are_not_described_pass():
    kept = baths({"medium": "water"}, {"medium": "hot-salt", "temperature": 300})
    assert bath_problems(kept, MEDIA) == []


def test_a_medium_of_ones_own_is_judged_by_its_kind():
    mine = {**MEDIA, "can-of-oil": MEDIA["oil"]}
    kept = baths({"medium": "can-of-oil", "temperature": 250}, {"medium": "unheard-of"})
    (problem,) = map(str, bath_problems(kept, mine))
    assert problem.startswith("workshop.bath.1.temperature must be between 0 and 200 °C in oil")
