import csv
import tomllib
from pathlib import Path

import pytest

import selector.metallurgy.fitting.tempering as model
from selector.commands import cli as commands

PUBLISHED = Path(__file__).parents[2] / "published"


@pytest.fixture
def table(tmp_path):
    """Return a table of the hundred published readings the checks quote."""
    rows = []
    for name in ("grange1956_tempering.csv", "hollomon1945_tempering.csv"):
        with (PUBLISHED / name).open(encoding="utf-8", newline="") as lines:
            rows += csv.DictReader(lines)
    names = list(dict.fromkeys(name for row in rows for name in row))
    path = tmp_path / "readings.csv"
    with path.open("w", encoding="utf-8", newline="") as out:
        writer = csv.DictWriter(out, names)
        writer.writeheader()
        writer.writerows(rows)
    return path


def test_the_coefficients_are_printed_as_toml_and_the_error_printed_apart(cli, table):
    done = cli.invoke(commands, ["fit", str(table)])
    assert done.exit_code == 0, done.output
    data = tomllib.loads(done.stdout)
    assert list(data) == ["form", "published_hv_per_wt_pct", "martensite", "multiplier"]
    assert len(data["martensite"]["base_hv"]) == len(data["form"]["node_k"])
    assert "Steels left out are predicted within 1.00 HRC on average." in done.stderr
    assert "Readings of Hollomon and Jaffe 1945 left out are predicted" in done.stderr


def test_the_shape_of_the_shipped_file_is_reproduced(cli, table):
    shipped = (
        Path(model.__file__).parent.with_name("tempering.toml").read_text(encoding="utf-8")
    )
    fitted = cli.invoke(commands, ["fit", str(table)]).stdout
    before = shipped.index(model.FITTED)
    assert fitted[:before] == shipped[:before]
    assert "100 readings of 24 steels" in fitted
    kinds = [
        [line.split("=")[0] for line in text.splitlines() if not line.startswith("#   ")]
        for text in (fitted.replace("100 readings", "1026 readings"), shipped)
    ]
    assert kinds[0] == kinds[1]


def test_out_writes_the_same_to_a_file(cli, table, tmp_path):
    printed = cli.invoke(commands, ["fit", str(table)]).stdout
    out = tmp_path / "tempering.toml"
    done = cli.invoke(commands, ["fit", str(table), "--out", str(out)])
    assert done.exit_code == 0, done.output
    assert done.stdout == ""
    assert out.read_text(encoding="utf-8") == printed


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "line 1 must be a heading with source"),
        (b"a,b\n1,2\n", "got a, b. Name the columns in the first line."),
        (b"\xff\xfe\x00", "table must be a readable text file"),
        (b"source\x00", "line 1 must be a heading"),
    ],
    ids=["empty", "other columns", "not text", "null"],
)
def test_bad_content_ends_in_a_sentence(cli, tmp_path, content, said):
    path = tmp_path / "bad.csv"
    path.write_bytes(content)
    done = cli.invoke(commands, ["fit", str(path)])
    assert done.exit_code == 2
    assert said in done.stderr
    assert "Traceback" not in done.stderr
    assert done.stdout == ""


def test_a_bad_cell_is_said_with_line_column_and_value(cli, table):
    lines = table.read_text(encoding="utf-8").splitlines()
    column = lines[0].split(",").index("tempered_hrc")
    cells = next(csv.reader([lines[1]]))
    cells[column] = "hard"
    table.write_text("\n".join([lines[0], ",".join(f'"{c}"' for c in cells)]), encoding="utf-8")
    done = cli.invoke(commands, ["fit", str(table)])
    assert done.exit_code == 2
    assert "line 2, tempered_hrc must be a figure between -30 and 70; got 'hard'" in done.stderr


def test_too_few_readings_are_refused(cli, table):
    lines = table.read_text(encoding="utf-8").splitlines()
    table.write_text("\n".join(lines[:6]), encoding="utf-8")
    done = cli.invoke(commands, ["fit", str(table)])
    assert done.exit_code == 2
    assert "readings must be 24 or more, of two steels or more; got 5" in done.stderr


def test_a_missing_file_and_a_folder_are_refused(cli, tmp_path):
    for path in (tmp_path / "none.csv", tmp_path):
        done = cli.invoke(commands, ["fit", str(path)])
        assert done.exit_code == 2
        assert "table must be a readable text file" in done.stderr


def test_a_place_that_cannot_be_written_is_refused(cli, table, tmp_path):
    done = cli.invoke(commands, ["fit", str(table), "--out", str(tmp_path / "no" / "x.toml")])
    assert done.exit_code == 2
    assert "--out must be a file that can be written" in done.stderr


def test_bands_give_the_tables_of_hardenability(cli, tmp_path):
    rows = [
        "soft,1.5,55,62,0.46,0.65", "soft,5,28,57,0.46,0.65", "soft,15,20,30,0.46,0.65",
        "hard,1.5,53,61,0.41,1.40", "hard,5,48,58,0.41,1.40", "hard,15,26,44,0.41,1.40",
    ]  # fmt: skip
    path = tmp_path / "bands.csv"
    heading = "grade,distance_mm,hrc_min,hrc_max,c_wt,mn_wt"
    path.write_text("\n".join([heading, *rows]), encoding="utf-8")
    done = cli.invoke(commands, ["fit", str(path)])
    assert done.exit_code == 0, done.output
    assert list(tomllib.loads(done.stdout)) == ["power", "shape"]
    assert "6 points of 2 bands" in done.stdout
    assert "left out" in done.stderr
