"""A torch is not needed where bar as bought is hard enough, and such parts are made of it."""

from dataclasses import replace

import pytest

from selector.decision.option import scorer_of
from selector.decision.weighing import weigh
from selector.flame.answer import LOCAL, flame_answer
from selector.flame.as_bought import (
    as_bought_words,
    bar_that_serves,
    goes_before,
    left_as_bought,
)
from selector.flame.output import flame_out
from selector.flame.pool import torched as torched_of
from selector.job.job import resolved
from selector.requirement import requirement_from
from tests.dog import GONE, only, varied, work

SOFT = {
    "part.feature": [],
    "zone.0.wear": "none",
    "zone.0.hardness": {"min": "28 HRC", "max": "34 HRC"},
}
HARDER = {**SOFT, "zone.0.hardness": {"min": "38 HRC", "max": "44 HRC"}}


def job_of(changes, *steels):
    return resolved(requirement_from(varied(changes)), only(*steels), 1)


def test_every_condition_that_is_sold_is_looked_at():
    bare = left_as_bought(job_of(SOFT, "42crmo4"), work("42crmo4", condition="annealed"))
    assert (bare.condition.name, bare.route.kind) == ("prehard", "prehard")
    assert as_bought_words(bare, job_of(SOFT, "42crmo4").leading).startswith("prehard bar is 3")


@pytest.mark.parametrize(
    ("changes", "steel"),
    [(HARDER, "42crmo4"), (HARDER, "55nicrmov7"), (SOFT, "115crv3")],
    ids=["too soft", "nobody makes such a part of die block", "not sold hard"],
)
def test_other_bar_wants_a_heat(changes, steel):
    assert left_as_bought(job_of(changes, steel), work(steel)) is None


def test_bar_as_hard_as_asked_is_found_and_softer_bar_is_not():
    job = job_of(SOFT, "42crmo4", "c45")
    bare = bar_that_serves(job, scorer_of(job, 20.0), None)
    assert bare.treatment.condition.name == "prehard"
    harder = job_of(HARDER, "42crmo4", "c45")
    assert bar_that_serves(harder, scorer_of(harder, 20.0), None) is None


def test_bar_that_would_do_as_bought_goes_first_only_where_it_is_advised():
    job = job_of(SOFT, "42crmo4", "c45")
    bare = left_as_bought(job, work("42crmo4"))
    scorer = scorer_of(job, 20.0)
    (torched,) = weigh(job, torched_of(job, LOCAL, {"c45"}), scorer, whole=True).options[:1]
    assert goes_before(job, scorer, bare, torched)
    better = replace(torched, scores=torched.scores + 2.0)
    assert not goes_before(job, scorer, bare, better)


def test_strip_that_serves_as_it_lies_is_answered_without_a_map():
    """A long thin blade of spring strip: no flame keeps it hot, and none needs to."""
    strip = {
        "part.feature": [], "zone.0.wear": "none", "zone.0.hardness": GONE,
        "part.name": "Ink knife", "load.torque": GONE, "load.bending": "2 N m",
        "load.impact": "none", "load.cycles": "occasional",
        "part.section": [{"shape": "flat", "size": 0.9, "width": 40, "length": 160}],
        "zone": [{"section": [1], "wear": "none"}],
        "workshop.heat": [{"source": "hand-torch"}],
        "workshop.stock": [
            {"steel": "C75S", "size": "0.9 mm", "evidence": "marking", "condition": "prehard"}
        ],
    }  # fmt: skip
    found = flame_out(flame_answer(requirement_from(varied(strip)), only("c75s"), None, None))
    assert found.verdict == "not_needed"
    assert found.map is None


@pytest.mark.parametrize(("size_mm", "hrc"), [(1.0, 59), (6.0, 50)])
def test_wire_is_as_hard_as_its_size_is_drawn(size_mm, hrc):
    wire = {
        "part.name": "Lever spring",
        "part.shape_class": "coil-spring",
        "part.section": [{"shape": "round", "size": size_mm, "length": 600.0}],
        "part.feature": [],
        "zone": [{"section": [1], "wear": "none"}],
        "load": {"impact": "none", "cycles": "fatigue"},
    }
    job = job_of(wire, "music-wire")
    bare = left_as_bought(job, work("music-wire"))
    said = as_bought_words(bare, job.leading)
    found = float(said.removeprefix("prehard bar is ").split()[0])
    assert found == pytest.approx(hrc, abs=2.0)
