"""Each view without a part, with a blank one, and with advice."""

import pytest

from tests.form import said

VIEWS = (
    "part", "choice", "torch", "head_to_head", "firm", "bench", "customer", "workshop",
    "steels",
)  # fmt: skip
ANSWERS = ("choice", "torch", "head_to_head", "firm", "bench", "customer")


@pytest.mark.parametrize("view", VIEWS)
def test_each_view_starts_without_advice(page, view):
    page.switch_page(f"views/{view}.py").run()
    assert not page.exception
    if view in ANSWERS:
        assert page.title[0].value == "No answer yet"


def test_each_view_starts_with_advice(advised):
    for view in VIEWS:
        advised.switch_page(f"views/{view}.py").run()
        assert not advised.exception, view
        assert advised.title[0].value != "No answer yet"


def test_a_door_leads_to_the_view_it_names(page):
    page.button(key="door/torch").click().run()
    assert page.session_state["visit"].aim == "torch"


def test_examples_are_drawn(page):
    assert said(page).count("tw-example") == 3
