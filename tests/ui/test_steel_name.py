from tests.form import said
from ui import steel_name


def test_a_name_that_nothing_carries_gets_the_nearest_to_take(page):
    page.switch_page("views/steels.py").run()
    page.text_input(key="steels/name").set_value("115CrV4").run()
    assert "No steel is called 115CrV4. Did you mean" in said(page)
    page.button(key="steels/name/near/115CrV3").click().run()
    assert page.text_input(key="steels/name").value == "115CrV3"
    assert "silver steel" in page.header[0].value
    assert steel_name.ask is not None
