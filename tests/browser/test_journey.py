"""From a blank sheet to the choice, the torch, the bench and the letter, as a visitor goes."""

import json
import re

from playwright.sync_api import expect

from selector import advise
from selector.advice.against import against_shares
from selector.advice.output import advice_out
from selector.requirement import requirement_from
from tests.page_server import RACK, racked

# Heat of his own, so that there is something to answer.
SHED = {
    "heat": [{"source": "oxy-propane"}], "bath": [{"medium": "oil", "volume": "12 l"}], **RACK
}  # fmt: skip
HINTS = "[...document.querySelectorAll('input')].map(i => i.placeholder.trim()).filter(t => t)"
STALE = "The part was changed since."


def fill(page, settled, label, text, nth=0):
    box = page.get_by_label(label, exact=True).nth(nth)
    box.fill(text)
    box.press("Tab")
    settled()
    return box


def pick(page, settled, text, nth=0):
    page.get_by_text(text, exact=True).nth(nth).click()
    settled()


def choose(page, settled, label, text, nth=0):
    page.get_by_label(label, exact=True).nth(nth).click()
    page.get_by_role("option", name=text, exact=True).click()
    settled()


def test_a_blank_sheet_leads_to_the_choice_torch_bench_and_letter(
    page, opened, settled, turned, home, held, violations
):
    (home / "temperwright").mkdir(exist_ok=True)
    (home / "temperwright" / "workshops.json").write_text(json.dumps({"Shed": SHED}))
    opened("")
    page.get_by_role("button", name="Take this one").first.click()
    page.get_by_role("heading", name="Your part").wait_for()
    settled()
    assert held()["draft"]["part"]["name"].startswith("Starting-handle dog")
    turned("Start")
    page.get_by_role("button", name="My part, from a blank sheet").click()
    page.get_by_label("Name", exact=True).wait_for()
    settled()
    # Nothing of the example that lay there before.
    draft = held()["draft"]
    assert draft["part"] == {"section": [{"shape": "round"}]}
    assert draft["zone"] == [{"section": [1]}]
    assert draft["load"] == draft["limit"] == {}
    expect(page.get_by_label("Name", exact=True)).to_have_value("")
    assert page.evaluate(HINTS) == []  # grey ones look like answers
    pick(page, settled, "Nothing but the part")
    fill(page, settled, "Name", "pin punch")
    fill(page, settled, "Called", "point")
    fill(page, settled, "Size", "1/2 in")
    page.get_by_text("12.7 mm").first.wait_for()
    fill(page, settled, "Length", "200 mm")
    fill(page, settled, "Length", "20 mm")
    page.locator(".st-key-beside svg[role=img]").first.wait_for()
    page.get_by_role("button", name="Add a section").click()
    settled()
    fill(page, settled, "Size", "12 mm", nth=1)
    fill(page, settled, "Length", "80 mm", nth=1)
    page.get_by_role("button", name="Add a section").click()
    settled()
    page.get_by_role("button", name="Remove section 3").click()
    settled()
    fill(page, settled, "Called", "1 point")  # the first edit anyone makes
    choose(page, settled, "What does it suffer?", "Edge under knocks")
    fill(page, settled, "Which", "brass pin")
    fill(page, settled, "Its hardness", "20 HRC")
    fill(page, settled, "Which", "")
    page.get_by_label("Its hardness", exact=True).wait_for(state="detached")
    assert "mate" not in held()["draft"]["zone"][0]
    pick(page, settled, "Medium")
    pick(page, settled, "Light", nth=1)
    pick(page, settled, "Now and then")
    for _ in range(200):  # a slow machine may still be keeping the last answers
        if {"impact", "cycles"} <= held()["draft"].get("load", {}).keys():
            break
        page.wait_for_timeout(150)
    assert violations() == {}
    page.get_by_role("button", name="Advise").click()
    page.get_by_role("heading", name="Ways that differ in kind").wait_for()
    settled()
    part = held()["draft"]["part"]
    assert [(s.get("name"), s["size"]) for s in part["section"]] == [
        ("1 point", "1/2 in"), (None, "12 mm"),
    ]  # fmt: skip
    assert part["section"][0]["length"] == "20 mm"
    for view, heading in (
        ("The torch", "Every family by this torch"), ("At the bench", "At the bench"),
        ("For the customer", "For the customer"),
    ):  # fmt: skip
        page.get_by_role("link", name=view, exact=True).click()
        page.get_by_role("heading", name=heading).wait_for()
        settled()
        assert page.locator('[data-testid="stException"]').count() == 0


# What the browser sends comes in late, as over a slow line or to a busy machine.
LATE = """const send = WebSocket.prototype.send;
WebSocket.prototype.send = function (data) { setTimeout(() => send.call(this, data), 700) }"""


