import pytest

from selector.errors import Problem
from ui import form


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


def test_a_fault_is_told_with_rule_value_and_next_step():
    told = form.sentence(Problem("load.axial", "at least 0", "-3 N", "Check it."))
    assert told == (r"Pull or push along it: must be at least 0; got \-3 N. Check it.")


def test_the_summary_names_the_first_three():
    problems = [Problem(f"part.section.{n}.size", "", "", "") for n in range(1, 6)]
    assert form.summary(problems) == (
        r"To be looked at \(5\)\: Section 1, size; Section 2, size; Section 3, size; …"
    )
    assert form.summary(()) == ""


def test_rows_are_added_and_removed(with_claw):
    with_claw.button(key="add/part.section").click().run()
    with_claw.text_input(key="part/part.section.3.size").set_value("10 mm").run()
    with_claw.button(key="drop/part.section.1").click().run()
    sizes = [with_claw.text_input(key=f"part/part.section.{n}.size").value for n in (1, 2)]
    assert sizes == ["25 mm", "10 mm"]
    assert with_claw.multiselect(key="part/zone.1.section").value == []
    assert with_claw.multiselect(key="part/zone.2.section").value == [1]
