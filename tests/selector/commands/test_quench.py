import json

import pytest

from selector.commands import cli as commands
from selector.specimen import specimen
from selector.specimen.record import QuenchedOut


@pytest.fixture
def run(cli, monkeypatch):
    # How thick a round hardens through is tested beside it; a few sizes make the sentence.
    monkeypatch.setattr(specimen, "TRIED_MM", specimen.TRIED_MM[::9])

    def quench(steel, *args, section="round 30 mm", bath="oil"):
        options = ["--section", section, "--bath", bath]
        return cli.invoke(commands, ["quench", steel, *options, *args])

    return quench


def test_skin_and_centre_come_first_and_every_point_below(run):
    done = run("silver steel", section="round 20 mm", bath="water")
    assert done.exit_code == 0, done.output
    first, second = done.stdout.splitlines()[:2]
    assert first.startswith("Silver steel (115CrV3): ")
    assert second == "round 20 mm, from 780 °C into water at 20 °C"
    for words in ("under skin", "   10.00 mm  ", "a round hardens through up to", "Taken as"):
        assert words in done.stdout
    assert max(len(line) for line in done.stdout.splitlines()) <= 100


def test_json_is_the_whole_record(run):
    found = json.loads(run("EN24", "--heat", "1550 degF", "--json").stdout)
    assert QuenchedOut.model_validate(found).quench.heat.source == "as given"
    assert [set(point) for point in found["points"]] == [{"from_surface_mm", "hrc"}] * 5
    assert set(found["points"][0]["hrc"]) == {"p05", "p50", "p95"}
    assert found["through_share"] > 0.9
    assert "NaN" not in json.dumps(found)


def test_a_steel_that_no_quench_hardens_ends_with_one(run, tmp_path):
    path = tmp_path / "plot.png"
    done = run("S235", "--plot", str(path))
    assert done.exit_code == 1
    assert "mild steel (S235JR) is not hardened by a quench." in done.stdout
    assert "No plot is written" in done.stderr
    assert not path.exists()
    found = json.loads(run("X5CrNi18-10", "--json").stdout)
    assert found["points"] == []
    assert found["steel"]["hardens"] == "not"


def test_the_plot_is_a_file_and_explain_names_the_source(run, tmp_path):
    path = tmp_path / "quench.pdf"
    done = run("C45", "--plot", str(path), "--explain")
    assert done.exit_code == 0, done.output
    assert path.read_bytes().startswith(b"%PDF")
    assert "source: hardenability.heat_curve" in " ".join(done.stdout.split())


@pytest.mark.parametrize(
    ("args", "changes", "said"),
    [
        (("adamantium",), {}, "STEEL must be a known steel; got 'adamantium'"),
        (("C45",), {"section": "round 30"}, "--section.size must be a length with its unit"),
        (("C45",), {"section": "round 3000 mm"}, "--section must be one that cools like"),
        (("C45",), {"bath": "lead"}, "--bath must be a known bath; got 'lead'"),
        (("C45", "--heat", "400 degC"), {}, "--heat must be between 710 and 1300 °C; got 400"),
        (("C45", "--plot", "a.gif"), {}, "--plot must be a .png, .svg or .pdf file"),
    ],
)
def test_bad_input_ends_with_two(run, args, changes, said):
    done = run(*args, **changes)
    assert done.exit_code == 2
    assert said in done.stderr
    assert len(done.stderr.splitlines()) == 1
    assert "Traceback" not in done.output
