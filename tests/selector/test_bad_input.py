"""Every kind of bad input ends with exit code 2 and one line a fault.

A line names the field, the rule, the value received and the next step.
"""

import json
import re
import subprocess
import sys

import pytest

from catalog.load import SHIPPED
from selector.commands import cli as commands
from tests.dog import GONE, TEXT, varied

LINE = r"^{field} must be .*{rule}.*; got .*{got}.*[.?] [A-Z`].*[.?]$"
TUBE = {"shape": "tube", "size": 20, "length": 50}

# (what is wrong, changes to a sound requirement, field, part of the rule, value received)
FIELDS = [
    ("wrong unit", {"part.section.0.size": "25 kg"}, "part.section.1.size", "length", "25 kg"),
    ("odd unit", {"part.section.0.size": "25 ells"}, "part.section.1.size", "length", "ells"),
    ("text without unit", {"part.section.0.size": "25"}, "part.section.1.size", "unit", "25"),
    ("unit alone", {"part.section.0.size": "mm"}, "part.section.1.size", "number", "mm"),
    ("endless unit", {"part.section.0.size": "5 mm**9**9**9**9"}, "part.section.1.size",
     "unit of length", "5 mm"),
    ("torn unit", {"part.section.0.size": "5 ("}, "part.section.1.size", "unit of", "5 "),
    ("bare torque", {"load.torque": 90}, "load.torque", "with its unit", "90"),
    ("torque text without unit", {"load.torque": "90"}, "load.torque", "with its unit", "90"),
    ("torque range", {"load.torque": "75-100"}, "load.torque", "not a range", "75-100"),
    ("torque range with unit", {"load.torque": "75-100 N m"}, "load.torque", "not a range",
     "75-100 N m"),
    ("torque in newtons", {"load.torque": "90 N"}, "load.torque", "unit of torque", "90 N"),
    ("negative torque", {"load.torque": "-5 N m"}, "load.torque", "between 0", "-5 N m"),
    ("negative size", {"part.section.0.size": -3}, "part.section.1.size", "between", "-3"),
    ("zero length", {"part.section.1.length": 0}, "part.section.2.length", "between", "0"),
    ("NaN", {"part.section.0.size": float("nan")}, "part.section.1.size", "between", "nan"),
    ("endless", {"part.section.0.size": float("inf")}, "part.section.1.size", "between", "inf"),
    ("huge size", {"part.section.0.size": 1e30}, "part.section.1.size", "5000 mm", "1e"),
    ("endless integer", {"part.section.0.size": 10**400}, "part.section.1.size", "5000 mm",
     "more than 18 digits"),
    ("true for a size", {"part.section.0.size": True}, "part.section.1.size", "length", "true"),
    ("true for a count", {"part.quantity": True}, "part.quantity", "a number", "true"),
    ("true for points", {"priorities": {"points": {"cost": True}}}, "priorities.points.cost",
     "a number", "true"),
    ("figure for yes or no", {"workshop.only_stock": 3}, "workshop.only_stock", "true or false",
     "3"),
    ("no pieces", {"part.quantity": 0}, "part.quantity", "at least 1", "0"),
    ("half a piece", {"part.quantity": 1.5}, "part.quantity", "whole number", "1.5"),
    ("pieces in words", {"part.quantity": "three"}, "part.quantity", "whole number", "three"),
    ("text for a list", {"workshop.heat": "forge"}, "workshop.heat", "a list", "forge"),
    ("table for a list", {"part.section": {"size": 3}}, "part.section", "a list",
     "the keys size"),
    ("list for text", {"part.name": ["dog"]}, "part.name", "text", "a list of 1"),
    ("text for a table", {"zone.0.hardness": "50 HRC"}, "zone.1.hardness", "table", "50 HRC"),
    ("empty name", {"part.name": ""}, "part.name", "at least 1 character", "''"),
    ("name that clears the screen", {"part.name": "dog\x1b[2J"}, "part.name",
     "one line without control characters", "'dog\\x1b[2J'"),
    ("section turned round", {"part.section.0.name": "a\u202eb"}, "part.section.1.name",
     "one line without control characters", "'a\\u202eb'"),
    ("currency of two lines", {"limit.currency": "EUR\n"}, "limit.currency",
     "one line without control characters", "'EUR\\n'"),
    ("no section", {"part.section": []}, "part.section", "at least 1 entry", "a list of 0"),
    ("too many sections", {"part.section": [{**TUBE, "bore": 5}] * 31}, "part.section",
     "at most 30", "a list of 31"),
    ("tube without bore", {"part.section.0": TUBE}, "part.section.1", "given a bore",
     "the keys shape, size, length"),
    ("bore as large as size", {"part.section.0": {**TUBE, "bore": 20}}, "part.section.1.bore",
     "smaller than size, 20 mm", "20 mm"),
    ("hole as wide as the bar",
     {"part.feature.0": {"kind": "cross-hole", "at": 40, "size": 25}}, "part.feature.1.size",
     "smaller than section 2 is wide, 25 mm", "25 mm"),
    ("flat without width", {"part.section.0.shape": "flat"}, "part.section.1", "given a width",
     "the keys "),
    ("misspelt word", {"zone.0.wear": "slidding"}, "zone.1.wear", "'sliding'", "slidding"),
    ("unknown key", {"part.colour": "red"}, "part.colour", "a key we know", "red"),
    ("unknown table", {"lode": {}}, "lode", "a key we know", "an empty table"),
    ("no safety use", {"safety_use": GONE}, "safety_use", "given", "nothing"),
    ("no zone", {"zone": GONE}, "zone", "given", "nothing"),
    ("empty zones", {"zone": []}, "zone", "at least 1 entry", "a list of 0"),
    ("zone off the part", {"zone.1.section": [2, 7]}, "zone.2.section.2",
     "at most 2, the last section of the part", "7"),
    ("deeper than to the middle", {"zone.0.depth": "13 mm"}, "zone.1.depth",
     "at most 12.5 mm, which is hard through", "13 mm"),
    ("deeper than the wall", {"part.section.0": {**TUBE, "bore": 14}, "zone.0.depth": "4 mm"},
     "zone.1.depth", "at most 3 mm, which is hard through", "4 mm"),
    ("hole beyond the end",
     {"part.feature.0": {"kind": "cross-hole", "at": 200, "size": 5}}, "part.feature.1.at",
     "on the part, which is 180 mm long", "200 mm"),
    ("section counted from nought", {"zone.0.section": [0]}, "zone.1.section.1", "at least 1",
     "0"),
    ("window upside down", {"zone.0.hardness": {"min": "56 HRC", "max": "50 HRC"}},
     "zone.1.hardness", "min does not exceed its max (min 56 HRC, max 50 HRC)", "the keys "),
    ("empty window", {"zone.0.hardness": {}}, "zone.1.hardness", "min, max or both",
     "an empty table"),
    ("HRC below its scale", {"zone.0.hardness.min": "15 HRC"}, "zone.1.hardness.min",
     "20 HRC or more", "15 HRC"),
    ("HRC above its table", {"zone.0.hardness.max": "75 HRC"}, "zone.1.hardness.max",
     "inside the conversion table", "75 HRC"),
    ("hardness in words", {"zone.0.hardness.min": "hard"}, "zone.1.hardness.min", "a hardness",
     "hard"),
    ("two kinds of priorities", {"priorities": {"preset": "wear", "order": ["cost"]}},
     "priorities", "only one of", "the keys "),
    ("no points at all", {"priorities": {"points": {"cost": 0}}}, "priorities", "more than 0",
     "the keys "),
    ("unknown criterion", {"priorities": {"points": {"looks": 1}}}, "priorities.points.looks",
     "'cost'", "looks"),
    ("rack alone, and empty", {"workshop.only_stock": True}, "workshop", "with stock",
     "the keys "),
    ("budget with currency", {"limit.budget": "12 EUR"}, "limit.budget", "a number", "12 EUR"),
    ("negative budget", {"limit.budget": -1}, "limit.budget", "at least 0", "-1"),
    ("unknown heat source", {"workshop.heat.0.source": "dragon"}, "workshop.heat.1.source",
     "known heat source", "dragon"),
    ("unknown medium", {"workshop.bath.1.medium": "soup"}, "workshop.bath.2.medium",
     "known medium", "soup"),
    ("unknown steel in the rack", {"workshop.stock": [{"steel": "mithril"}]},
     "workshop.stock.1.steel", "known steel", "mithril"),
]  # fmt: skip

