import json

import pytest

from tests.form import field
from ui.draft import ready


def test_safety_use_must_be_answered(page):
    page.button(key="part/advise").click().run()
    assert page.title[0].value == "Part"
    assert page.error[0].value == "Please answer: If it breaks in use, what is at risk?"


@pytest.mark.parametrize(
    ("key", "typed", "said"),
    [
        ("part.section.1.size", "wide", "Section 1, size: must be a length written as"),
        ("part.section.1.size", "25 kg", "Section 1, size: must be a length in a unit"),
        ("part.section.1.size", "", "Please answer: Section 1, size"),
        ("part.section.2.length", "-4", "Section 2, length: must be between"),
        ("load.torque", "90", "Torque, with its unit: must be a torque with its unit"),
        ("zone.1.hardness.min", "12 HRC", "Zone 1, least hardness: must be 20 HRC or more"),
        ("part.name", "", "Please answer: Name"),
    ],
)
def test_a_bad_answer_is_said_and_kept(with_claw, key, typed, said):
    with_claw.text_input(key=field(with_claw, key)).set_value(typed).run()
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert with_claw.title[0].value == "Part"
    assert with_claw.error[0].value.startswith(said)
    assert with_claw.text_input(key=field(with_claw, key)).value == typed
    assert with_claw.text_input(key=field(with_claw, "part.section.2.size")).value == "25 mm"


def test_an_answer_put_right_is_no_longer_said(with_claw):
    with_claw.text_input(key=field(with_claw, "load.torque")).set_value("90").run()
    assert with_claw.error
    with_claw.text_input(key=field(with_claw, "load.torque")).set_value("90 lb ft").run()
    assert not with_claw.error


def test_bad_input_leaves_the_last_advice(advised):
    advised.switch_page("views/part.py").run()
    advised.text_input(key=field(advised, "part.name")).set_value("").run()
    advised.button(key="part/advise").click().run()
    assert advised.error
    advised.switch_page("views/choice.py").run()
    assert advised.title[0].value == "claw"


@pytest.mark.parametrize(
    "typed", ["$x^2$ :red[a]", "'\"\\", "\x00", "9" * 400, "½ in", "−3", "nan", "1e999"]
)
def test_odd_text_breaks_nothing(with_claw, typed):
    for path in ("part.name", "part.section.1.size"):
        with_claw.text_input(key=field(with_claw, path)).set_value(typed)
    with_claw.run()
    assert not with_claw.exception
    assert with_claw.error[-1].value.startswith("Section 1, size: must be")
    assert with_claw.text_input(key=field(with_claw, "part.section.1.size")).value == typed


def test_a_kept_form_can_be_handed_back(with_claw):
    kept = json.dumps(ready(with_claw.session_state["draft"])).encode()
    with_claw.button(key="drop/zone.1").click().run()
    with_claw.file_uploader(key="start/file").set_value(("r.json", kept, "text/plain")).run()
    assert not with_claw.error
    assert with_claw.selectbox(key=field(with_claw, "zone.1.wear")).value == "sliding"
    assert json.dumps(ready(with_claw.session_state["draft"])).encode() == kept
