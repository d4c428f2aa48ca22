import pytest

from catalog import load_catalog
from selector.requirement import requirement_from
from ui import cached


def test_the_catalogue_is_the_shipped_one(monkeypatch):
    monkeypatch.setattr(cached, "load_catalog", load_catalog)
    assert cached.catalog() is load_catalog()


@pytest.mark.usefixtures("advised")
def test_equal_requirements_are_computed_once(claw, monkeypatch):
    def never(*_args, **_kwargs):
        raise AssertionError("computed again")

    monkeypatch.setattr(cached, "advise", never)
    assert cached.advice(requirement_from(claw)).part == "claw"


@pytest.mark.usefixtures("advised")
def test_garbage_is_looked_for_once_after_an_advice(monkeypatch):
    looked = []
    monkeypatch.setattr(cached.gc, "collect", lambda: looked.append(1))
    cached._let_go.set()
    cached.tidy()
    cached.tidy()
    assert looked == [1]


@pytest.mark.usefixtures("advised")
def test_the_page_shows_what_the_selector_says(claw, advice):
    known = cached.advice(requirement_from(claw))
    assert known.options == advice.options
    assert known.headline == advice.headline
