"""What a first-time user waits for: `python -m tests.benchmarks.page_time [--whole]`.

Printed, never asserted. The page is served afresh in an empty folder and driven by a headless
Chromium; what the engine alone takes for the same question is measured in this process beside
it. By default the part is to be made of three bars in the rack; `--whole` asks of every steel.
"""

import argparse
import json
import os
import signal
import tempfile
import time
from collections.abc import Callable
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, sync_playwright

from catalog import load_catalog
from selector import advise
from selector.advice.output import advice_out
from selector.requirement import requirement_from
from tests.benchmarks.everyday_parts import PARTS
from tests.dog import varied
from tests.page_server import CHROMIUM, FLAGS, RACK, racked, started
from ui.store import keep_part, keep_workshop, new_id

PATIENCE_MS = 180_000
# From the last key of an answer to the press on the button, by a quick hand.
PAUSE_S = 1.0
STILL = '[data-testid="stApp"][data-test-script-state="notRunning"]'
SHED = {
    "heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven"}],
    "bath": [{"medium": "oil"}],
}


def settle(page: Page) -> None:
    """Wait until the page is drawn to its end."""
    page.locator(STILL).wait_for()
    page.wait_for_function("!document.querySelector('[data-testid=stSkeleton]')")


def took(work: Callable[[], object]) -> float:
    """Return how long something takes. [s]."""
    begun = time.perf_counter()
    work()
    return time.perf_counter() - begun


@contextmanager
def visited(home: Path, outside: list[str]) -> Any:
    """Yield a page in a browser, the address of its server, and the server's process id."""
    served = started(home / "server.log", home)
    if served is None:
        raise SystemExit("the page did not start: " + (home / "server.log").read_text())
    process, url = served
    local = (url, url.replace("http", "ws"), "data:", "blob:")
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, args=FLAGS)
        page = browser.new_page(viewport={"width": 1440, "height": 900})
        page.set_default_timeout(PATIENCE_MS)
        page.on("request", lambda r: None if r.url.startswith(local) else outside.append(r.url))
        try:
            yield page, url, process.pid
        finally:
            browser.close()
            process.send_signal(signal.SIGTERM)
            process.wait(10)


def opened(page: Page, url: str) -> None:
    """Open the page and wait until it can be used."""
    page.goto(url)
    page.get_by_role("button", name="My part, from a blank sheet").wait_for()
    settle(page)


def own_part(page: Page) -> int:
    """Describe a part from a blank sheet up to its advice; return how many answers it took."""
    answers = 0

    def answer(act: Callable[[], object]) -> None:
        nonlocal answers
        answers += 1
        act()
        settle(page)

    def typed(label: str, text: str, nth: int = 0) -> Callable[[], object]:
        box = page.get_by_label(label, exact=True).nth(nth)
        return lambda: (box.fill(text), box.press("Tab"))

    page.get_by_role("button", name="My part, from a blank sheet").click()
    page.get_by_role("heading", name="Your part").wait_for()
    settle(page)
    answer(page.get_by_text("Nothing but the part", exact=True).click)
    answer(typed("Name", "pin punch"))
    answer(typed("Size", "12 mm"))
    answer(typed("Length", "90 mm"))
    page.get_by_label("What does it suffer?", exact=True).click()
    answer(page.get_by_role("option", name="Edge under knocks", exact=True).click)
    answer(page.get_by_text("Medium", exact=True).click)
    answer(page.get_by_text("Hammered", exact=True).click)
    answer(page.get_by_text("Now and then", exact=True).click)
    page.get_by_role("button", name="Advise").click()
    page.get_by_role("heading", name="Ways that differ in kind").wait_for()
    settle(page)
    return answers


def weighed_otherwise(page: Page) -> float:
    """Return how long the new order takes to stand there after weights are changed. [s]."""

    def change() -> None:
        page.get_by_text("Longest wear", exact=True).click()
        page.locator(".tw-beam .tw-most", has_text="Hardness 32").wait_for()
        settle(page)

    return took(change)


def asked_anew(page: Page, length: str, pause_s: float = 0.0) -> float:
    """Return how long it takes from a changed field to the new advice with its cards. [s]."""
    page.locator(".st-key-views a").filter(has_text="Part").first.click()
    page.get_by_role("heading", name="Your part").wait_for()
    settle(page)
    box = page.get_by_label("Length", exact=True).first
    box.fill(length)

    def ask() -> None:
        page.get_by_role("button", name="Advise").click()
        # What follows the headline, the figures, the drawing and the cards.
        page.get_by_role("heading", name="What matters to you").wait_for()

    typed = took(lambda: box.press("Tab"))
    # After a pause, as of a hand that leaves the keys for the button, from the press on.
    page.wait_for_timeout(1_000 * pause_s)
    spent = took(ask) + (0.0 if pause_s else typed)
    settle(page)
    return spent