# (what is wrong, name of the file, its bytes, part of the rule, value received)
FILES = [
    ("empty", "dog.toml", b"", "a requirement", "an empty file"),
    ("blank", "dog.toml", b" \n\t\r\n", "a requirement", "an empty file"),
    ("latin-1", "dog.toml", TEXT.replace("drive", "cl\xe9").encode("latin-1"), "UTF-8",
     "other bytes"),
    ("UTF-16", "dog.toml", TEXT.encode("utf-16"), "UTF-8", "other bytes"),
    ("UTF-16 without mark", "dog.toml", TEXT.encode("utf-16-le"), "valid TOML", "line 2"),
    ("binary", "dog.toml", bytes(range(256)) * 8, "UTF-8", "other bytes"),
    ("not TOML", "dog.toml", b"size = = 3", "valid TOML", "line 1"),
    ("a key given twice", "dog.toml", b"a = 1\na = 2\n", "valid TOML", "overwrite"),
    ("not JSON", "dog.json", b"{'size': 3}", "valid JSON", "line 1"),
    ("TOML called JSON", "dog.json", TEXT.encode(), "valid JSON", "line 2"),
    ("over 1 MB", "dog.toml", b"#" * 1_000_001, "under 1 MB", "1000001 bytes"),
    ("deep TOML", "dog.toml", b"a = " + b"[" * 50_000, "plain file", "endless nesting"),
    ("deep JSON", "dog.json", b'{"a":' * 50_000, "plain file", "endless nesting"),
    ("a key of a hundred thousand parts", "dog.toml", b"a." * 100_000 + b"a = 1", "plain file",
     "endless nesting"),
    ("an integer of 5000 digits", "dog.toml", b"a = 1" + b"0" * 5000, "valid TOML", "digits"),
    ("an integer of 5000 digits in JSON", "dog.json", b'{"a": 1' + b"0" * 5000 + b"}",
     "valid JSON", "digits"),
]  # fmt: skip


