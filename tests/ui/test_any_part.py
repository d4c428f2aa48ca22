"""Any part that can be asked about is shown by every view, whatever comes out."""

import pytest
from streamlit.testing.v1 import AppTest

from selector.requirement import requirement_from
from tests.dog import varied
from tests.ui.conftest import APP
from tests.whole_requirement import catalog_for, draft_number
from ui import cached, store

VIEWS = (
    "part", "choice", "torch", "head_to_head", "firm", "bench", "customer", "workshop",
)  # fmt: skip
PARTS = {
    "for a brake": varied({"safety_use": "brake"}),
    "nothing to heat with": varied({"workshop.heat": [], "workshop.bath": []}),
    "one zone on both sections": varied({"zone": [{"section": [1, 2], "wear": "sliding"}]}),
    "any, 8": draft_number(8),
    "any, 23": draft_number(23),
}


@pytest.mark.parametrize("name", PARTS)
def test_every_view_shows_it(name, monkeypatch):
    # A few steels besides those of the rack: how many are listed is no matter of a view.
    few = catalog_for(requirement_from(PARTS[name]), 1, 6)
    monkeypatch.setattr(cached, "load_catalog", lambda *_: few)
    key = store.new_id()
    store.keep_part(key, {"draft": PARTS[name], "asked": PARTS[name], "revision": 1})
    page = AppTest.from_file(str(APP), default_timeout=120)
    page.query_params["part"] = key
    page.run()
    for view in VIEWS:
        page.switch_page(f"views/{view}.py").run()
        assert not page.exception, view
        assert not page.error, view
        assert page.title, view
