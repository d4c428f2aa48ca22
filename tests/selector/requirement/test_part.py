import pytest
from pydantic import ValidationError

from selector.requirement.part import Part, Section

ROUND = {"shape": "round", "size": 20, "length": 50}


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"shape": "tube"}, "given a bore"),
        ({"shape": "flat"}, "given a width"),
        ({"bore": 20}, "bore 20 mm is not smaller than size 20 mm"),
        ({"shape": "tube", "bore": "1 in"}, "bore 25.4 mm is not smaller than size 20 mm"),
        ({"shape": "oval"}, "'round', 'square', 'hexagon', 'tube' or 'flat'"),
    ],
)
def test_an_impossible_section_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Section.model_validate({**ROUND, **changes})


def test_a_round_may_be_bored():
    assert Section.model_validate({**ROUND, "bore": 8}).bore == 8


def test_length_is_the_sum_of_the_sections():
    part = Part.model_validate({"name": "pin", "section": [ROUND, {**ROUND, "length": "1 in"}]})
    assert part.length_mm == pytest.approx(75.4)
    assert part.quantity == 1


def test_a_feature_may_lie_at_the_working_end():
    part = Part.model_validate(
        {"name": "pin", "section": [ROUND], "feature": [{"kind": "edge", "at": 0}]}
    )
    assert part.feature[0].at == 0


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"section": []}, "at least 1 item"),
        ({"section": [ROUND] * 31}, "at most 30 items"),
        ({"quantity": 0}, "greater than or equal to 1"),
        ({"quantity": 100_001}, "less than or equal to 100000"),
        ({"name": ""}, "at least 1 character"),
        ({"feature": [{"kind": "dimple"}]}, "dimple"),
        ({"stock_removal": -0.1}, "between 0 and 5000 mm"),
        ({"finish_after": ["scraper"]}, "scraper"),
    ],
)
def test_an_impossible_part_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Part.model_validate({"name": "pin", "section": [ROUND], **changes})
