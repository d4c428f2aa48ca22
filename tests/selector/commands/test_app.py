import importlib.util
import itertools
import subprocess
from pathlib import Path
from types import SimpleNamespace

import pytest

from selector.commands import cli as commands


@pytest.fixture
def started(monkeypatch):
    """Return the commands that were to be run, none of which is."""
    calls = []

    def run(command, **_):
        calls.append(command)
        return SimpleNamespace(returncode=0)

    monkeypatch.setattr(subprocess, "run", run)
    return calls


def test_the_page_starts_on_this_machine_only_and_tells_nobody(cli, started):
    done = cli.invoke(commands, ["app", "--port", "8600"])
    assert done.exit_code == 0, done.output
    assert "http://127.0.0.1:8600" in done.stdout
    (command,) = started
    pairs = dict(itertools.pairwise(command))
    assert pairs["--server.address"] == "127.0.0.1"
    assert pairs["--server.port"] == "8600"
    assert pairs["--browser.gatherUsageStats"] == "false"
    assert Path(pairs["run"]).is_file()
    assert Path(pairs["run"]).parts[-2:] == ("ui", "app.py")


def test_its_exit_code_is_passed_on(cli, monkeypatch):
    monkeypatch.setattr(subprocess, "run", lambda *_, **__: SimpleNamespace(returncode=3))
    assert cli.invoke(commands, ["app"]).exit_code == 3


def test_stopping_it_is_no_failure(cli, monkeypatch):
    def stop(*_, **__):
        raise KeyboardInterrupt

    monkeypatch.setattr(subprocess, "run", stop)
    assert cli.invoke(commands, ["app"]).exit_code == 0


def test_a_missing_page_is_said(cli, monkeypatch, started):
    monkeypatch.setattr(importlib.util, "find_spec", lambda _: None)
    done = cli.invoke(commands, ["app"])
    assert done.exit_code == 2
    assert "not installed" in done.stderr
    assert started == []
