"""A batch from its list to its summary: faults, what is kept, and going on after a kill."""

import csv
import io
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path
from types import SimpleNamespace

import psutil
import pytest

from selector.batch import answer
from selector.batch.listing import listed
from selector.batch.local import cores
from selector.batch.overlay import Overlay, catalog_of, overlay_of
from selector.batch.program import differing, program
from selector.batch.record import PartOut
from selector.batch.run import run
from selector.batch.serving import heats, serving
from selector.batch.store import Store
from selector.batch.summary import as_summed, csv_of, summary
from selector.errors import RequirementError
from tests.selector.batch.conftest import here, text_of

ROOT = Path(__file__).parents[3]


def ran(folder, out, worker):
    """Run a batch and return it with the places that were worked out."""
    worked = []

    def watched(tasks, overlay):
        for task, content in worker(tasks, overlay):
            worked.append(task.place)
            yield task, content

    store = Store(out, folder)
    done = run(listed(folder), Overlay(), store, watched, 0.05, lambda *_: None)
    return done, worked


def from_answers(answers):
    """Return a worker that hands out what was worked out before."""

    def worker(tasks, overlay):
        for task in tasks:
            known = answers.get(task.place)
            same = known is not None and json.loads(known)["key"] == task.key(
                program(), overlay
            )
            yield task, known if same else next(here([task], overlay))[1]

    return worker


def test_one_bad_part_stops_no_other_and_its_faults_stand_in_the_summary(
    shop, answers, tmp_path
):
    (shop / "bad.toml").write_text(text_of().replace('"light"', '"loud"'), encoding="utf-8")
    (shop / "=1+1.toml").write_text("no toml", encoding="utf-8")
    done, worked = ran(shop, tmp_path / "out", from_answers(answers))
    assert len(worked) == 6
    assert done.out.counts == {"harden": 4, "bad_input": 2}
    rows = {row.place: row for row in done.out.rows}
    assert "load.impact must be one of" in rows["bad.toml"].text
    table = list(csv.DictReader(io.StringIO((tmp_path / "out" / "summary.csv").read_text())))
    assert [line["place"] for line in table][:2] == ["'=1+1.toml", "bad.toml"]
    pin = next(line for line in table if line["part"] == "pin")
    assert pin["id"].startswith("100mncrw4/")
    assert 50 < float(pin["hrc_p50"]) < 56
    assert (tmp_path / "out" / pin["result"]).read_bytes() == answers["pin.toml"]
    kept = json.loads((tmp_path / "out" / "summary.json").read_text())
    assert [row["place"] for row in kept["rows"]] == sorted(rows)
    assert kept["cautions"]


def test_what_is_done_is_not_done_again_and_what_changed_is(shop, answers, tmp_path):
    worker, out = from_answers(answers), tmp_path / "out"
    first, worked = ran(shop, out, worker)
    assert len(worked) == 4
    again, worked = ran(shop, out, worker)
    assert worked == []
    assert again.out == first.out
    (shop / "pin.toml").write_text(text_of("pin", 11), encoding="utf-8")
    torn = next((out / "results").glob("key-*.json"))
    torn.write_bytes(torn.read_bytes()[:100])
    _, worked = ran(shop, out, worker)
    assert sorted(worked) == ["key.toml", "pin.toml"]
    assert torn.read_bytes() == answers["key.toml"]
    torn.write_bytes(answers["bush.toml"])
    _, worked = ran(shop, out, worker)
    assert worked == ["key.toml"]  # what lies under its name is another part's


def test_the_key_changes_with_part_program_and_catalogue(shop, tmp_path):
    pin = next(task for task in listed(shop) if task.place == "pin.toml")
    (tmp_path / "mine" / "steels").mkdir(parents=True)
    (tmp_path / "mine" / "marks.toml").write_text("", encoding="utf-8")
    mine = overlay_of([tmp_path / "mine"])
    keys = {
        pin.key(program(), Overlay()),
        pin.key({**program(), "numpy": "0"}, Overlay()),
        pin.key(program(), mine),
    }
    assert len(keys) == 3
    assert catalog_of(mine).steels == catalog_of(Overlay()).steels
    assert differing(program(), {**program(), "numpy": "0"}).startswith("numpy 0 instead of ")


def test_parts_alike_are_worked_out_once(shop, answers, tmp_path):
    (shop / "pin too.toml").write_bytes((shop / "pin.toml").read_bytes())
    done, worked = ran(shop, tmp_path / "out", from_answers(answers))
    assert len(worked) == 4
    assert [row.part for row in done.out.rows].count("pin") == 2


def test_another_program_is_refused_and_an_error_of_ours_ends_one_part(shop, monkeypatch):
    task = listed(shop)[0]
    other = PartOut.model_validate_json(
        answer.answered(task, Overlay(), {**program(), "numpy": "0"})
    )
    assert other.reason == "bad_input"
    assert "worker must be the same program" in other.text
    monkeypatch.setattr(answer, "advise", lambda *_: 1 / 0)
    broken = PartOut.model_validate_json(answer.answered(task, Overlay(), program()))
    assert (broken.reason, broken.bars) == ("failed", ())
    assert "ZeroDivisionError" in broken.text


