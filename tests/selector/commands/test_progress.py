import io
import sys

from selector.commands.progress import bar


class Terminal(io.StringIO):
    def isatty(self):
        return True


def test_nobody_watches_a_pipe(monkeypatch):
    monkeypatch.setattr(sys, "stderr", io.StringIO())
    with bar() as move:
        assert move is None


def test_a_watcher_sees_what_is_done(monkeypatch):
    seen = Terminal()
    monkeypatch.setattr(sys, "stderr", seen)
    monkeypatch.setenv("TERM", "xterm")
    with bar() as move:
        move("Drawing C45", 0.5)
    assert "C45" in seen.getvalue() or "catalogue" in seen.getvalue()
