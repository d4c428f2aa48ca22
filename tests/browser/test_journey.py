"""From the form to the ranked table, the reasons and the chart, as a visitor would go."""

import csv
import json

from playwright.sync_api import expect

from tests.dog import TEXT

# The one question that a file may leave to the visitor.
REQUIREMENT = TEXT.replace("drive dog", "claw").replace('safety_use = "could hurt"\n', "")
UNANSWERED = "Please answer: If it breaks in use, what is at risk?"


def open_form(page, server, settled):
    page.goto(server)
    page.get_by_role("heading", name="Safety").wait_for()
    settled()


def hand_over(page, settled):
    page.locator('input[type="file"]').set_input_files(
        {"name": "claw.toml", "mimeType": "text/plain", "buffer": REQUIREMENT.encode()}
    )
    page.get_by_text(UNANSWERED).first.wait_for()
    settled()


def ask(page):
    page.get_by_text("Could hurt someone nearby").click()
    page.get_by_text("To be looked at").wait_for(state="hidden")
    page.get_by_role("button", name="Advise").click()
    page.get_by_role("heading", name="claw", exact=True).wait_for()
    page.locator('[data-testid="stVegaLiteChart"] svg.marks').wait_for()


def test_form_to_chart(page, server, settled, violations, picture):
    open_form(page, server, settled)
    hand_over(page, settled)
    assert violations() == {}
    picture("part")
    ask(page)
    assert violations() == {}
    picture("choice")
    rows = page.get_by_role("table").nth(1).get_by_role("row")
    assert rows.count() == 11
    page.get_by_text("Surface hardness", exact=True).last.click()
    page.get_by_text("Surface hardness, HRC").wait_for()
    picture("choice-hardness")
    for view, heading in (("Why not", "Assumed"), ("Cautions", "Before work")):
        page.get_by_role("link", name=view).click()
        page.get_by_role("heading", name=heading).wait_for()
        assert violations() == {}
        picture(view.lower().replace(" ", "-"))


def test_bad_input_is_said_at_its_field_and_kept(page, server, settled, violations):
    open_form(page, server, settled)
    size = page.get_by_label("Size *").first
    size.fill("twelve")
    # Leaving the field runs the page once; a click in the middle of that would be lost.
    size.press("Tab")
    settled()
    page.get_by_role("button", name="Advise").click()
    told = page.get_by_text("Section 1, size: must be a length written as number and unit")
    told.first.wait_for()
    line, box = told.first.bounding_box(), size.bounding_box()
    assert 0 < line["y"] - box["y"] < 120
    expect(size).to_have_value("twelve")
    assert violations() == {}
    page.get_by_role("link", name="Cautions").click()
    page.get_by_text("There is no advice yet.").wait_for()
    page.get_by_role("link", name="To the form").click()
    page.get_by_role("heading", name="Safety").wait_for()
    settled()
    expect(page.get_by_label("Size *").first).to_have_value("twelve")


def test_keys_alone_reach_the_advice(page, server, settled):
    open_form(page, server, settled)
    hand_over(page, settled)
    page.get_by_role("radio").first.focus()
    page.keyboard.press("ArrowDown")
    page.get_by_text("To be looked at").wait_for(state="hidden")
    page.get_by_role("button", name="Advise").focus()
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Ranked").wait_for()


def test_a_mark_tells_its_figures(page, server, settled):
    open_form(page, server, settled)
    hand_over(page, settled)
    ask(page)
    mark = page.locator('[data-testid="stVegaLiteChart"] svg .mark-symbol path').first
    mark.scroll_into_view_if_needed()
    mark.hover()
    told = page.locator("#vg-tooltip-element")
    told.get_by_text("Family").wait_for()
    assert "EUR" in told.inner_text()


def test_all_that_is_shown_can_be_taken_home(page, server, settled):
    open_form(page, server, settled)
    hand_over(page, settled)
    ask(page)
    with page.expect_download() as table:
        page.get_by_role("button", name="Table as CSV").click()
    with page.expect_download() as everything:
        page.get_by_role("button", name="Everything as JSON").click()
    with table.value.path().open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    with everything.value.path().open(encoding="utf-8") as file:
        advice = json.load(file)
    assert [row["id"] for row in rows] == [option["id"] for option in advice["options"]]
    assert float(rows[0]["surface_hrc"]) == advice["options"][0]["hardness"]["surface"]["p50"]


def test_a_narrow_screen_needs_no_sideways_scrolling(page, server, settled, violations):
    page.set_viewport_size({"width": 390, "height": 844})
    open_form(page, server, settled)
    wide = page.evaluate("document.documentElement.scrollWidth")
    assert wide <= 390
    assert violations() == {}


def test_the_check_finds_what_is_planted(page, server, settled, violations):
    open_form(page, server, settled)
    page.get_by_role("heading", name="Safety").evaluate(
        """place => place.insertAdjacentHTML("afterend",
           '<img src="data:,"><button></button><p style="color:#bbb">faint</p>')"""
    )
    assert set(violations()) == {"image-alt", "button-name", "color-contrast"}