def test_what_is_typed_while_the_form_is_drawn_anew_is_kept(page, opened, settled, kept, held):
    draft = {"part": {"section": [{"shape": "round"}] * 2}, "zone": [{"section": [1]}]}
    page.add_init_script(LATE)
    opened("part", kept({**draft, "load": {}, "limit": {}, "workshop": SHED}))
    for button, label, text in (
        ("Add a section", "Name", "punch"), ("Remove section 3", "Called", "point"),
        ("Remove section 2", "Size", "12 mm"),
    ):  # fmt: skip
        page.get_by_role("button", name=button).click()
        page.get_by_label(label, exact=True).first.click()
        page.keyboard.type(text)
        page.keyboard.press("Tab")
        page.get_by_role("button", name="Remove section 2").first.wait_for(
            state="detached" if button == "Remove section 2" else "visible"
        )
        page.wait_for_timeout(800)
        settled()
    part = held()["draft"]["part"]
    assert part["name"] == "punch"
    assert part["section"] == [{"shape": "round", "name": "point", "size": "12 mm"}]


def test_forty_keys_reach_the_advice(page, opened, kept):
    draft = {"part": {"section": [{"shape": "round"}]}, "zone": [{"section": [1]}], "load": {}}
    opened("part", kept({**draft, "limit": {}, "workshop": SHED}))
    page.locator("body").focus()
    pressed = 0
    while pressed < 60:
        pressed += 1
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.innerText || ''").startswith("Advise"):
            break
    assert pressed <= 40


# Where something is done that a reload could lose. The other views are opened by their address
# in one test or another, which is what a reload does.
RELOADED = ("At the bench", "For the customer")


def test_reload_and_back_lose_nothing(page, opened, settled, turned, kept):
    draft = racked()
    key = kept(draft, asked=draft)
    opened("firm", key)
    turned("Part")
    fill(page, settled, "Name", "dog two")
    views = (
        "The choice", "The torch", "Head to head", "How firm", "At the bench",
        "For the customer", "Your workshop", "Steels",
    )  # fmt: skip
    titles = [page.locator("h1").inner_text()]
    tick = page.get_by_role("checkbox", name=re.compile(r"^1\. "))
    letter = page.get_by_label("The letter, to be changed", exact=True)
    for view in views:
        page.get_by_role("link", name=view, exact=True).click()
        page.wait_for_url(re.compile(f"/{view.split()[-1].lower()}|choice|firm"))
        page.locator(".st-key-views a").filter(has_text=view).first.wait_for()
        settled()
        titles.append(page.locator("h1").inner_text())
        if view == "At the bench":
            page.locator("label").filter(has_text=re.compile(r"^1\. ")).click()
            settled()
        if view == "For the customer":
            fill(page, settled, "The letter, to be changed", "[Greeting]\nDear Anna,")
        assert key in page.url, view
        if view not in RELOADED:
            continue
        page.reload()
        expect(page.locator("h1")).to_have_text(titles[-1])
        settled()
        assert key in page.url, view
        if view == "At the bench":
            expect(tick).to_be_checked()
        if view == "For the customer":
            expect(letter).to_have_value("[Greeting]\nDear Anna,")
    assert len(set(titles)) == len(titles)
    for title in reversed(titles[:-1]):
        page.go_back()
        expect(page.locator("h1")).to_have_text(title)
        assert key in page.url
    settled()
    expect(page.get_by_label("Name", exact=True)).to_have_value("dog two")


def test_old_advice_is_marked_and_an_answer_that_was_left_is_not_lost(
    page, opened, settled, turned, kept, held
):
    draft = racked()
    opened("steels", kept(draft, asked=draft))
    turned("Part")
    fill(page, settled, "Length", "35 mm")
    page.get_by_role("link", name="The torch", exact=True).click()
    page.get_by_text(STALE).wait_for()
    page.get_by_role("button", name="Advise again").click()
    page.get_by_text(STALE).wait_for(state="detached")
    settled()
    turned("Part")
    fill(page, settled, "Length", "37 mm")
    page.get_by_role("button", name="Advise").click()
    page.get_by_role("progressbar").first.wait_for()  # no silence while it computes
    page.get_by_role("link", name="At the bench", exact=True).click()
    page.get_by_role("heading", name="At the bench").wait_for()
    page.locator(".tw-step-of-work").first.wait_for()
    settled()
    # Who asked and left does not lose the answer.
    now = held()
    assert now["asked"] == now["draft"]
    assert now["draft"]["part"]["section"][0]["length"] == "37 mm"
    assert page.get_by_text(STALE).count() == 0


def test_two_tabs_keep_their_own(page, opened, settled, turned, kept, held, server):
    key = kept(racked())
    opened("head-to-head", key)
    turned("Part")
    other = page.context.new_page()
    other.goto(f"{server}/part?part={key}")
    other.get_by_label("Name", exact=True).wait_for()
    fill(page, settled, "Name", "of the first")
    box = other.get_by_label("Name", exact=True)
    box.fill("of the second")
    box.press("Tab")
    other.get_by_text("changed in another tab").wait_for()
    assert held()["draft"]["part"]["name"] == "of the first"
    expect(page.get_by_label("Name", exact=True)).to_have_value("of the first")
    expect(other.get_by_label("Name", exact=True)).to_have_value("of the second")


