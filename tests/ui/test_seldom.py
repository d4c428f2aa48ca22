"""What seldom decides is asked too, once its fold is open."""

from selector.requirement import requirement_from
from tests.form import field, unfold


def test_a_load_may_lie_on_some_sections(with_claw):
    unfold(with_claw, "rest")
    over = with_claw.multiselect(key=field(with_claw, "load.torque_over"))
    over.set_value([2]).run()
    assert not with_claw.exception
    draft = with_claw.session_state["visit"].draft
    assert draft["load"]["torque_over"] == [2]
    assert requirement_from(draft).load.torque_over == (2,)
    with_claw.button(key="drop/part.section.1").click().run()
    assert with_claw.session_state["visit"].draft["load"]["torque_over"] == [1]


def test_no_section_named_means_all(with_claw):
    unfold(with_claw, "rest")
    key = field(with_claw, "load.bending_over")
    with_claw.multiselect(key=key).set_value([1]).run()
    with_claw.multiselect(key=key).set_value([]).run()
    assert "bending_over" not in with_claw.session_state["visit"].draft["load"]


def test_a_folded_question_is_asked_when_it_is_opened(with_claw):
    fillet = field(with_claw, "part.section.1.fillet")
    assert fillet not in {box.key for box in with_claw.text_input}
    unfold(with_claw, "sections")
    assert fillet in {box.key for box in with_claw.text_input}


def test_a_fault_opens_its_fold(page, claw_text):
    text = claw_text.replace("[load]", '[limit]\nservice_temperature = "warm"\n[load]')
    page.file_uploader(key="start/file").set_value(("claw.toml", text.encode(), "text/plain"))
    page.run()
    assert not page.exception
    key = field(page, "limit.service_temperature")
    assert page.text_input(key=key).value == "warm"
