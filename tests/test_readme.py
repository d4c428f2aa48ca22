"""The README is true: its commands are those of the check, its output is real."""

import re
from pathlib import Path

import pytest

from selector.commands import cli as commands

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SHOWN = re.compile(r"<!-- output: temperwright (.+?) -->\n```\n(.*?)```", re.DOTALL)


def lines(text):
    """Return lines without the blanks that pad a table."""
    return [line.rstrip() for line in text.splitlines()]


@pytest.mark.parametrize(
    ("command", "shown"), [pytest.param(*b, id=b[0].split()[0]) for b in SHOWN.findall(README)]
)
def test_output_shown_is_the_beginning_of_the_real_output(command, shown, cli, monkeypatch):
    monkeypatch.chdir(ROOT)
    done = cli.invoke(commands, command.split(), catch_exceptions=False)
    assert done.exit_code == 0
    assert len(lines(shown)) > 10
    assert lines(done.stdout)[: len(lines(shown))] == lines(shown)


def test_the_swap_of_quantity_is_shown():
    """What the comparison is for: from how many pieces on the better steel is the cheaper."""
    shown = next(text for command, text in SHOWN.findall(README) if "versus" in command)
    assert re.search(
        r"From\s+\d+\s+pieces\s+on\s+4140\s+\(42CrMo4\)\s+is\s+the\s+cheaper", shown
    )


def commands_shown() -> list[str]:
    """Return the commands that set up and run, each over the lines it goes on."""
    return re.findall(r"^python3 -m venv(?:.*\\\n)*.*$", README, re.MULTILINE)


def test_the_check_runs_the_test_command_of_the_readme():
    _, tests = commands_shown()
    assert "pytest" in tests
    assert f"\n{tests}\n" in (ROOT / ".ci" / "run").read_text(encoding="utf-8")


def test_main_job_command_names_a_shipped_example():
    main_job, _ = commands_shown()
    example = re.search(r"temperwright advise (catalog/examples/\S+\.toml)$", main_job)
    assert (ROOT / example[1]).is_file()
