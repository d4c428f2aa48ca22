import tomllib

import pytest

from catalog import load_catalog
from selector.commands import cli as commands


@pytest.fixture
def listed(tmp_path):
    """Return a function that writes a list and returns its path."""

    def write(text):
        path = tmp_path / "list.csv"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return write


def test_prices_are_shown_first_and_written_on_demand(cli, listed, tmp_path):
    path, out = listed("steel,price,currency\nEN24T,9.5,EUR\n"), tmp_path / "prices.toml"
    done = cli.invoke(commands, ["import", "prices", path])
    assert done.exit_code == 0, done.output
    assert "2: 817m40 9.5 EUR a kg" in done.stdout
    assert not out.exists()
    assert cli.invoke(commands, ["import", "prices", path, "--out", str(out)]).exit_code == 0
    assert load_catalog(tmp_path).prices.steel_per_kg["817m40"] == 9.5


def test_one_bad_line_and_nothing_is_written(cli, listed, tmp_path):
    path = listed("steel,price,currency\nEN24T,9.5,EUR\nfoo bar,2,EUR\n")
    out = tmp_path / "prices.toml"
    done = cli.invoke(commands, ["import", "prices", path, "--out", str(out)])
    assert done.exit_code == 2
    assert "2: 817m40" in done.stdout
    assert "3: refused: 'foo bar': no known steel." in done.stderr
    assert "1 of 2 lines refused: nothing written." in done.stderr
    assert not out.exists()


def test_a_rack_becomes_bars_of_a_part(cli, listed, tmp_path):
    path, out = listed("steel;size;evidence\nEN24T;30;receipt\nO1;1/2 in;\n"), tmp_path / "bars"
    done = cli.invoke(commands, ["import", "stock", path, "--out", str(out)])
    assert done.exit_code == 0, done.output
    assert tomllib.loads(out.read_text(encoding="utf-8"))["workshop"]["stock"] == [
        {"steel": "EN24T", "size": "30 mm", "evidence": "receipt"},
        {"steel": "O1", "size": "1/2 in"},
    ]


def test_a_bar_that_no_requirement_takes_is_refused(cli, listed):
    done = cli.invoke(commands, ["import", "stock", listed("steel,evidence\nEN8,guess\n")])
    assert done.exit_code == 2
    assert "evidence must be one of" in done.stderr


def test_a_missing_list(cli, tmp_path):
    done = cli.invoke(commands, ["import", "prices", str(tmp_path / "none.csv")])
    assert done.exit_code == 2
    assert "must be a CSV file" in done.stderr


@pytest.mark.parametrize("what", ["prices", "stock"])
def test_a_place_that_takes_no_file_is_refused(cli, listed, tmp_path, what):
    path, out = listed("steel,price,currency\nEN24T,9.5,EUR\n"), tmp_path / "none" / "a.toml"
    done = cli.invoke(commands, ["import", what, path, "--out", str(out)])
    assert done.exit_code == 2
    assert "--out must be a file that can be written; got" in done.stderr
