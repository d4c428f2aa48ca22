import json

import pytest

from catalog.load import SHIPPED
from selector.commands import cli as commands


def test_every_steel_is_listed_with_names_and_conditions(cli, catalog):
    done = cli.invoke(commands, ["steels"])
    assert done.exit_code == 0
    for steel in catalog.steels.values():
        assert steel.name in done.stdout
    assert "Sold" in done.stdout


@pytest.mark.parametrize("text", ["EN 19", "1.7225", "scm440", "4140"])
def test_any_name_finds_the_steel(cli, text):
    done = cli.invoke(commands, ["steels", text, "--json"])
    assert "42crmo4" in {steel["slug"] for steel in json.loads(done.stdout)}


def test_a_kind_finds_all_of_it(cli, catalog):
    answer = json.loads(cli.invoke(commands, ["steels", "spring", "--json"]).stdout)
    kinds = {slug for slug, steel in catalog.steels.items() if steel.kind == "spring"}
    assert kinds <= {steel["slug"] for steel in answer}


@pytest.mark.parametrize("text", ["unobtainium", "[/qqq]", "[bold]qqq"])
def test_what_no_steel_is_called(cli, text):
    done = cli.invoke(commands, ["steels", text])
    assert done.exit_code == 0, done.output
    assert f"No steel has '{text}' in a name" in done.stdout
    assert json.loads(cli.invoke(commands, ["steels", text, "--json"]).stdout) == []


def test_explain_names_the_source_of_each_number(cli):
    said = " ".join(cli.invoke(commands, ["steels", "115CrV3", "--explain"]).stdout.split())
    assert "composition_wt_pct.C: min 1.1, max 1.25; specified; source: din-17350" in said


def test_explain_ends_with_the_sources_in_full(cli, catalog):
    said = cli.invoke(commands, ["steels", "C45E", "--explain"]).stdout
    _, sources = said.split("\nSources\n")
    assert "lucefin-cards: " in sources
    assert " ".join(catalog.sources["en-10083-2"].citation.split()) in " ".join(sources.split())


@pytest.mark.parametrize("command", ["steels", "routes"])
def test_a_folder_of_the_user_is_listed(cli, tmp_path, command):
    source = SHIPPED / command / ("c45.toml" if command == "steels" else "normalise.toml")
    (tmp_path / command).mkdir()
    text = source.read_text(encoding="utf-8").replace('summary = "', 'summary = "Mine: ', 1)
    (tmp_path / command / source.name).write_text(text, encoding="utf-8")
    assert "Mine: " in cli.invoke(commands, [command, "--catalog", str(tmp_path)]).stdout
    assert "Mine: " not in cli.invoke(commands, [command]).stdout
