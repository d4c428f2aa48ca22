import pytest

from catalog import load_catalog
from selector.job.bath_check import bath_problems, is_too_harsh
from tests.dog import asked

CATALOG = load_catalog()
MEDIA = CATALOG.media


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


@pytest.mark.parametrize(
    ("medium", "at_c", "rule"),
    [
        ("hot-oil", 20, "between 120 and 205 °C in martempering oil"),
        ("hot-oil", 210, "between 120 and 205 °C in martempering oil"),
        ("hot-oil", 230, "at most 222 °C in martempering oil"),
        ("hot-salt", 20, "between 177 and 400 °C in "),
        ("oil", 150, "at most 142 °C in "),
        ("hot-oil", 160, None),
        ("oil", 70, None),
    ],
)
def test_a_bath_is_kept_where_its_medium_stands_it(medium, at_c, rule):
    found = [*map(str, bath_problems(baths({"medium": medium, "temperature": at_c}), MEDIA))]
    assert len(found) == (rule is not None)
    for problem in found:
        assert problem.startswith(f"workshop.bath.1.temperature must be {rule}")
        assert f"{at_c} °C" in problem


@pytest.mark.parametrize(
    ("steel", "medium", "harsh"),
    [
        ("100mncrw4", "water", True),
        ("100mncrw4", "oil", False),
        ("x153crmov12", "brine", True),
        ("c45", "water", False),
        ("s235", "water", False),
    ],
)
def test_water_is_too_harsh_for_steel_made_for_oil_or_air(steel, medium, harsh):
    assert is_too_harsh(CATALOG.steels[steel], CATALOG.media[medium]) is harsh
    assert not is_too_harsh(CATALOG.steels[steel], None)
