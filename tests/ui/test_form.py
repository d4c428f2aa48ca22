import pytest

from selector.errors import Problem
from tests.form import field
from ui import form, session
from ui.field import FIELDS


@pytest.mark.parametrize(
    ("path", "name"),
    [
        ("part.section.2.size", "Section 2, size"),
        ("zone.1.hardness.min", "Zone 1, least hardness"),
        ("zone.1.hardness", "Zone 1"),
        ("load.torque", "Torque, with its unit"),
        ("safety_use", "If it breaks in use, what is at risk?"),
        ("zone", "Zones: what each stretch has to bear"),
        ("file a.toml", "file a.toml"),
    ],
)
def test_a_place_has_the_name_the_visitor_sees(path, name):
    assert form.place_name(path) == name


def test_a_fault_is_said_with_rule_value_and_next_step():
    said = form.sentence(Problem("load.axial", "at least 0", "-3 N", "Check it."))
    assert said == (r"Pull or push along it: must be at least 0; got \-3 N. Check it.")


def test_the_summary_names_the_first_three():
    problems = [Problem(f"part.section.{n}.size", "", "", "") for n in range(1, 6)]
    assert form.summary(problems) == (
        r"To be looked at \(5\)\: Section 1, size; Section 2, size; Section 3, size; …"
    )
    assert form.summary(()) == ""


def test_rows_are_added_and_removed(with_claw):
    with_claw.button(key="add/part.section").click().run()
    with_claw.text_input(key=field(with_claw, "part.section.3.size")).set_value("10 mm").run()
    with_claw.button(key="drop/part.section.1").click().run()
    sizes = [
        with_claw.text_input(key=field(with_claw, f"part.section.{n}.size")).value
        for n in (1, 2)
    ]
    assert sizes == ["25 mm", "10 mm"]
    assert with_claw.multiselect(key=field(with_claw, "zone.1.section")).value == []
    assert with_claw.multiselect(key=field(with_claw, "zone.2.section")).value == [1]


def test_an_answer_to_the_form_before_is_not_taken(monkeypatch):
    monkeypatch.setattr(session.st, "session_state", {})
    session.begin()
    key = session.widget("part.name", "of the form before")
    session.replace({"part": {"name": "claw"}})
    form._keep(key, "part.name", FIELDS["part.name"])
    assert session.draft()["part"]["name"] == "claw"
    key = session.widget("part.name", "cam")
    form._keep(key, "part.name", FIELDS["part.name"])
    assert session.draft()["part"]["name"] == "cam"
