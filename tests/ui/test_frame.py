from tests.form import said
from ui import frame


def test_every_view_is_in_the_way(page):
    assert len(frame.pages()) == 10
    links = [link.proto.label for link in page.get("page_link")]
    assert links[:2] == ["Start", "Part"]
    assert said(page)
