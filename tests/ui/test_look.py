"""A look at the session is not cut short: newer answers wait, and what is typed is kept."""

from types import SimpleNamespace

from streamlit.runtime.scriptrunner import RerunException

from ui import form, held, look, session
from ui.look import looked_up


class Waiting:
    """A script run at which newer answers wait; it ends at the first look at its state."""

    def __init__(self, *answers):
        self.waiting = list(answers)
        self.script_requests = SimpleNamespace(request_rerun=self.waiting.append)

    def yield_to_them(self):
        if self.waiting:
            raise RerunException(self.waiting.pop(0))


class State(dict):
    def __init__(self, run):
        super().__init__()
        self.run = run

    def get(self, key, default=None):
        self.run.yield_to_them()
        return super().get(key, default)


def test_newer_answers_wait_in_their_order(monkeypatch):
    run = Waiting("older", "newer")
    monkeypatch.setattr(look, "get_script_run_ctx", lambda: run)
    assert looked_up(lambda: run.yield_to_them() or 7) == 7
    assert run.waiting == ["older", "newer"]


def test_what_is_typed_is_kept_though_a_newer_answer_waits(monkeypatch):
    run = Waiting()
    state = State(run)
    monkeypatch.setattr(look, "get_script_run_ctx", lambda: run)
    monkeypatch.setattr(session.st, "session_state", state)
    monkeypatch.setattr(session.st, "query_params", {})
    session.start({"part": {"name": "claw"}})
    key = held.widget("part.name", "claw")
    state[key] = "cam"
    run.waiting.append("newer")
    form._keep(key, "part.name", "text")
    run.waiting.clear()
    assert session.here().draft["part"]["name"] == "cam"
