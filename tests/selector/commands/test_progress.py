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


def test_a_name_of_any_spelling_is_only_a_name(monkeypatch):
    watched = Terminal()
    monkeypatch.setattr(sys, "stderr", watched)
    monkeypatch.setenv("TERM", "xterm")
    with bar() as move:
        move("Weighing C45 [/bold] \x1b]0;title\x07", 0.5)
    assert r"C45 [/bold] \x1b]0;title\x07" in watched.getvalue()
