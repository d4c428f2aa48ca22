from catalog import load_catalog
from tests.form import said


def test_any_steel_is_found_with_its_curve_and_sources(page):
    page.switch_page("views/steels.py").run()
    page.text_input(key="steels/name").set_value("silver steel").run()
    assert not page.exception
    assert "115CrV3" in page.header[0].value
    assert "tw-curve" in said(page)
    page.text_input(key="steels/name").set_value("zzzzzz").run()
    assert "No steel is called zzzzzz" in said(page)


def test_a_slip_of_typing_is_met_with_the_nearest_names(page):
    page.switch_page("views/steels.py").run()
    page.text_input(key="steels/name").set_value("42CrMo5").run()
    near = load_catalog().look_up("42CrMo5").near
    assert "Did you mean" in said(page)
    page.button(key=f"steels/name/near/{near[0]}").click().run()
    assert not page.exception
    assert load_catalog().find(near[0])[0].spoken in page.header[0].value.replace("\\", "")
