"""What is in a bar of the rack is asked where it has a certificate."""

from catalog import load_catalog
from selector.requirement import requirement_from
from tests.form import field, said
from ui import part_form


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


def test_a_heat_source_is_asked_what_it_has():
    known = load_catalog()
    assert part_form.idle_of_heat({"source": "hand-torch"}, known) == {"chamber"}
    assert part_form.idle_of_heat({"source": "kiln"}, known) == {"gas_flow", "tip"}
    assert "gas_flow" in part_form.idle_of_heat({}, known)


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