def every_text(draft, text):
    """A draft with a text in every field that takes one, whatever is asked there."""
    if isinstance(draft, dict):
        return {key: every_text(value, text) for key, value in draft.items()}
    if isinstance(draft, list):
        return [every_text(value, text) for value in draft]
    return text if isinstance(draft, str) else draft


def test_hostile_text_stays_text(page, opened, settled, turned, kept):
    hostile = "<img src=x onerror=alert(1)>*b* $x^2$ :red[a]"
    draft = racked(
        {"part.name": hostile, "part.section.0.name": hostile, "zone.0.name": hostile}
    )
    draft["workshop"]["machine"] = [hostile]
    draft["workshop"]["stock"] += [{"steel": "unknown", "condition": hostile}]
    draft["zone"][0]["mate"] = {"material": hostile}
    key = kept(draft, asked=draft)
    dialogs = []
    page.on("dialog", lambda d: (dialogs.append(d.message), d.dismiss()))
    drafted = kept(every_text(draft, hostile))
    opened("workshop", drafted)
    turned("Part")
    expect(page.get_by_label("Name", exact=True)).to_have_value(hostile)
    for view in (
        "Your workshop", "The torch", "The choice", "Head to head", "At the bench",
        "For the customer", "Steels",
    ):  # fmt: skip
        if view == "The torch":
            opened("torch", key)
        else:
            turned(view)
        assert page.locator("img[src=x]").count() == 0, view
        assert page.locator('[data-testid="stException"]').count() == 0, view
    fill(page, settled, "Any name, kind or family", hostile)
    page.get_by_text("No steel is called").wait_for()
    assert page.locator("img[src=x]").count() == 0
    assert dialogs == []


# Sections by the thousand, and a name that is half a character.
MANY = b'[[part.section]]\nshape = "round"\nsize = "5 mm"\nlength = "5 mm"\n' * 2_000
HALF = (
    b'{"safety_use": "none", "load": {"impact": "none", "cycles": "static"}, "workshop": {},'
    b' "part": {"name": "\\ud800", "section": []}, "zone": []}'
)
NINE = (
    b'safety_use = "maybe"\ncolour = "red"\n[part]\nname = 5\nquantity = -2\n[[part.section]]\n'
    b'shape = "star"\nsize = "wide"\nlength = "-4 mm"\n[[zone]]\nsection = [1]\nwear = "rust"\n'
    b'[load]\nimpact = "soft"\ncycles = "often"\n'
)
REFUSED = {
    "huge.toml": (b"a = 1\n" * 400_000, ["must be 1.0MB or smaller"]),
    "picture.toml": (b"\x89PNG\r\n\x1a\n\x00\xff" * 50, ["picture.toml: must be UTF-8 text"]),
    "dots.toml": (b".".join([b"a"] * 20_000) + b"=1", ["dots.toml: must be a plain file"]),
    "empty.toml": (b"", ["empty.toml: must be a requirement; got an empty file"]),
    "many.toml": (MANY, ["(part.section): must be a list of at most 30"]),
    "half.json": (HALF, ["half.json: must be readable text; got half a character"]),
    "nine.toml": (
        NINE,
        ["(safety_use)", "colour", "(part.name)", "(part.quantity)", "(part.section.1.shape)",
         "(zone.1.wear)", "(load.impact)", "(load.cycles)"],
    ),
}  # fmt: skip


def test_a_file_that_is_none_is_refused_in_words_with_every_fault(page, opened):
    opened("")
    for name, (content, said) in REFUSED.items():
        page.locator("input[type=file]").set_input_files(
            {"name": name, "mimeType": "text/plain", "buffer": content}
        )
        for text in said:
            page.get_by_text(text).first.wait_for()
        assert page.get_by_role("heading", name="What steel").count() == 1, name
        assert page.locator('[data-testid="stException"]').count() == 0, name


def test_the_figures_are_the_engines(page, opened, turned, kept):
    draft = racked()
    # Bars so alike that one beats another which stands before it.
    draft["workshop"]["stock"] = [
        {"steel": name, "size": "30 mm", "evidence": "receipt"}
        for name in ("EN24", "41Cr4", "4140", "O1", "EN9", "EN16")
    ]
    key = kept(draft, asked=draft)
    opened("choice", key)
    known = advise(requirement_from(draft))
    advice = advice_out(known)
    first = advice.options[0]
    figures = page.locator(".tw-figure").all_inner_texts()
    assert figures[0] == f"{first.hardness.surface.p50:.0f} HRC"
    assert figures[1] == f"{first.cost.spread.p50:.0f} {first.cost.currency}"
    assert page.locator(".tw-list tbody tr").count() == len(advice.options)
    with page.expect_download() as everything:
        page.get_by_role("button", name="Everything as JSON").click()
    with everything.value.path().open(encoding="utf-8") as file:
        saved = json.load(file)
    assert [o["id"] for o in saved["options"]] == [o.id for o in advice.options]
    # One that beats another of a better place says why it stands behind.
    beaten = against_shares(known)
    assert beaten
    for view in ("The choice", "How firm"):
        turned(view)
        for text in beaten:
            page.get_by_text(text).wait_for()
