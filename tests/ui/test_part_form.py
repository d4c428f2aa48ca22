"""What is asked where it matters, and what seldom decides once its fold is open."""

from selector.requirement import requirement_from
from tests.form import field, said, unfold
from ui import part_form


def test_a_bar_with_a_certificate_is_asked_for_its_analysis(with_claw):
    with_claw.switch_page("views/workshop.py").run()
    with_claw.button(key="add/workshop.stock").click().run()
    with_claw.text_input(key=field(with_claw, "workshop.stock.1.steel")).set_value("4140").run()
    carbon = field(with_claw, "workshop.stock.1.analysis.C")
    assert carbon not in {box.key for box in with_claw.text_input}
    evidence = field(with_claw, "workshop.stock.1.evidence")
    with_claw.selectbox(key=evidence).set_value("certificate").run()
    with_claw.text_input(key=carbon).set_value("0.42").run()
    assert not with_claw.exception
    bar = requirement_from(with_claw.session_state["visit"].draft).workshop.stock[0]
    assert bar.analysis.held_wt_pct() == {"C": 0.42}


def test_what_has_an_answer_is_asked_whatever_it_is_of(with_claw):
    draft = with_claw.session_state["visit"].draft
    assert draft["workshop"]["heat"][0]["source"] == "oxy-propane"
    draft["workshop"]["heat"][0]["chamber"] = "200 mm"
    with_claw.switch_page("views/workshop.py").run()
    keys = {box.key.rpartition("/")[2] for box in with_claw.text_input}
    assert {"workshop.heat.1.chamber", "workshop.heat.1.gas_flow"} <= keys


def test_a_part_that_lives_depend_on_is_said_to_be_passed_on_at_once(with_claw):
    assert "passed on to qualified people" not in said(with_claw)
    assert not part_form.is_referred(with_claw.session_state["visit"].draft)
    with_claw.radio(key=field(with_claw, "safety_use")).set_value("brake").run()
    assert "passed on to qualified people" in said(with_claw)


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
