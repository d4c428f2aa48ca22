from tests.form import said


def test_why_not_takes_any_name(advised):
    advised.text_input(key="why-not/name").set_value("1.2379").run()
    assert not advised.exception
    assert "Out." in said(advised) or "Place" in said(advised)
    advised.text_input(key="why-not/name").set_value("<b>none</b>").run()
    assert "No steel and no route is called" in said(advised)
