import tomllib

import pytest

from catalog import load_catalog
from catalog.example import example_names, example_text
from tests.ui.conftest import ASKED
from ui import draft as drafts
from ui import meanwhile

BUSH = {"shape": "tube", "size": "16 mm", "bore": "8 mm", "length": "20 mm"}


def test_what_is_still_wanted_is_filled_in_for_the_eye_alone():
    draft = drafts.blank()
    draft["part"]["section"][0] |= {"size": "20 mm", "length": "60 mm"}
    requirement = meanwhile.so_far(draft)
    assert requirement.part.length_mm == 60
    assert "safety_use" not in draft


def wrong(claw, place, value):
    """The claw with one answer that breaks a rule."""
    block, _, row = place.partition(" + ")
    if row:
        drafts.rows(claw, block).append(value)
    else:
        drafts.put(claw, place, value)
    return claw


@pytest.mark.parametrize(
    ("place", "value"),
    [
        ("limit.budget", "cheap"),
        ("load.torque", "90"),
        ("load.impact", "soft"),
        ("zone.1.hardness.min", "wide"),
        ("zone.1.hardness.max", "30 HRC"),  # below what it starts from
        ("zone.1.depth", "400 mm"),
        ("zone.1.wear", "rust"),
        ("part.section.1.fillet", "round"),
        ("part.section.1.bore", "400 mm"),
        ("part.feature + row", {}),  # a hole that was just added
        ("part.feature + row", {"kind": "keyway", "at": "4 m"}),
        ("workshop.heat + row", {"source": "oxy-propane", "ceiling": "hot"}),
        ("workshop.only_stock", True),
    ],
)
def test_a_wrong_answer_leaves_the_part_in_sight(claw, place, value):
    claw["workshop"].pop("stock", None)
    requirement = meanwhile.so_far(wrong(claw, place, value))
    assert requirement is not None
    assert [s.size for s in requirement.part.section] == [s.size for s in ASKED.part.section]


@pytest.mark.parametrize("value", ["wide", "-3 mm", None])
def test_without_a_size_there_is_no_part_to_show(claw, value):
    assert meanwhile.so_far(wrong(claw, "part.section.1.size", value)) is None


def test_a_row_that_is_right_is_kept_beside_a_wrong_one(claw):
    hole = {"kind": "cross-hole", "at": "20 mm", "size": "4 mm"}
    claw["part"]["feature"] = [{}, hole, *[{}] * 9]
    assert [f.kind for f in meanwhile.so_far(claw).part.feature] == ["cross-hole"]


def test_what_a_zone_suffers_and_how_badly_must_be_said():
    draft = {"part": {"section": [BUSH] * 3}, "zone": [
        {"section": [1]}, {"section": [2], "wear": "sliding"}, {"section": [3], "wear": "none"},
    ]}  # fmt: skip
    assert meanwhile.duties_open(draft) == ("zone.1.wear", "zone.2.severity")


def test_how_badly_is_asked_of_a_form_and_left_to_a_file(claw):
    del claw["zone"][0]["severity"]
    known = load_catalog()
    assert drafts.checked(claw, known)[0] is not None
    requirement, problems = meanwhile.answered_fully(claw, known)
    assert requirement is None
    assert [(p.field, p.got) for p in problems] == [("zone.1.severity", "nothing")]
    meant = meanwhile.spelled_out(claw)
    assert meanwhile.answered_fully(meant, known) == (drafts.checked(claw, known)[0], ())


def test_a_bath_of_a_file_is_chosen_in_the_form_however_it_is_written(claw):
    claw["workshop"]["bath"] = [{"medium": "Motor oil"}, 3, {"medium": 4}]
    meant = meanwhile.spelled_out(claw)["workshop"]["bath"]
    assert meant == [{"medium": "motor-oil"}, 3, {"medium": 4}]


@pytest.mark.parametrize(
    "odd", [{}, {"zone": 3}, {"zone": [3, {"wear": []}]}, {"workshop": {"heat": 3}}]
)
def test_a_file_of_any_shape_is_spelled_out(odd):
    assert meanwhile.spelled_out(odd).keys() == odd.keys()


@pytest.mark.parametrize("name", example_names())
def test_an_example_leaves_no_duty_open(name):
    assert meanwhile.duties_open(tomllib.loads(example_text(name))) == ()
