from tests.form import field, said


def test_a_workshop_is_said_row_by_row(blank):
    blank.switch_page("views/workshop.py").run()
    blank.button(key="add/workshop.heat").click().run()
    source = field(blank, "workshop.heat.1.source")
    blank.selectbox(key=source).set_value("oxy-propane").run()
    assert not blank.exception
    assert blank.session_state["visit"].draft["workshop"]["heat"] == [{"source": "oxy-propane"}]
    blank.text_input(key="workshop/name").set_value("two\u2028lines").run()
    blank.button(key="workshop/keep").click().run()
    assert "one line" in said(blank)
