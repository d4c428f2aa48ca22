"""`temperwright batch` from the command line, its parts worked out in this process."""

import csv
import json
import sys
from contextlib import nullcontext

import pytest

from selector.commands import cli as commands
from tests.selector.batch.conftest import here, text_of

SAFE = text_of()


@pytest.fixture
def in_process(monkeypatch):
    """Let no process be started: each costs seconds, and its own tests start some."""
    module = sys.modules["selector.commands.batch"]
    monkeypatch.setattr(module, "_worker", lambda *_: nullcontext(here))


def asked(cli, folder, out, *options):
    return cli.invoke(commands, ["batch", str(folder), "--out", str(out), *options])


@pytest.mark.usefixtures("in_process")
def test_a_page_a_table_and_the_worst_that_became_of_a_part(cli, tmp_path):
    parts, out = tmp_path / "parts", tmp_path / "out"
    parts.mkdir()
    (parts / "pin.toml").write_text(SAFE, encoding="utf-8")
    (parts / "bush.toml").write_text(text_of("bush", 20), encoding="utf-8")
    done = asked(cli, parts, out)
    assert done.exit_code == 0, done.output
    assert "2 parts: 2 to be hardened. 2 worked out now." in done.stdout
    assert "The fewest bars that serve 2 parts within 0.05 of the score: 1" in done.stdout
    assert "Harden at 800 °C" in done.stdout
    assert "Cautions" in done.stdout
    assert "Prices are invented for demonstration." in done.stdout
    hard = text_of("jaw", 10, 66, 67)
    (parts / "jaw.toml").write_text(
        hard.replace('"67 HRC" }', '"67 HRC", must = true }'), encoding="utf-8"
    )
    done = asked(cli, parts, out)
    assert done.exit_code == 1, done.output
    assert "1 without an option. 1 worked out now." in done.stdout
    (parts / "bad.toml").write_text("no = toml = at all", encoding="utf-8")
    done = asked(cli, parts, out, "--json")
    assert done.exit_code == 2
    assert json.loads(done.stdout)["counts"] == {"bad_input": 1, "harden": 2, "no_option": 1}
    with (out / "summary.csv").open(encoding="utf-8") as table:
        reasons = [line["reason"] for line in csv.DictReader(table)]
    assert sorted(reasons) == ["bad_input", "harden", "harden", "no_option"]


@pytest.mark.usefixtures("in_process")
def test_a_list_carries_its_own_columns_into_the_summary(cli, tmp_path):
    (tmp_path / "pin.toml").write_text(SAFE, encoding="utf-8")
    listed = tmp_path / "orders.csv"
    listed.write_text("order,file,quantity\nA-7,pin.toml,3\n", encoding="utf-8")
    done = asked(cli, listed, tmp_path / "out", "--loss", "0")
    assert done.exit_code == 0, done.output
    with (tmp_path / "out" / "summary.csv").open(encoding="utf-8") as table:
        (line,) = csv.DictReader(table)
    assert (line["order"], line["quantity"], line["place"]) == ("A-7", "3", "orders.csv line 2")


@pytest.mark.parametrize(
    ("source", "options", "said"),
    [
        ("nowhere", [], "PARTS must be a folder or a CSV file that exists"),
        (".", [], "PARTS must be a list of at least one part"),
        ("pin.toml", [], "PARTS must be a folder of part files or a list as CSV"),
        ("list.csv", [], "heads with a column file"),
    ],
)
def test_what_cannot_begin_ends_with_its_reason(cli, tmp_path, source, options, said):
    folder = tmp_path / "empty"
    folder.mkdir()
    if source.endswith(("csv", "toml")):
        (folder / source).write_text("a,b\n1,2\n")
    done = asked(cli, folder / source, tmp_path / "out", *options)
    assert done.exit_code == 2
    assert said in done.stderr


def test_an_address_of_no_scheduler_ends_with_its_reason(cli, tmp_path):
    (tmp_path / "parts").mkdir()
    (tmp_path / "parts" / "pin.toml").write_text(SAFE, encoding="utf-8")
    done = asked(cli, tmp_path / "parts", tmp_path / "out", "--scheduler", "no such thing")
    assert done.exit_code == 2
    assert done.stderr.startswith("--scheduler must be the address of a running Dask scheduler")


def test_how_many_are_done_and_how_long_the_rest_takes():
    shown = []
    module = sys.modules["selector.commands.batch"]
    move = module._mover(lambda text, share: shown.append((text, share)), 0.0)
    move(1, 4, 0)
    move(2, 4, 1)
    assert shown[0] == ("1 of 4 parts", 0.25)
    assert shown[1][0].startswith("2 of 4 parts, about ")