def engine_alone(draft: dict[str, Any]) -> float:
    """Return how long the engine takes for an advice as the page asks it. [s]."""
    asked, known = requirement_from(draft), load_catalog()
    return took(lambda: advice_out(advise(asked, known), changed=True))


def resident_mb(pid: int) -> float:
    """Return the memory a process holds. [MB]."""
    pages = int(Path(f"/proc/{pid}/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 1e6


def say(what: str, figure: float, unit: str, wanted: str = "") -> None:
    """Print one figure with what is wanted of it."""
    print(f"{what:34s}{figure:8.2f} {unit:4s} {wanted}", flush=True)  # noqa: T201


def first_part(page: Page, url: str) -> None:
    """Print what a first visit takes, up to the advice on a part of one's own."""
    say("open to usable", took(lambda: opened(page, url)), "s", "at most 3")
    say("open once more", took(lambda: opened(page, url)), "s", "at most 3")
    answers: list[int] = []
    say("own part to advice", took(lambda: answers.append(own_part(page))), "s", "at most 120")
    say("answers it took", answers[0], "", "at most 12")
    say("weights to new order", weighed_otherwise(page), "s", "at most 0.5")


def busy_s(pid: int) -> float:
    """Return the processor time a process has used, which a busy machine leaves alone. [s]."""
    used = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[11:13]
    return sum(map(int, used)) / os.sysconf("SC_CLK_TCK")


def _longer(draft: dict[str, Any], length_mm: int) -> dict[str, Any]:
    """Return a part with another length of its first section, as the page is asked for."""
    first, *others = draft["part"]["section"]
    sections = [{**first, "length": f"{length_mm} mm"}, *others]
    return {**draft, "part": {**draft["part"], "section": sections}}


def changed_parts(page: Page, url: str, pid: int, draft: dict[str, Any]) -> None:
    """Print what a changed field takes, and what of it is the engine's own."""
    key = new_id()
    keep_part(key, {"draft": draft, "asked": draft, "revision": 1})
    page.goto(f"{url}/choice?part={key}")
    page.get_by_role("heading", name="Ways that differ in kind").wait_for()
    settle(page)
    begun = busy_s(pid)
    anew = min(asked_anew(page, f"{31 + n} mm") for n in range(3))
    busy = (busy_s(pid) - begun) / 3
    later = min(asked_anew(page, f"{41 + n} mm", PAUSE_S) for n in range(3))
    engine_alone(draft)
    begun = time.process_time()
    alone = min(engine_alone(_longer(draft, 35 + n)) for n in range(3))
    say("changed field to new advice", anew, "s", "at most 2")
    say(f"button pressed {PAUSE_S:.0f} s after it", later, "s", "at most 2")
    say("the engine alone", alone, "s")
    say("processor time of the server", busy, "s")
    say("of it the engine", (time.process_time() - begun) / 3, "s")


def asked_of(page: Page, url: str, draft: dict[str, Any]) -> None:
    """Ask of a part that is described already, and wait for its advice."""
    key = new_id()
    keep_part(key, {"draft": draft, "revision": 1})
    page.goto(f"{url}/part?part={key}")
    page.get_by_role("heading", name="Your part").wait_for()
    settle(page)
    page.get_by_role("button", name="Advise").click()
    page.wait_for_url("**/choice?*")
    settle(page)


def memory(page: Page, url: str, pid: int, runs: int) -> None:
    """Print what the server holds after so many parts, each another, made of the rack."""
    lines = PARTS.read_text(encoding="utf-8").splitlines()[:runs]
    for run, line in enumerate(lines, start=1):
        draft = json.loads(line)["asked"]
        draft["workshop"] |= RACK
        asked_of(page, url, draft)
        if run % 5 == 0 or run == runs:
            say(f"memory after {run} parts", resident_mb(pid), "MB", "level")


def main() -> None:
    """Print every figure, with what is wanted beside it."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--whole", action="store_true", help="ask of every steel")
    parser.add_argument("--runs", type=int, default=50, help="parts asked for memory")
    given = parser.parse_args()
    outside: list[str] = []
    with tempfile.TemporaryDirectory() as folder:
        os.environ["XDG_DATA_HOME"] = folder
        keep_workshop("Shed", {**SHED, **({} if given.whole else RACK)})
        with visited(Path(folder), outside) as (page, url, pid):
            first_part(page, url)
            changed_parts(page, url, pid, varied() if given.whole else racked())
            memory(page, url, pid, given.runs)
    say("requests outside", len(outside), "", "none")


if __name__ == "__main__":
    main()
