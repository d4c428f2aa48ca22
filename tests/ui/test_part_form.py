"""What is in a bar of the rack is asked where it has a certificate."""

from selector.requirement import requirement_from
from tests.form import field


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
