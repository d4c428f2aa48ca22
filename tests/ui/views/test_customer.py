from tests.form import said


def test_the_letter_can_be_changed_and_strange_figures_are_named(advised, advice):
    advised.switch_page("views/customer.py").run()
    assert not advised.exception
    text = advised.text_area[0].value
    assert advice.part in text
    advised.text_area[0].set_value(text + "\n[Our promise]\nIt lasts 777 years.\n").run()
    assert not advised.exception
    assert "777" in said(advised)
    advised.radio(key="letter/tone").set_value("brief").run()
    assert len(advised.text_area[0].value) < len(text)
