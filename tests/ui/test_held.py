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
    assert key == held.key_of("part.name")


@pytest.mark.usefixtures("state")
def test_only_what_a_change_touches_is_filled_anew():
    """What is typed meanwhile elsewhere is not lost."""
    rows = [{"size": "1 mm"}, {"size": "2 mm"}, {"size": "3 mm"}]
    session.change(lambda draft: draft["part"].update(section=rows))
    paths = ("part.name", *(f"part.section.{n}.size" for n in (1, 2, 3)))
    before = [held.key_of(path) for path in paths]
    session.change(lambda draft: draft["part"]["section"].append({}))
    assert [held.key_of(path) for path in paths] == before
    session.change(lambda draft: draft["part"]["section"].pop(1))
    after = [held.key_of(path) for path in paths]
    assert [old == new for old, new in zip(before, after, strict=True)] == [
        True, True, False, False,
    ]  # fmt: skip
    session.keep("part.name", "cam")
    assert held.key_of("part.name") == before[0]
    session.undo()
    assert held.key_of("part.name") != before[0]


@pytest.mark.usefixtures("state")
def test_a_choice_that_is_no_longer_offered_gives_way_to_the_first():
    for given, shown in (("gone", "b"), ("a", "a"), (["a"], "b")):
        held.fill_in("one", given)
        assert held.value_of(held.lasting("one", "b", ["a", "b"])["key"]) == shown


def test_what_is_ticked_and_written_outlasts_the_session(state):
    kept = held.lasting("tick", first=False)
    state[kept["key"]] = True
    kept["on_change"]()
    key = session.here().id
    state.clear()
    session.st.query_params["part"] = key
    session.begin()
    assert held.value_of(held.lasting("tick", first=False)["key"]) is True
    for number in range(70):
        session.note(f"n{number}", number)
    assert len(session.here().noted) == 60


@pytest.mark.usefixtures("state")
def test_what_was_told_is_told_once():
    held.tell("logo", ["too large"])
    assert held.told("logo") == ("too large",)
    assert held.told("logo") == ()
