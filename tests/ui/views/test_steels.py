from tests.form import said


def test_any_steel_is_found_with_its_curve_and_sources(page):
    page.switch_page("views/steels.py").run()
    page.text_input(key="steels/name").set_value("silver steel").run()
    assert not page.exception
    assert "115CrV3" in page.header[0].value
    assert "tw-curve" in said(page)
    page.text_input(key="steels/name").set_value("zzz").run()
    assert "0 of" in said(page)
