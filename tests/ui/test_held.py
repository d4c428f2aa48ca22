"""What a widget holds is the form's own as it was last filled."""

import pytest

from ui import held, session


@pytest.fixture
def state(monkeypatch):
    kept = {}
    monkeypatch.setattr(session.st, "session_state", kept)
    monkeypatch.setattr(session.st, "query_params", {})
    session.start({"part": {"name": "claw"}})
    return kept


def test_a_widget_is_filled_once_and_belongs_to_its_form(state):
    key = held.widget("part.name", "claw")
    state[key] = "cam"
    assert held.widget("part.name", "claw") == key
    assert held.value_of(key) == "cam"
    assert held.shows(key)
    session.here().fill += 1
    assert not held.shows(key)


@pytest.mark.usefixtures("state")
def test_a_choice_that_is_no_longer_offered_gives_way_to_the_first():
    held.fill_in("one", "gone")
    assert held.value_of(held.one_of("one", ["a", "b"], "b")) == "b"
    held.fill_in("one", "a")
    assert held.value_of(held.one_of("one", ["a", "b"], "b")) == "a"


@pytest.mark.usefixtures("state")
def test_what_was_told_is_told_once():
    held.tell("logo", ["too large"])
    assert held.told("logo") == ("too large",)
    assert held.told("logo") == ()