def test_a_part_that_is_referred_has_no_bars_and_no_loads(shop, answers):
    path = shop / "pin.toml"
    path.write_text(text_of().replace('"could hurt"', '"lifting"'), encoding="utf-8")
    pin = next(task for task in listed(shop) if task.place == "pin.toml")
    asked = answer.requirement(pin)
    advice = answer.advise(asked)
    assert (advice.verdict, serving(advice), heats(advice)) == ("safety_referral", (), ())
    sound = PartOut.model_validate_json(answers["pin.toml"])
    assert sound.bars[0].id == sound.first.id
    assert [run.kind for run in sound.heats] == ["harden", "temper"]


def test_the_summary_needs_no_steps_of_a_part(shop, answers):
    parts = {place: PartOut.model_validate_json(text) for place, text in answers.items()}
    slim = {place: as_summed(part) for place, part in parts.items()}
    whole, short = (summary(listed(shop), p, lambda _: None, 0.05) for p in (parts, slim))
    assert whole == short
    assert len(csv_of(whole).splitlines()) == 5


@pytest.mark.parametrize("name", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1"])
def test_no_cell_of_the_table_is_a_formula(shop, answers, name):
    parts = {place: PartOut.model_validate_json(text) for place, text in answers.items()}
    parts["pin.toml"] = parts["pin.toml"].model_copy(update={"part": name})
    table = csv.DictReader(io.StringIO(csv_of(summary(listed(shop), parts, str, 0.05))))
    assert f"'{name}" in {line["part"] for line in table}


def advice_on(*options, beaten=()):
    """Return as much of an advice as its bars and heats are read from."""
    asked = SimpleNamespace(
        safety_critical=False, part=SimpleNamespace(section=(SimpleNamespace(size=12.0),))
    )
    return SimpleNamespace(asked=asked, options=options, beaten=beaten)


def option_of(steel, name, score, place="workshop"):
    work = SimpleNamespace(
        steel=SimpleNamespace(slug=steel, spoken=steel),
        condition=SimpleNamespace(name="annealed"),
        route=SimpleNamespace(place=place),
    )
    return SimpleNamespace(treatment=work, id=name, score=score, stands_back=False)


def test_a_bar_stands_for_the_best_that_is_made_of_it(monkeypatch):
    monkeypatch.setattr("selector.batch.serving.stands_back", lambda *_: False)
    monkeypatch.setattr("selector.batch.serving.unheard_of", lambda *_: False)
    beaten = (option_of("o1", "o1/c", 0.4), option_of("o1", "o1/d", 0.7))
    advice = advice_on(
        option_of("c45", "c45/a", 0.6), option_of("o1", "o1/b", 0.5), beaten=beaten
    )
    bars = [(bar.steel_slug, bar.id, bar.score) for bar in serving(advice)]
    assert bars == [("c45", "c45/a", 0.6), ("o1", "o1/d", 0.7)]


def test_what_a_firm_heats_shares_no_load_here():
    assert heats(advice_on(option_of("o1", "o1/a", 0.6, place="subcontract"))) == ()


@pytest.mark.parametrize("kind", ["a file", "the parts", "in a file"])
def test_an_out_folder_that_cannot_be_is_refused(shop, tmp_path, kind):
    (tmp_path / "file").write_text("", encoding="utf-8")
    out = {"a file": tmp_path / "file", "the parts": shop, "in a file": tmp_path / "file" / "x"}
    with pytest.raises(RequirementError, match=r"^--out must be (another|a) folder"):
        Store(out[kind], shop)


def test_a_batch_killed_midway_goes_on_from_there_and_leaves_no_process(
    shop, answers, tmp_path
):
    out = tmp_path / "out"
    command = ["batch", str(shop), "--out", str(out), "--jobs", "1"]
    with subprocess.Popen(  # noqa: S603
        [sys.executable, "-m", "selector.commands", *command],
        cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdout=subprocess.DEVNULL,
    ) as running:  # fmt: skip
        until = time.monotonic() + 120.0
        while not list(out.glob("results/*.json")) and time.monotonic() < until:
            time.sleep(0.01)
        family = psutil.Process(running.pid).children(recursive=True)
        running.send_signal(signal.SIGKILL)
    done = {path.name: path.stat().st_mtime_ns for path in out.glob("results/*.json")}
    assert 1 <= len(done) < 4
    assert not (out / "summary.csv").exists()
    _, worked = ran(shop, out, from_answers(answers))
    assert len(worked) == 4 - len(done)
    for name, changed in done.items():
        assert (out / "results" / name).stat().st_mtime_ns == changed
    found = {path.read_bytes() for path in out.glob("results/*.json")}
    assert found == set(answers.values())
    _, alive = psutil.wait_procs(family, timeout=20.0)
    assert alive == []
    assert cores() >= 1
