import pytest

from catalog import load_catalog
from ui import draft as drafts


def test_put_and_read_meet_at_any_depth():
    draft = {"zone": [{}, {}]}
    drafts.put(draft, "zone.2.hardness.min", "50 HRC")
    assert draft == {"zone": [{}, {"hardness": {"min": "50 HRC"}}]}
    assert drafts.read(draft, "zone.2.hardness.min") == "50 HRC"
    assert drafts.read(draft, "zone.1.hardness.min") is None
    assert drafts.read(draft, "zone.3.wear") is None


@pytest.mark.parametrize("blank", [None, ""])
def test_a_blank_answer_is_taken_out(blank):
    draft = {"load": {"torque": "90 N m"}}
    drafts.put(draft, "load.torque", blank)
    assert draft == {"load": {}}


def test_an_empty_list_is_an_answer():
    draft = {"workshop": {}}
    drafts.put(draft, "workshop.check", [])
    assert drafts.whole(draft)["workshop"]["check"] == []


def test_a_table_goes_with_its_last_answer_but_no_row_and_no_obligatory_one():
    draft = {"zone": [{"hardness": {"min": "50 HRC"}}], "load": {"torque": "9 N m"}}
    for path in ("zone.1.hardness.min", "load.torque"):
        drafts.put(draft, path, "")
    assert draft == {"zone": [{}], "load": {}}


def test_a_whole_draft_has_all_that_is_obligatory_and_leaves_the_draft_alone():
    draft = {"part": {"name": "pin"}}
    assert drafts.whole(draft) == {
        "part": {"name": "pin", "section": []}, "zone": [], "load": {}, "limit": {},
        "workshop": {"heat": []},
    }  # fmt: skip
    assert draft == {"part": {"name": "pin"}}


def test_a_mate_that_is_there_must_be_named(claw):
    drafts.put(claw, "zone.1.mate.hardness", "50 HRC")
    _, problems = drafts.checked(claw, load_catalog())
    assert [problem.field for problem in problems] == ["zone.1.mate.material"]


def test_zones_keep_their_sections_when_one_goes(claw):
    drafts.drop_row(claw, "part.section", 1)
    assert [(zone["section"], zone["wear"]) for zone in claw["zone"]] == [([1], "none")]


def test_loads_keep_their_sections_when_one_goes(claw):
    claw["load"] |= {"torque_over": [1, 2], "bending_over": [1]}
    drafts.drop_row(claw, "part.section", 1)
    assert claw["load"]["torque_over"] == [1]
    assert "bending_over" not in claw["load"]


def test_a_section_may_have_no_zone(claw):
    drafts.rows(claw, "part.section").append({"shape": "round"})
    assert [drafts.zone_of(claw, section) for section in (1, 2, 3)] == [1, 2, None]


def test_a_right_draft_becomes_a_requirement(claw):
    requirement, problems = drafts.checked(claw, load_catalog())
    assert problems == ()
    assert requirement.load.torque == pytest.approx(122.02, abs=0.01)
