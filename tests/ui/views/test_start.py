from tests.form import said


def test_three_doors_three_examples_and_what_was_worked_on(page):
    doors = [b for b in page.button if (b.key or "").startswith("door/")]
    assert len(doors) == 3
    page.button(key="start/blank").click().run()
    page.switch_page("views/start.py").run()
    assert "Go on with" in said(page)
