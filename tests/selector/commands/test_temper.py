import json

import pytest

from catalog.load import SHIPPED
from selector.commands import cli as commands
from selector.specimen.record import TemperedOut


@pytest.fixture
def run(cli):
    def temper(*args):
        return cli.invoke(commands, ["temper", *args])

    return temper


def test_the_temper_wanted_comes_first_and_every_row_below(run):
    done = run("42CrMo4", "--for", "2 h", "--to", "45 HRC")
    assert done.exit_code == 0, done.output
    first, second = done.stdout.splitlines()[:2]
    assert first.startswith("4140 (42CrMo4), ")
    assert first.endswith("as quenched, tempered 2 h.")
    assert second.startswith("45 HRC: temper at ")
    for words in (
        "   150 °C  ",
        "   700 °C  ",
        "brittle",
        "Brittle if tempered at",
        "Taken as",
    ):
        assert words in done.stdout
    assert max(len(line) for line in done.stdout.splitlines()) <= 100


def test_json_is_the_whole_record(run):
    found = json.loads(run("42CrMo4", "--json", "--quenched", "55 HRC", "--to", "45").stdout)
    assert TemperedOut.model_validate(found).quench is None
    row = found["rows"][0]
    assert (row["temperature_c"], row["time_s"]) == (150.0, 3600.0)
    assert set(row["hrc"]) == {"p05", "p50", "p95"}
    assert found["wanted"]["temperature_c"]["p50"] > 300.0
    assert found["embrittlement"][0]["source"] == "asm-handbook-4"
    assert "NaN" not in json.dumps(found)


def test_a_hardness_that_no_temper_gives_ends_with_one(run):
    done = run("C45", "--to", "64 HRC")
    assert done.exit_code == 1
    assert "64 HRC: never as hard" in done.stdout
    assert "   150 °C  " in done.stdout


def test_the_plot_is_a_file_and_explain_names_the_source(run, tmp_path):
    path = tmp_path / "temper.svg"
    done = run("D2", "--plot", str(path), "--explain")
    assert done.exit_code == 0, done.output
    assert path.stat().st_size > 1000
    assert "source: us-producer-d2" in " ".join(done.stdout.split())


def test_a_catalogue_of_ones_own_is_laid_over(run, tmp_path):
    (tmp_path / "steels").mkdir()
    shipped = (SHIPPED / "steels" / "c45.toml").read_text(encoding="utf-8")
    own = shipped.replace("min = 820, max = 860", "min = 830, max = 850.2")
    (tmp_path / "steels" / "c45.toml").write_text(own, encoding="utf-8")
    done = run("C45", "--catalog", str(tmp_path), "--json")
    assert json.loads(done.stdout)["quench"]["heat"]["temperature_c"] == pytest.approx(840.1)
    assert run("C45", "--catalog", str(tmp_path / "nowhere")).exit_code == 2


@pytest.mark.parametrize(
    ("args", "said"),
    [
        (("adamantium",), "STEEL must be a known steel; got 'adamantium'"),
        (("S235",), "STEEL must be a steel that a quench hardens; got 'S235JR'"),
        (("C45", "--for", "1"), "--for must be a time with its unit; got '1'"),
        (("C45", "--quenched", "hard"), "--quenched must be a hardness; got 'hard'"),
        (("C45", "--to", "99 HRC"), "--to must be inside the conversion table"),
        (("C45", "--heat", "400 degC"), "--heat must be between 710 and 1300 °C; got 400"),
        (("M2", "--at", "700 degC"), "--at must be between 50 and 699 °C, where HS6-5-2C is"),
        (("C45", "--plot", "a.gif"), "--plot must be a .png, .svg or .pdf file; got 'a.gif'"),
    ],
)
def test_bad_input_ends_with_two(run, args, said):
    done = run(*args)
    assert done.exit_code == 2
    assert said in done.stderr
    assert len(done.stderr.splitlines()) == 1
    assert "Traceback" not in done.output
