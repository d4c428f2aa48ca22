"""Each view without a part, with a blank one, and with advice."""

import pytest

from tests.form import field, said
from ui import store

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


def test_twelve_answers_at_most_lead_from_a_blank_sheet_to_advice(page):
    shed = {"heat": [{"source": "oxy-propane"}], "bath": [{"medium": "oil"}]}
    store.keep_workshop("shed", shed)
    page.button(key="start/blank").click().run()
    answers = {
        "safety_use": "none", "part.name": "pin punch", "part.section.1.size": "12 mm",
        "part.section.1.length": "90 mm", "zone.1.wear": "edge-impact",
        "zone.1.severity": "medium", "load.impact": "hammered",
        "load.cycles": "occasional",
    }  # fmt: skip
    assert len(answers) <= 12
    for path, answer in answers.items():
        key = field(page, path)
        for widgets in (page.radio, page.text_input, page.selectbox):
            if key in {widget.key for widget in widgets}:
                widgets(key=key).set_value(answer).run()
    page.button(key="part/advise").click().run()
    assert not page.exception
    assert "Ways that differ in kind" in [head.value for head in page.header]
