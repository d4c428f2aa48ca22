import json

import pytest

from selector.commands import cli as commands
from selector.trial.record import TrialOut
from tests.dog import TEXT

SAFE = TEXT.replace('"could hurt"', '"lifting"')


pytestmark = pytest.mark.usefixtures("few_steels")


@pytest.fixture
def run(cli, tmp_path):
    def of(*args: str, text: str = TEXT):
        part = tmp_path / "part.toml"
        part.write_text(text, encoding="utf-8")
        return cli.invoke(commands, ["trial", "plan", str(part), *args])

    return of


OPTION = "42crmo4/annealed/local-torch.oil/oven-225c-60min"


def test_a_plan_is_printed_and_is_data(run):
    shown = run(OPTION)
    assert shown.exit_code == 0, shown.output
    assert "What to do" in shown.stdout
    data = TrialOut.model_validate_json(run(OPTION, "--json").stdout)
    assert data.plan.option == OPTION
    assert data.plan.headline.replace("\n", " ") in " ".join(shown.stdout.split())


def test_without_an_option_the_first_is_tried(run, cli, tmp_path):
    plan = TrialOut.model_validate_json(run("--json", "--new", "torch").stdout).plan
    advised = cli.invoke(commands, ["advise", str(tmp_path / "part.toml"), "--json"])
    assert plan.option == json.loads(advised.stdout)["options"][0]["id"]
    assert plan.subject == "heat"


def test_a_part_that_lives_depend_on_is_referred(run):
    shown = run(text=SAFE)
    assert shown.exit_code == 0
    assert "qualified people" in shown.stdout
    assert json.loads(run("--json", text=SAFE).stdout)["plan"] is None


def test_an_unknown_bar_has_its_own_plan(run):
    rack = TEXT + '\nonly_stock = true\nstock = [{ steel = "unknown" }]\n'
    shown = run(text=rack)
    assert shown.exit_code == 0, shown.output
    assert "certificate" in shown.stdout


def test_an_option_that_is_not_there_is_refused(run):
    shown = run("c45/nowhere")
    assert shown.exit_code == 2
    assert "option" in shown.stderr
