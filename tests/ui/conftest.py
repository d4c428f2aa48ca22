"""A part to ask about, the page as a visitor finds it, and the advice without the page."""

import tomllib
from functools import cache
from pathlib import Path
from threading import Thread

import pytest
from streamlit.components.v2 import manifest_scanner
from streamlit.config import get_option, set_option
from streamlit.elements.widgets import button
from streamlit.runtime.scriptrunner.script_cache import ScriptCache
from streamlit.testing.v1 import AppTest, app_test, local_script_runner

from selector import advise
from selector.advice.output import advice_out
from selector.requirement import requirement_from
from tests.dog import EVERY_KIND, FEW, TEXT, only
from tests.once import advise_once
from ui import cached, store

APP = Path(__file__).parents[2] / "ui" / "app.py"
CLAW = TEXT.replace("drive dog", "claw")
ASKED = requirement_from(tomllib.loads(CLAW))
KNOWN = only(*EVERY_KIND)


@pytest.fixture(scope="session", autouse=True)
def read_once():
    """Packages and scripts, which each page under test looks through, stay what they are."""
    scripts = ScriptCache()
    with pytest.MonkeyPatch.context() as patch:
        scan = cache(manifest_scanner.scan_component_manifests)
        patch.setattr(manifest_scanner, "scan_component_manifests", scan)
        for runner in (app_test, local_script_runner):
            patch.setattr(runner, "ScriptCache", lambda: scripts)
        folder = cache(button.get_main_script_directory)
        patch.setattr(button, "get_main_script_directory", folder)
        before = get_option("browser.gatherUsageStats")
        set_option("browser.gatherUsageStats", False)  # as the page's own server has it
        yield
        set_option("browser.gatherUsageStats", before)


def once_on_claw(requirement, catalog, **looked_at):
    """The advice on the claw is one for page and tests; any other is among a few steels."""
    if requirement == ASKED:
        return advise_once(requirement, catalog, **looked_at)
    rack = {s.slug for bar in requirement.workshop.stock for s in catalog.find(bar.steel)}
    few = only(*rack, *FEW) if catalog is KNOWN else catalog
    return advise(requirement, few, **looked_at)


@pytest.fixture(scope="session", autouse=True)
def asked_once():
    """A steel of each kind has an answer for every view; a browser shows that of them all."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(cached, "load_catalog", lambda *_: KNOWN)
        patch.setattr(cached, "advise", once_on_claw)
        yield


@pytest.fixture(scope="session")
def claw_text():
    return CLAW


@pytest.fixture
def claw():
    return tomllib.loads(CLAW)


@pytest.fixture(scope="session")
def advice():
    """The advice on the claw, straight from the selector."""
    return advice_out(advise_once(ASKED, KNOWN))


@pytest.fixture(autouse=True)
def own_folder(tmp_path, monkeypatch):
    """Each visitor's folder is empty, and no thread warms the loop in the middle of a test."""
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    monkeypatch.setattr(store, "_unwritten", {})
    monkeypatch.setattr(cached, "warm", finished)
    return tmp_path


def finished():
    thread = Thread(target=str)
    thread.start()
    thread.join()
    return thread


@pytest.fixture
def page():
    """The page as a visitor finds it."""
    started = AppTest.from_file(str(APP), default_timeout=60).run()
    assert not started.exception
    return started


@pytest.fixture
def blank(page):
    """The form of a part of which nothing is known."""
    page.button(key="start/blank").click().run()
    assert page.title[0].value == "Your part"
    return page


@pytest.fixture
def with_claw(claw):
    """The page with the claw in its form, opened by its address."""
    key = store.new_id()
    store.keep_part(key, {"draft": claw, "shop": None, "revision": 1})
    page = AppTest.from_file(str(APP), default_timeout=60)
    page.query_params["part"] = key
    page.switch_page("views/part.py").run()
    page._page_hash = ""  # from here the page itself says where it is
    assert not page.exception
    assert not page.error
    assert page.title[0].value == "Your part"
    return page


@pytest.fixture
def advised(with_claw):
    """The page with the advice on the claw."""
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert "temper at" in with_claw.title[0].value
    return with_claw
