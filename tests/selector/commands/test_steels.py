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


@pytest.mark.parametrize("text", ["EN 19A", "1.7225", "scm440", "4140"])
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
    assert done.exit_code == 1, done.output
    assert f"No steel is called '{text}'. `temperwright steels` lists them." in done.stderr
    assert cli.invoke(commands, ["steels", text, "--json"]).exit_code == 1


@pytest.mark.parametrize(
    ("text", "meant"), [("sliver steel", "silver steel"), ("42CrM4", "42CrMo4"), ("O11", "O1")]
)
def test_a_slip_is_asked_back(cli, text, meant):
    done = cli.invoke(commands, ["steels", text])
    assert done.exit_code == 1
    assert "Did you mean" in done.stderr
    assert meant in done.stderr


@pytest.mark.parametrize(
    ("text", "slugs"),
    [
        ("O-1", ["100mncrw4"]),
        ("40Cr", ["5140"]),
        ("S235", ["s235"]),
        ("42Cr", ["42crmo4"]),
        ("leaf spring", ["5160"]),
    ],
)
def test_a_name_brings_no_wrong_extras(cli, text, slugs):
    done = cli.invoke(commands, ["steels", text, "--json"])
    assert [steel["slug"] for steel in json.loads(done.stdout)] == slugs


def test_a_name_with_a_mark_or_a_window_says_so(cli):
    assert "condition T of BS 970" in cli.invoke(commands, ["steels", "EN24T"]).stdout
    assert "By this name: 4140 has" in cli.invoke(commands, ["steels", "4140"]).stdout


def test_a_new_steel_is_a_file_that_check_asks_to_be_filled_in(cli, tmp_path):
    done = cli.invoke(commands, ["steels", "--new", "Bar 7/b", "--into", str(tmp_path)])
    assert done.exit_code == 0, done.output
    path = tmp_path / "steels" / "bar-7-b.toml"
    assert str(path) in done.stdout
    asked = cli.invoke(commands, ["check", str(tmp_path)])
    assert asked.exit_code == 2
    for key in ("family", "kind", "summary", "hardened.temperature_c.source"):
        assert f"bar-7-b.toml: {key}: must" in asked.stderr
    again = cli.invoke(commands, ["steels", "--new", "Bar 7/b", "--into", str(tmp_path)])
    assert again.exit_code == 2
    assert "must not be there yet" in again.stderr


@pytest.mark.parametrize("name", ["", "--", 'a "quoted" bar', "steer\x1b[2J"])
def test_a_new_steel_needs_a_plain_name(cli, tmp_path, name):
    done = cli.invoke(commands, ["steels", f"--new={name}", "--into", str(tmp_path)])
    assert done.exit_code == 2
    assert list(tmp_path.iterdir()) == []


def test_a_template_that_is_filled_in_is_sound(cli, tmp_path):
    cli.invoke(commands, ["steels", "--new", "Bar 7", "--into", str(tmp_path)])
    path, origin = tmp_path / "steels" / "bar-7.toml", 'source = "own-estimate", at = "here"'
    text = path.read_text(encoding="utf-8").replace('source = "", at = ""', origin)
    for key, value in (("family", "mild"), ("kind", "alloy"), ("summary", "A bar of mine.")):
        text = text.replace(f'\n{key} = ""', f'\n{key} = "{value}"')
    lines = [line if line.startswith("#") else line.replace("{ source", "{ min = 820, source")
             if "temperature_c" in line else line.replace("{ source", "{ min = 150, source")
             for line in text.splitlines()]  # fmt: skip
    path.write_text("\n".join(lines), encoding="utf-8")
    done = cli.invoke(commands, ["check", str(tmp_path)])
    assert "must be given" not in done.stderr
    assert done.exit_code == 0, done.stderr


def test_explain_names_the_source_of_each_number(cli, catalog):
    said = " ".join(cli.invoke(commands, ["steels", "115CrV3", "--explain"]).stdout.split())
    source = catalog.steels["115crv3"].composition_wt_pct["C"].source
    assert f"composition_wt_pct.C: min 1.1, max 1.25; specified; source: {source}" in said


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
