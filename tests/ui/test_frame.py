from pathlib import Path

from tests.form import said
from ui import frame

# Beyond it a view does more than to lay out. [lines]
LONGEST = 80


def test_no_view_is_longer_than_it_need_be():
    views = Path(frame.__file__).with_name("views").glob("*.py")
    long = {path.name: lines for path in views
            if (lines := path.read_text(encoding="utf-8").count("\n")) > LONGEST}  # fmt: skip
    assert long == {}


def test_every_view_is_in_the_way(page):
    assert len(frame.pages()) == 10
    links = [link.proto.label for link in page.get("page_link")]
    assert links[:2] == ["Start", "Part"]
    assert said(page)
