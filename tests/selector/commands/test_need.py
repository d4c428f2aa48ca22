import json

import pytest

from selector.commands import cli as commands
from selector.need.record import NeedOut
from tests.dog import varied


@pytest.fixture
def run(cli, tmp_path):
    def need(*args, changes=None):
        path = tmp_path / "dog.json"
        path.write_text(json.dumps(varied(changes)), encoding="utf-8")
        return cli.invoke(commands, ["need", str(path), *args])

    return need


def test_the_answer_stands_first_and_every_zone_has_its_line(run):
    done = run()
    assert done.exit_code == 0, done.output
    lines = done.stdout.splitlines()
    assert lines[0] == "drive dog"
    assert lines[1].startswith("It stands its load as bought")
    assert "zone 1: 50 to 56 HRC, 0.1 mm deep" in done.stdout
    assert "zone 2: none" in done.stdout
    assert "section 1: any steel stands the torque" in done.stdout


def test_a_struck_body_has_only_a_ceiling(run):
    assert "zone 2: not above 48 HRC" in run(changes={"load.impact": "hammered"}).stdout


def test_json_is_the_whole_record(run):
    answer = NeedOut.model_validate_json(run("--json").stdout)
    assert answer.part == "drive dog"


def test_explain_names_relation_and_source(run):
    assert "Where the numbers come from" not in run().stdout
    said = " ".join(run("--explain").stdout.split())
    assert "by least hardness whose factor of strength is 1" in said
    assert "Pavlina and Van Tyne 2008" in said


def test_bad_input_ends_with_exit_two(run):
    done = run(changes={"load.torque": 90})
    assert done.exit_code == 2
    assert "load.torque" in done.stderr
