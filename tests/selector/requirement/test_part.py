import pytest
from pydantic import ValidationError

from selector.requirement.part import CUTS, Feature, Part, Section

ROUND = {"shape": "round", "size": 20, "length": 50}


@pytest.mark.parametrize(
    ("changes", "rule"),
    [
        ({"shape": "tube"}, "given a bore"),
        ({"shape": "flat"}, "given a width"),
        ({"bore": 20}, "smaller than size, 20 mm, or no wall is left"),
        ({"shape": "tube", "bore": "1 in"}, "smaller than size, 20 mm"),
        ({"shape": "flat", "width": 12, "bore": 15}, "smaller than width, 12 mm"),
        (
            {"shape": "flat", "size": 10, "width": 50, "bore": 16},
            "is a feature, kind cross-hole",
        ),
        ({"shape": "oval"}, "'round', 'square', 'hexagon', 'tube' or 'flat'"),
    ],
)
def test_an_impossible_section_is_refused(changes, rule):
    with pytest.raises(ValidationError, match=rule):
        Section.model_validate({**ROUND, **changes})


def test_a_round_may_be_bored():
    assert Section.model_validate({**ROUND, "bore": 8}).bore == 8


STEPPED = (ROUND, {**ROUND, "size": 30})


def holed(*features, sections=STEPPED):
    return Part.model_validate({"name": "pin", "section": sections, "feature": features})


@pytest.mark.parametrize("kind", sorted(CUTS))
def test_a_hole_that_cuts_the_part_in_two_is_refused(kind):
    for size in (20, "1 in"):
        with pytest.raises(ValidationError, match="smaller than section 1 is wide, 20 mm"):
            holed({"kind": kind, "at": 10, "size": size})
        assert holed({"kind": kind, "at": 60, "size": size})


def test_every_hole_at_fault_is_named_with_its_field():
    wide = {"kind": "cross-hole", "at": 10, "size": 40}
    with pytest.raises(ValidationError) as caught:
        holed(wide, {"kind": "thread", "at": 10, "size": 40}, wide)
    places = [fault["loc"] for fault in caught.value.errors()]
    assert places == [("feature", 0, "size"), ("feature", 2, "size")]


def test_a_flat_is_drilled_through_its_thickness():
    flat = {"shape": "flat", "size": 8, "width": 40, "length": 50}
    assert holed({"kind": "cross-hole", "at": 10, "size": 12}, sections=[flat])
    with pytest.raises(ValidationError, match="40 mm"):
        holed({"kind": "cross-hole", "at": 10, "size": 40}, sections=[flat])


@pytest.mark.parametrize(("at", "size", "place"), [
    (None, 5, 0), (None, None, 0), (None, 25, 1), (0, 5, 0), (50, 5, 0), (51, 5, 1),
    (5000, 5, 1),
])  # fmt: skip
def test_where_a_feature_lies(at, size, place):
    feature = Feature(kind="cross-hole", at=at, size=size)
    assert holed().place(feature) == place


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


def toothed(name, shape, **more):
    section = {
        "shape": shape,
        "size": 3,
        "length": 20,
        **({"width": 30} if shape == "flat" else {}),
    }
    return Part(name=name, section=(section,), feature=({"kind": "teeth", "at": 1},), **more)


def test_teeth_on_a_flat_mesh_only_where_the_part_is_called_so():
    for part in (toothed("Wheel", "round"), toothed("Kick-start quadrant", "flat")):
        assert part.is_toothed
        assert not part.has_prongs
    for part in (toothed("Pricking iron", "flat"), toothed("Planemaker's float", "flat")):
        assert part.has_prongs
        assert not part.is_toothed
    assert toothed("Sector plate", "flat", shape_class="gear").is_toothed
