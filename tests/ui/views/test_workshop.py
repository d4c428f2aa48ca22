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


def test_prices_of_ones_own_are_given_row_by_row(blank):
    blank.switch_page("views/workshop.py").run()
    assert "invented" in said(blank)
    blank.button(key="add/workshop.price").click().run()
    blank.text_input(key=field(blank, "workshop.price.1.steel")).set_value("EN 8").run()
    blank.text_input(key=field(blank, "workshop.price.1.per_kg")).set_value("3.5").run()
    assert not blank.exception
    kept = blank.session_state["visit"].draft["workshop"]["price"]
    assert kept == [{"steel": "EN 8", "per_kg": 3.5}]
