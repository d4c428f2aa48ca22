"""The page in a headless browser: what it logs, asks for outside, and breaks of WCAG 2.2 AA.

Without Chromium these tests are skipped; with TEMPERWRIGHT_NEED_BROWSER=1 they then fail.
"""

import json
import os
import re
import signal
import subprocess
from pathlib import Path
from uuid import uuid4

import pytest
from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import expect, sync_playwright

from tests.page_server import CHROMIUM, FLAGS, started

ARTIFACTS = Path(__file__).with_name("artifacts")  # what a failing test saw
FAILED = pytest.StashKey[bool]()
# Opened below its root, the page's own start-up asks for these beside the view first.
PROBE = re.compile(r"/[^/]+/_stcore/(health|host-config)$")
# Asking the driver about each request would keep the browser from keeping anything.
NOTHING_OUTSIDE = "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"
NARROW = 700  # below it the way is one line with a menu [px]
PATIENCE_MS = 90_000  # on a bare and busy machine, where the first advice compiles
TITLES = {
    "": "Start", "part": "Part", "workshop": "Your workshop", "steels": "Steels",
    "choice": "The choice", "torch": "The torch", "head-to-head": "Head to head",
    "firm": "How firm", "bench": "At the bench", "customer": "For the customer",
}  # fmt: skip
# No part of the page is still on its way.
DRAWN = "document.querySelectorAll('[data-testid=stSkeleton]').length === 0"
TALL = "document.querySelector('[data-testid=stMain]').scrollHeight + 40"
RULES = {
    "runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"],
    "resultTypes": ["violations"],
    "rules": {"heading-order": {"enabled": True}},
}
# All that another scheme of colours can break, which takes as long as all the rest; and that.
OF_COLOUR = ("color-contrast", "link-in-text-block")
COLOURS = {
    "runOnly": {"type": "rule", "values": list(OF_COLOUR)}, "resultTypes": ["violations"],
}  # fmt: skip
BUT_COLOURS = {
    **RULES, "rules": {**RULES["rules"], **{rule: {"enabled": False} for rule in OF_COLOUR}},
}  # fmt: skip


@pytest.fixture(scope="session")
def home(tmp_path_factory):
    """The visitor's folder."""
    return tmp_path_factory.mktemp("home")


@pytest.fixture(scope="session")
def server(tmp_path_factory, home):
    """Address of a running page; a free port can be taken meanwhile, so it tries again."""
    log = tmp_path_factory.mktemp("page") / "server.log"
    found = next((served for served in (started(log, home) for _ in range(3)) if served), None)
    if found is None:
        pytest.fail("the page did not start:\n" + log.read_text())
    process, url = found
    yield url
    process.send_signal(signal.SIGTERM)
    try:
        process.wait(10)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item):
    """Keep with a test whether it failed."""
    report = yield
    if report.when == "call":
        item.stash[FAILED] = report.failed
    return report


@pytest.fixture(scope="session")
def browser(tmp_path_factory, server):
    """One window for all tests, so that it keeps the page's scripts as a visitor's does."""
    if not CHROMIUM:
        if os.environ.get("TEMPERWRIGHT_NEED_BROWSER") == "1":
            pytest.fail("no chromium, and TEMPERWRIGHT_NEED_BROWSER=1 asks for one")
        pytest.skip("no chromium on this machine")
    with sync_playwright() as driver:
        found = driver.chromium.launch_persistent_context(
            tmp_path_factory.mktemp("profile"), executable_path=CHROMIUM, headless=True,
            args=[*FLAGS, NOTHING_OUTSIDE, "--process-per-site"], locale="en-GB",
            reduced_motion="reduce",
        )  # fmt: skip
        found.set_default_timeout(PATIENCE_MS)
        # A tab that stays keeps the process of its site, and with it the compiled scripts.
        found.pages[0].goto(f"{server}/_stcore/health")
        yield found
        found.close()


@pytest.fixture
def page(browser, server, request):
    """A page whose console errors and outside requests fail the test."""
    expect.set_options(timeout=PATIENCE_MS)
    found = browser.new_page()
    found.set_viewport_size({"width": 1280, "height": 900})
    errors, outside = [], []

    def console(message):
        where = message.location["url"]
        if message.type == "error" and not PROBE.search(where):
            errors.append(f"{message.text} {where}")

    found.on("console", console)
    found.on("pageerror", lambda fault: errors.append(str(fault)))
    known = (server, server.replace("http", "ws"), "data:", "blob:")
    found.on("request", lambda r: None if r.url.startswith(known) else outside.append(r.url))
    yield found
    if request.node.stash.get(FAILED, True):
        ARTIFACTS.mkdir(exist_ok=True)
        found.screenshot(path=ARTIFACTS / f"{request.node.name}.png")
    for opened in browser.pages[1:]:
        opened.close()
    browser.clear_cookies()
    assert errors == []
    assert outside == []


@pytest.fixture
def settled(page):
    """A function that waits until the page is drawn to its end, with nothing faded in it."""

    def wait():
        page.locator('[data-testid="stApp"][data-test-script-state="notRunning"]').wait_for()
        page.wait_for_function(DRAWN)
        page.wait_for_timeout(150)

    return wait


@pytest.fixture
def kept(home):
    """A function that puts a part into the visitor's folder and returns its id."""

    def keep(draft, **more):
        key = uuid4().hex[:12]
        folder = home / "temperwright"
        folder.mkdir(exist_ok=True)
        text = json.dumps({"draft": draft, "shop": None, "revision": 1, **more})
        (folder / f"part-{key}.json").write_text(text)
        return key

    return keep


@pytest.fixture
def opened(page, server, settled):
    """A function that opens a view of a part by its address and waits until it is drawn."""

    def go(view, key=None):
        page.goto(f"{server}/{view}" + (f"?part={key}" if key else ""))
        page.locator("h1").first.wait_for()
        settled()
        # The way marks the view that was asked for, and the address keeps the part.
        here = page.locator(f"[class*='-here'] a:has-text('{TITLES[view]}')")
        assert here.count() or page.viewport_size["width"] < NARROW, view
        assert key is None or key in page.url, view

    return go


@pytest.fixture
def turned(page, settled):
    """A function that turns to a view by its link, which loads nothing anew."""

    def go(title):
        page.locator(".st-key-views a").filter(has_text=title).last.click()
        page.locator(f"[class*='-here'] a:has-text('{title}')").wait_for()
        settled()

    return go


@pytest.fixture
def held(page, home):
    """A function that returns the part at hand as it is kept."""

    def read():
        key = re.search(r"part=(\w+)", page.url)[1]
        return json.loads((home / "temperwright" / f"part-{key}.json").read_text())

    return read


@pytest.fixture
def violations(page, settled):
    """A function that returns what breaks WCAG 2.2 AA: rule and the first places."""

    def run(rules=RULES, *, is_tall=False, within="html"):
        settled()
        if not is_tall:
            # Contrast is judged of what is in sight: the window is made as tall as the page.
            wide = page.viewport_size["width"]
            page.set_viewport_size({"width": wide, "height": 900})
            page.set_viewport_size({"width": wide, "height": max(page.evaluate(TALL), 900)})
            page.wait_for_timeout(150)
        if page.evaluate("typeof axe") == "undefined":
            page.evaluate(AXE_SCRIPT)
        found = page.evaluate(
            "async ([within, rules]) => (await axe.run(within, rules)).violations",
            [within, rules],
        )
        return {v["id"]: [node["target"][0] for node in v["nodes"]][:4] for v in found}

    return run