@pytest.fixture
def refused(cli, tmp_path):
    """Return the lines on stderr of a run that must end with exit code 2."""

    def run(args=(), name="dog.toml", data=TEXT):
        path = tmp_path / name
        path.write_bytes(data if isinstance(data, bytes) else data.encode())
        result = cli.invoke(commands, ["advise", str(path), *args])
        assert result.exit_code == 2, result.output
        assert isinstance(result.exception, SystemExit)
        assert "Traceback" not in result.output
        assert result.stdout == ""
        return result.stderr.splitlines()

    return run


def assert_line(line, field, rule, got):
    wanted = LINE.format(field=re.escape(field), rule=re.escape(rule), got=re.escape(got))
    assert re.match(wanted, line), line


@pytest.mark.parametrize(
    ("changes", "field", "rule", "got"), [row[1:] for row in FIELDS], ids=[r[0] for r in FIELDS]
)
def test_a_bad_field(refused, changes, field, rule, got):
    lines = refused(name="dog.json", data=json.dumps(varied(changes)))
    assert len(lines) == 1
    assert_line(lines[0], field, rule, got)


@pytest.mark.parametrize(
    ("name", "data", "rule", "got"), [row[1:] for row in FILES], ids=[row[0] for row in FILES]
)
def test_a_bad_file(refused, name, data, rule, got):
    (line,) = refused(name=name, data=data)
    assert_line(line, f"file {name}", rule, got)


@pytest.mark.parametrize("data", [b"[]", b"[1, 2]", b"null", b'"dog"', b"3"])
def test_json_that_is_no_table(refused, data):
    (line,) = refused(name="dog.json", data=data)
    assert_line(line, "file dog.json", "a table of keys and values", "")


def test_a_folder_in_place_of_a_file(cli, tmp_path):
    result = cli.invoke(commands, ["advise", str(tmp_path)])
    assert result.exit_code == 2
    assert_line(result.stderr.strip(), f"file {tmp_path.name}", "a readable file", "directory")


def test_a_missing_file(cli, tmp_path):
    result = cli.invoke(commands, ["advise", str(tmp_path / "none.toml")])
    assert result.exit_code == 2
    assert_line(result.stderr.strip(), "file none.toml", "a readable file", "No such file")


