"""The README tells the truth: its commands are those of the check, its output is real."""

import re
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = (ROOT / "README.md").read_text(encoding="utf-8")
SHOWN = re.compile(r"<!-- output: temperwright (.+?) -->\n```\n(.*?)```", re.DOTALL)


def test_output_shown_is_the_beginning_of_the_real_output():
    command, shown = SHOWN.search(README).groups()
    run = [sys.executable, "-c", "from selector.commands import main; main()", *command.split()]
    done = subprocess.run(run, cwd=ROOT, capture_output=True, text=True, check=True)  # noqa: S603
    real = done.stdout
    assert len(shown.splitlines()) > 10
    assert real.startswith(shown)


def test_the_check_runs_the_test_command_of_the_readme():
    commands = [line for line in README.splitlines() if line.startswith("python3 -m venv")]
    assert len(commands) == 2
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert commands[1] in script.splitlines()


def test_main_job_command_names_a_shipped_example():
    command = next(
        line for line in README.splitlines() if "temperwright advise catalog" in line
    )
    example = re.search(r"catalog/examples/\S+\.toml", command)[0]
    assert (ROOT / example).is_file()
