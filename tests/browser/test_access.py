"""Every view for everyone: rules of WCAG, widths, light and dark, one line of the way."""

from tests.browser.conftest import BUT_COLOURS, COLOURS, RULES, TITLES
from tests.page_server import racked

# Colours hang on the scheme, all else on the width, of which the style knows two: from 700 px
# up, where a view may yet be too wide, and below. The menu of a phone is looked at below.
LOOKS = (
    (1440, "light", RULES), (1440, "dark", COLOURS), (1024, "light", None),
    (390, "light", BUT_COLOURS),
)  # fmt: skip
WIDE = (
    "Math.max(document.documentElement.scrollWidth, "
    "document.querySelector('[data-testid=stMain]').scrollWidth)"
)
# Brand, way and name of the part lie clear of each other, and the name is there to its end.
CROWDED = """() => {
    const seen = [...document.querySelectorAll('.tw-brand, .st-key-views a, .tw-at')];
    const boxes = seen.map(part => part.getBoundingClientRect()).filter(box => box.width);
    const on = (a, b) => a.left < b.right - 1 && b.left < a.right - 1
        && a.top < b.bottom - 1 && b.top < a.bottom - 1;
    const crossed = boxes.some((a, i) => boxes.some((b, j) => i < j && on(a, b)));
    const name = document.querySelector('.tw-at');
    return crossed || name.scrollHeight > name.clientHeight + 1;
}"""
MENU = '[data-testid="stPopoverBody"]'
# Drawings that readers and keys cannot enter.
CANVAS = "document.querySelectorAll('canvas, .vega-embed, .js-plotly-plot').length"


def test_no_view_breaks_a_rule_or_scrolls_sideways(
    page, opened, turned, settled, kept, violations
):
    # Shows all that a part without a rack does, and its bars besides.
    draft = racked({"part.name": "Starting-handle dog for a stationary engine"})
    opened("part", kept(draft, asked=draft))
    faults = {}
    for view, title in TITLES.items():
        page.set_viewport_size({"width": 1440, "height": 900})
        turned(title)
        for width, scheme, rules in LOOKS:
            page.emulate_media(color_scheme=scheme)
            same = page.viewport_size["width"] == width and scheme == "dark"
            if not same:
                page.set_viewport_size({"width": width, "height": 900})
                settled()
            found = violations(rules, is_tall=same) if rules else {}
            if page.evaluate(WIDE) > width:
                found["sideways"] = page.evaluate(WIDE)
            if page.evaluate(CROWDED):
                found["crowded"] = True
            if page.evaluate(CANVAS):
                found["canvas"] = page.evaluate(CANVAS)
            if found:
                faults[view, width, scheme] = found
    assert faults == {}


def test_the_check_finds_what_is_planted_at_the_foot_of_a_long_page(
    page, opened, settled, kept, violations
):
    draft = racked()
    opened("bench", kept(draft, asked=draft))
    settled()  # what is drawn anew loses what was planted
    page.locator(".tw-step-of-work").last.evaluate(
        """place => place.insertAdjacentHTML("beforeend",
           '<img src="data:,"><button></button><p style="color:#bbb">faint</p>')"""
    )
    assert set(violations()) == {"image-alt", "button-name", "color-contrast"}
    assert set(violations(BUT_COLOURS)) == {"image-alt", "button-name"}
    assert set(violations(COLOURS)) == {"color-contrast"}


def test_on_a_phone_all_that_decides_is_in_sight_and_a_menu_leads_on(
    page, opened, settled, kept, violations
):
    """Hardness, cost, chance and days of the first, of each other way and of the list."""
    draft = racked()
    page.set_viewport_size({"width": 390, "height": 844})
    opened("choice", kept(draft, asked=draft))
    shown = ".tw-figure, .tw-way td, .tw-list tbody td:not(.c-strip)"
    boxes = [box for box in (p.bounding_box() for p in page.locator(shown).all()) if box]
    assert len(boxes) > 20
    assert all(box["x"] >= 0 and box["x"] + box["width"] <= 390 for box in boxes)
    assert (
        page.locator(".c-cost")
        .first.evaluate("place => getComputedStyle(place, '::after').content")
        .endswith('EUR"')
    )

    def by_the_menu(title):
        page.locator(".st-key-menu button").click()
        page.locator(MENU).get_by_role("link", name=title, exact=True).click()
        page.locator(MENU).wait_for(state="detached")
        settled()

    # The drawing stays above the form, and the way is one line.
    by_the_menu("Part")
    page.get_by_role("button", name="Add a section").scroll_into_view_if_needed()
    drawing = page.locator(".st-key-small-drawing svg").bounding_box()
    assert 0 <= drawing["y"] < 60
    assert page.locator(".st-key-way").bounding_box()["height"] < 70
    page.locator(".st-key-menu button").click()
    page.get_by_role("link", name="Steels", exact=True).wait_for()
    assert violations(within=MENU) == {}
    page.emulate_media(color_scheme="dark")
    assert violations(COLOURS, within=MENU) == {}
    page.locator(".st-key-menu button").click()
    # The letter reads as a page there, which a sheet of paper would not.
    by_the_menu("For the customer")
    page.frame_locator(".st-key-as-read iframe").get_by_text("Dear customer").wait_for()
    assert page.locator(".st-key-as-printed img").first.is_hidden()