OPTIONS = [
    (["--steel", "unobtainium"], "--steel", "a known steel", "unobtainium"),
    (["--steel", ""], "--steel", "a known steel", "''"),
    (["--route", "magic"], "--route", "a known route", "magic"),
]


@pytest.mark.parametrize(("args", "field", "rule", "got"), OPTIONS, ids=[o[3] for o in OPTIONS])
def test_a_bad_name_on_the_command_line(refused, args, field, rule, got):
    (line,) = refused(args)
    assert_line(line, field, rule, got)


@pytest.mark.parametrize(
    ("args", "word"),
    [
        (["--top", "0"], "--top"),
        (["--top", "-3"], "--top"),
        (["--top", "many"], "--top"),
        (["--tops", "3"], "--tops"),
        (["more", "words"], "more"),
    ],
)
def test_a_bad_option_is_named_with_the_way_to_help(refused, args, word):
    lines = "\n".join(refused(args))
    assert word in lines
    assert "temperwright advise --help" in lines


def test_all_faults_of_a_file_are_said_at_once(refused):
    bad = {
        "safety_use": GONE,
        "part.quantity": 0,
        "part.section.0.size": "25 kg",
        "part.section.1.length": -1,
        "zone.0.wear": "slidding",
        "load.torque": 90,
        "workshop.light": "candle",
        "part.colour": "red",
    }
    lines = refused(name="dog.json", data=json.dumps(varied(bad)))
    assert len(lines) == len(bad)
    for field in ("safety_use", "part.section.2.length", "workshop.light", "part.colour"):
        assert any(line.startswith(f"{field} must be") for line in lines)


def test_all_unknown_names_are_said_at_once(refused):
    bad = {
        "workshop.heat.0.source": "dragon",
        "workshop.bath.0.medium": "soup",
        "workshop.stock": [{"steel": "mithril"}],
    }
    assert len(refused(name="dog.json", data=json.dumps(varied(bad)))) == len(bad)


@pytest.fixture
def overlay(tmp_path):
    """Return a catalogue folder that holds one file."""

    def write(name, text):
        path = tmp_path / "mine" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
        return str(tmp_path / "mine")

    return write


def shipped(name):
    return (SHIPPED / name).read_text(encoding="utf-8")


CATALOGUES = [
    ("steels/c45.toml", "name = 3", "c45.toml: name: .*got 3"),
    ("steels/c45.toml", "name = = 3", r"c45.toml: \(whole file\): must be UTF-8 TOML"),
    ("steels/c45.toml", "a = 1" + "0" * 5000, r"c45.toml: \(whole file\): .*digits"),
    ("steels/c45.toml", shipped("steels/c45.toml").replace("family = ", 'family = "x"#'),
     "c45.toml: family: .*got x"),
    ("steels/c45.toml", "colour = 1\n" + shipped("steels/c45.toml"),
     "c45.toml: colour: .*got 1"),
    ("routes/subcontract-vacuum.toml",
     shipped("routes/subcontract-vacuum.toml").replace('media = ["air"', 'media = ["fog"'),
     "subcontract-vacuum.toml: media: .*got fog"),
    ("prices.toml", "currency = 3", "prices.toml: currency: .*got 3"),
]  # fmt: skip


@pytest.mark.parametrize(
    ("name", "text", "line"), CATALOGUES, ids=[f"{c[0]}-{n}" for n, c in enumerate(CATALOGUES)]
)
def test_a_broken_catalogue_folder_names_file_key_and_value(refused, overlay, name, text, line):
    lines = refused(["--catalog", overlay(name, text)])
    assert any(re.match(line, said) for said in lines), lines


@pytest.mark.parametrize("name", ["nowhere", "dog.toml"])
def test_a_catalogue_that_is_no_folder(refused, tmp_path, name):
    (line,) = refused(["--catalog", str(tmp_path / name)])
    assert line == f"{tmp_path / name}: (folder): folder must exist (got nothing there)"


def test_a_real_process_ends_with_two_and_no_traceback(tmp_path):
    path = tmp_path / "dog.toml"
    path.write_text(TEXT.replace('"90 lb ft"', "90"), encoding="utf-8")
    command = [sys.executable, "-c", "from selector.commands import main; main()"]
    done = subprocess.run(  # noqa: S603
        [*command, "advise", str(path)], capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.startswith("load.torque must be a torque with its unit; got 90.")
    assert "Traceback" not in done.stderr
