"""What seldom decides is asked too: which sections a load lies on, what is in a bar."""

from selector.requirement import requirement_from
from tests.form import field


def test_a_load_may_lie_on_some_sections(with_claw):
    over = with_claw.multiselect(key=field(with_claw, "load.torque_over"))
    over.set_value([2]).run()
    assert not with_claw.exception
    draft = with_claw.session_state["visit"].draft
    assert draft["load"]["torque_over"] == [2]
    assert requirement_from(draft).load.torque_over == (2,)
    with_claw.button(key="drop/part.section.1").click().run()
    assert with_claw.session_state["visit"].draft["load"]["torque_over"] == [1]


def test_no_section_named_means_all(with_claw):
    key = field(with_claw, "load.bending_over")
    with_claw.multiselect(key=key).set_value([1]).run()
    with_claw.multiselect(key=key).set_value([]).run()
    assert "bending_over" not in with_claw.session_state["visit"].draft["load"]


def test_a_bar_with_a_certificate_is_asked_for_its_analysis(with_claw):
    with_claw.switch_page("views/workshop.py").run()
    with_claw.button(key="add/workshop.stock").click().run()
    with_claw.text_input(key=field(with_claw, "workshop.stock.1.steel")).set_value("4140").run()
    carbon = field(with_claw, "workshop.stock.1.analysis.C")
    assert carbon not in {box.key for box in with_claw.number_input}
    evidence = field(with_claw, "workshop.stock.1.evidence")
    with_claw.selectbox(key=evidence).set_value("certificate").run()
    with_claw.number_input(key=carbon).set_value(0.42).run()
    assert not with_claw.exception
    bar = requirement_from(with_claw.session_state["visit"].draft).workshop.stock[0]
    assert bar.analysis.held_wt_pct() == {"C": 0.42}
