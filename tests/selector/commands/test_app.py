import importlib.util
import itertools
import os
import subprocess
from types import SimpleNamespace

import pytest

from selector.commands import cli as commands
from tests.dog import TEXT


@pytest.fixture
def started(monkeypatch):
    """Return the commands that were to be run with their surroundings, none of which is."""
    calls = []

    def run(command, **kwargs):
        calls.append((command, kwargs["env"]))
        return SimpleNamespace(returncode=0)

    monkeypatch.setattr(subprocess, "run", run)
    return calls


def test_the_page_starts_on_this_machine_only(cli, started):
    done = cli.invoke(commands, ["app", "--port", "8600"])
    assert done.exit_code == 0, done.output
    assert "http://127.0.0.1:8600" in done.stdout
    assert not done.stderr
    ((command, _),) = started
    assert command[1:3] == ["-m", "ui.serve"]
    pairs = dict(itertools.pairwise(command))
    assert pairs["--host"] == "127.0.0.1"
    assert pairs["--port"] == "8600"


def test_a_wider_address_is_warned_of(cli, started):
    done = cli.invoke(commands, ["app", "--host", "192.0.2.7"])
    assert done.exit_code == 0
    assert "Anyone who reaches 192.0.2.7" in done.stderr
    assert dict(itertools.pairwise(started[0][0]))["--host"] == "192.0.2.7"


def test_a_part_and_a_catalogue_are_handed_on(cli, started, tmp_path):
    file = tmp_path / "dog.toml"
    file.write_text(TEXT)
    done = cli.invoke(commands, ["app", str(file), "--catalog", str(tmp_path), "--no-browser"])
    assert done.exit_code == 0, done.output
    ((command, env),) = started
    assert dict(itertools.pairwise(command))["--part"] == str(file)
    assert "--no-browser" in command
    assert env["TEMPERWRIGHT_CATALOG"] == str(tmp_path.resolve())
    assert env["PATH"] == os.environ["PATH"]


def test_what_is_no_file_is_refused_before_anything_starts(cli, started, tmp_path):
    done = cli.invoke(commands, ["app", str(tmp_path / "none.toml")])
    assert done.exit_code == 2
    assert "must be a readable file" in done.stderr
    assert started == []


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
