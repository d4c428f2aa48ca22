"""Where nothing is offered the page says what is left to do."""

import pytest
from streamlit.testing.v1 import AppTest

from selector.advice.missed import WHOM_TO_ASK
from tests.dog import only
from tests.form import said
from tests.page_server import racked
from tests.ui.conftest import APP
from ui import cached, store, stuck
from ui.labels import plain

# Harder than any of the bars; a furnace is soon worked out, and so is each change of it.
HARDER = {
    "zone.0.hardness.min": "67 HRC",
    "zone.0.hardness.max": "68 HRC",
    "workshop.heat": [{"source": "muffle-furnace"}],
}


def choice_of(draft):
    key = store.new_id()
    store.keep_part(key, {"draft": draft, "asked": draft, "revision": 1})
    page = AppTest.from_file(str(APP), default_timeout=120)
    page.query_params["part"] = key
    page.run()
    page.switch_page("views/choice.py").run()
    assert not page.exception
    return page


def test_a_part_that_lives_depend_on_is_passed_on_with_whom_to_ask():
    page = choice_of(racked({"safety_use": "brake"}))
    assert "not a home job" in page.title[0].value
    assert plain(WHOM_TO_ASK) in said(page)
    assert "tw-step" in said(page)
    assert not [b for b in page.button if (b.key or "").startswith("way/")]
    assert stuck.show is not None
    for view in ("bench", "firm", "head_to_head"):
        page.switch_page(f"views/{view}.py").run()
        assert not page.exception, view
        assert "not a home job" in said(page), view
        assert "What is left to do" in [link.proto.label for link in page.get("page_link")], (
            view
        )


@pytest.mark.parametrize("more", [HARDER, {**HARDER, "load.torque": "700 N m"}])
def test_where_nothing_passes_it_says_what_came_nearest_and_what_stops_the_rest(
    more, monkeypatch
):
    # Of each change that is tried those bars alone are weighed.
    few = only("42crmo4", "115crv3", "c45")
    monkeypatch.setattr(cached, "load_catalog", lambda *_: few)
    page = choice_of(racked(more))
    heads = [head.value for head in page.header]
    assert "What came nearest" in heads
    assert "What stops the rest" in heads
