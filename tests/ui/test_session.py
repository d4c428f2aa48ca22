import pytest

from catalog import load_catalog
from catalog.example import example_names
from tests.form import field
from ui import session
from ui.draft import checked


def test_an_example_leaves_safety_use_open(page):
    assert page.radio(key=field(page, "safety_use")).value is None
    assert page.text_input(key=field(page, "part.section.1.size")).value == "28 mm"


@pytest.mark.parametrize("name", example_names())
def test_an_example_lacks_nothing_but_safety_use(name):
    requirement, problems = checked(session.example(name), load_catalog())
    assert requirement is None
    assert [problem.field for problem in problems] == ["safety_use"]


def test_a_blank_form_has_one_row_of_what_is_needed():
    draft = session.blank()
    assert len(draft["part"]["section"]) == len(draft["zone"]) == 1


def test_what_is_typed_outlives_a_look_at_another_view(page):
    page.text_input(key=field(page, "part.name")).set_value("bit").run()
    page.text_input(key=field(page, "part.section.1.size")).set_value("half a foot").run()
    page.switch_page("views/cautions.py").run()
    page.switch_page("views/part.py").run()
    assert page.text_input(key=field(page, "part.name")).value == "bit"
    assert page.text_input(key=field(page, "part.section.1.size")).value == "half a foot"


def test_loading_an_example_replaces_the_form(with_claw):
    with_claw.selectbox(key=session.EXAMPLE).set_value(example_names()[-1]).run()
    with_claw.button(key="start/load").click().run()
    assert with_claw.text_input(key=field(with_claw, "part.name")).value != "claw"
    assert with_claw.radio(key=field(with_claw, "safety_use")).value is None
