import pytest

from catalog import load_catalog
from selector.errors import Problem
from ui import draft as drafts
from ui.form import choices


def test_put_and_read_meet_at_any_depth():
    draft = {"zone": [{}, {}]}
    drafts.put(draft, "zone.2.hardness.min", "50 HRC")
    assert draft == {"zone": [{}, {"hardness": {"min": "50 HRC"}}]}
    assert drafts.read(draft, "zone.2.hardness.min") == "50 HRC"
    assert drafts.read(draft, "zone.1.hardness.min") is None


@pytest.mark.parametrize("blank", [None, ""])
def test_a_blank_answer_is_taken_out(blank):
    draft = {"load": {"torque": "90 N m"}}
    drafts.put(draft, "load.torque", blank)
    assert draft == {"load": {}}


def test_an_empty_list_is_an_answer():
    draft = {"workshop": {}}
    drafts.put(draft, "workshop.check", [])
    assert drafts.ready(draft)["workshop"]["check"] == []


def test_ready_leaves_empty_tables_out_and_the_draft_alone():
    draft = {"zone": [{"wear": "none", "hardness": {}}]}
    assert drafts.ready(draft)["zone"] == [{"wear": "none"}]
    assert draft == {"zone": [{"wear": "none", "hardness": {}}]}


def test_zones_keep_their_sections_when_one_goes(claw):
    drafts.drop_row(claw, "part.section", 1)
    assert [zone["section"] for zone in claw["zone"]] == [[], [1]]


def test_a_right_draft_becomes_a_requirement(claw):
    requirement, problems = drafts.checked(claw, load_catalog())
    assert problems == ()
    assert requirement.load.torque == pytest.approx(122.02, abs=0.01)


@pytest.mark.parametrize(
    ("path", "value", "field"),
    [
        ("part.section.1.size", "wide", "part.section.1.size"),
        ("load.torque", 90.0, "load.torque"),
        ("workshop.heat.1.source", "sun", "workshop.heat.1.source"),
        ("zone.1.hardness.min", "60 HRC", "zone.1"),
        ("zone.1.hardness.min", "12 HRC", "zone.1.hardness.min"),
    ],
)
def test_a_fault_is_placed_at_its_field(claw, path, value, field):
    drafts.put(claw, path, value)
    requirement, problems = drafts.checked(claw, load_catalog())
    assert requirement is None
    assert [drafts.place_of(problem) for problem in problems] == [field]


def test_a_fault_of_the_whole_has_no_place():
    assert drafts.place_of(Problem("requirement", "whole", "half", "")) == ""


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("workshop.heat.1.source", "sun"),
        ("workshop.turns_part", "no"),
        ("part.quantity", "3"),
        ("part.quantity", True),
        ("zone.1.section", [7]),
        ("part.section.1.shape", 4),
        ("workshop.check", "file"),
    ],
)
def test_what_the_form_cannot_show_is_a_misfit(claw, path, value):
    known = choices(claw, load_catalog())
    assert drafts.misfits(claw, known) == ()
    drafts.put(claw, path, value)
    assert [problem.field for problem in drafts.misfits(claw, known)] == [path]


def test_answers_beyond_the_form_are_listed(claw):
    drafts.put(claw, "workshop.skill.bias", 2.0)
    assert drafts.beyond(claw) == ("workshop.skill.bias",)
