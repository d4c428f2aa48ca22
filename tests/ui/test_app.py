import pytest

VIEWS = {"part": "Part", "choice": None, "why_not": None, "cautions": None}


@pytest.mark.parametrize("view", VIEWS)
def test_each_view_starts_without_advice(page, view):
    page.switch_page(f"views/{view}.py").run()
    assert not page.exception
    if view == "part":
        assert page.title[0].value == "Part"
    else:
        assert "no advice yet" in page.info[0].value


@pytest.mark.parametrize(
    ("view", "title"),
    [("part", "Part"), ("choice", "claw"), ("why_not", "Why not"), ("cautions", "Cautions")],
)
def test_each_view_starts_with_advice(advised, view, title):
    advised.switch_page(f"views/{view}.py").run()
    assert not advised.exception
    assert advised.title[0].value == title
