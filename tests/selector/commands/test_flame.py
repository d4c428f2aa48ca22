import json

import pytest

from selector.commands import cli as commands
from tests.dog import varied
from tests.once import flame_once


@pytest.fixture
def run(cli, tmp_path, monkeypatch):
    monkeypatch.setattr("selector.flame.answer.flame_answer", flame_once)

    def flame(*args, changes=None):
        path = tmp_path / "dog.json"
        path.write_text(json.dumps(varied(changes)), encoding="utf-8")
        return cli.invoke(commands, ["flame", str(path), "--steel", "42CrMo4", *args])

    return flame


def test_the_verdict_comes_first(run):
    done = run()
    assert done.exit_code == 0, done.output
    first, second = done.stdout.splitlines()[:2]
    assert first == "drive dog"
    assert second.startswith("Flame hardening: yes")
    assert "along the axis" in done.stdout
    assert "across the middle" in done.stdout
    assert "Cautions" in done.stdout


def test_json_is_one_object_and_nothing_else(run):
    found = json.loads(run("--json").stdout)
    assert found["verdict"] in {"yes", "yes_if"}
    assert [family["steel_slug"] for family in found["families"]] == ["42crmo4"]


def test_a_no_is_an_answer_and_no_error(run):
    done = run(changes={"safety_use": "steering"})
    assert done.exit_code == 0
    assert "Flame hardening: no" in done.stdout


def test_the_map_is_saved(run, tmp_path):
    target = tmp_path / "map.svg"
    assert run("--plot", str(target)).exit_code == 0
    assert target.stat().st_size > 1000


def test_where_nothing_is_heated_the_verdict_comes_without_a_map(run, tmp_path):
    target = tmp_path / "map.png"
    done = run("--plot", str(target), changes={"safety_use": "brake"})
    assert done.exit_code == 0
    assert "Flame hardening: no" in done.stdout
    assert "No map is written" in done.stderr
    assert not target.exists()


DIE = {f"part.section.{n}.size": "76 mm" for n in (0, 1)}


@pytest.mark.parametrize(
    ("changes", "verdict", "words"),
    [
        ({**DIE, "workshop.heat": [{"source": "hand-torch"}]}, "no", "too little to harden"),
        ({"workshop.turns_part": False}, "yes_if", "nothing is said to hold it"),
    ],
)
def test_what_cannot_be_done_has_a_clear_reason(run, changes, verdict, words):
    """A torch too small ever to reach the heat, nothing that holds the part."""
    found = json.loads(run("--json", changes=changes).stdout)
    assert found["verdict"] == verdict
    assert words in json.dumps(found)
    assert "NaN" not in json.dumps(found)


def test_a_disc_is_followed_like_any_part(run):
    disc = {"part.section.0.length": "4 mm", "part.section.1.length": "4 mm"}
    found = json.loads(run("--json", changes=disc).stdout)
    assert found["verdict"] in {"yes", "yes_if"}
    assert found["map"]["along_mm"][-1] < 8.0
    assert "NaN" not in json.dumps(found)


@pytest.mark.parametrize(
    ("args", "changes", "words"),
    [
        (
            ("--plot", "map.gif"),
            None,
            "--plot must be a .png, .svg or .pdf file; got 'map.gif'",
        ),
        (
            (),
            {"workshop.bath": [{"medium": "water", "temperature": "120 degC"}]},
            "workshop.bath.1.temperature must be between 0 and 99 °C in water; got 120 °C",
        ),
        ((), {"load.torque": "90"}, "load.torque"),
        (
            (),
            {"workshop.bath": [{"medium": "oil", "temperature": "900 degC"}]},
            "workshop.bath.1.temperature",
        ),
        (  # a zone longer than the part
            (),
            {"zone.0.section": [1, 2, 3]},
            "section",
        ),
        (  # a bore that leaves no wall
            (),
            {"part.section.0.bore": "25 mm"},
            "part.section.1.bore must be smaller than size, 25 mm, or no wall is left",
        ),
    ],
)
def test_bad_input_ends_with_2_and_a_reason(run, args, changes, words):
    done = run(*args, changes=changes)
    assert done.exit_code == 2
    assert words in done.stderr
    assert "Traceback" not in done.output


def test_an_unknown_steel_is_refused(cli, tmp_path):
    path = tmp_path / "dog.json"
    path.write_text(json.dumps(varied()), encoding="utf-8")
    done = cli.invoke(commands, ["flame", str(path), "--steel", "adamantium"])
    assert done.exit_code == 2
    assert "--steel must be a known steel; got 'adamantium'" in done.stderr
