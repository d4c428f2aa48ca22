import numpy as np
import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.decision.heating_gate import _evenly, heating_gates, spared
from selector.decision.judgement import judge
from selector.job.job import resolved
from selector.job.treatment import Temper
from selector.option.prediction import predict
from selector.option.preparation import prepare
from tests.dog import GONE, asked, only, work
from tests.once import flame_once

CATALOG = load_catalog()
OVEN = Temper("oven", 200.0, 3600.0)


def part(size, source):
    """Return a plain bar of C45 at one torch, water beside it."""
    return asked(
        {
            **{f"part.section.{n}.size": f"{size} mm" for n in (0, 1)},
            "part.feature": [],
            "workshop.heat": [{"source": source}, {"source": "kitchen-oven"}],
            "workshop.bath": [{"medium": "water", "volume": "20 l"}],
        }
    )


def verdicts(asked_of, treatment):
    return [g.verdict for g in heating_gates(treatment, OVEN, resolved(asked_of, CATALOG))]


@pytest.mark.parametrize(
    ("size", "source", "route", "expected"),
    [
        (16, "hand-torch", "local-torch", []),
        (40, "hand-torch", "local-torch", ["fail"]),
        (30, "oxy-propane", "local-torch", []),
        (60, "oxy-propane", "local-torch", ["fail"]),
        (12, "hand-torch", "through-torch", ["fail"]),
        (20, "oxy-propane", "through-torch", []),
        (25, "oxy-propane", "through-torch", []),
        (32, "oxy-propane", "through-torch", ["marginal"]),
        (40, "oxy-propane", "through-torch", ["fail"]),
        (40, "muffle-furnace", "through-furnace", []),
        (60, "muffle-furnace", "through-furnace", ["marginal"]),
    ],
)
def test_a_flame_goes_by_its_history_and_a_furnace_by_its_reach(size, source, route, expected):
    treatment = work("c45", route, "water", source)
    assert verdicts(part(size, source), treatment) == expected


@pytest.mark.parametrize(
    ("size", "source", "expected"),
    [(8, "hand-torch", []), (30, "hand-torch", ["fail"]), (20, "oxy-propane", [])],
)
def test_a_torch_that_does_not_redden_a_part_cases_nothing(size, source, expected):
    treatment = work("070m20", "case-compound", "water", source)
    assert verdicts(part(size, source), treatment) == expected


@pytest.mark.parametrize(("size", "source"), [(16, "hand-torch"), (40, "oxy-propane")])
def test_what_flame_says_a_torch_heats_advise_offers(size, source):
    wanted, few = part(size, source), only("c45")
    assert flame_once(wanted, few, changed=False).best.word.startswith("yes")
    routes = {o.judged.prediction.treatment.route.slug for o in advise(wanted, few).options}
    assert "local-torch" in routes


def test_a_torch_too_small_is_said_by_the_heat_it_gives():
    weighed = advise(part(40, "hand-torch"), only("c45"))
    said = [r.gate.text for r in weighed.rejected if r.treatment.route.slug == "local-torch"]
    assert any("brings the zone to about" in text for text in said)


def test_a_block_beyond_the_reach_of_a_torch_is_refused_however_hot_it_gets():
    block = {"part.section": [{"shape": "flat", "size": 25, "width": 40, "length": 40}]}
    small = {"part.section": [{"shape": "flat", "size": 12, "width": 15, "length": 40}]}
    rest = {
        "zone.1": GONE,
        "part.feature": [],
        "load.torque": GONE,
        "workshop.heat": [{"source": "hand-torch"}],
    }
    treatment = work("100mncrw4", "through-torch", "oil", "hand-torch")
    said = heating_gates(treatment, OVEN, resolved(asked({**block, **rest}), CATALOG))
    assert said[-1].verdict == "fail"
    assert "about 10 mm round" in said[-1].text
    of_small = heating_gates(treatment, OVEN, resolved(asked({**small, **rest}), CATALOG))
    assert not any("mm round" in gate.text for gate in of_small)


@pytest.mark.parametrize(("length", "expected"), [(250, ["fail"]), (25, [])])
def test_casing_at_a_torch_is_followed_to_its_heat_as_hardening_is(length, expected):
    spanner = {
        "part.section": [{"shape": "flat", "size": 6, "width": 22, "length": length}],
        "zone.1": GONE,
        "part.feature": [],
        "load.torque": GONE,
        "workshop.heat": [{"source": "hand-torch"}],
    }
    job = resolved(asked(spanner), CATALOG)
    cased = work("070m20", "case-compound", "water", "hand-torch")
    assert [gate.verdict for gate in heating_gates(cased, OVEN, job)] == expected
    through = work("c45", "through-torch", "water", "hand-torch")
    assert [gate.verdict for gate in heating_gates(through, OVEN, job)] == expected


def bar_of(sections, source, treatment):
    """Return the judged heat of a plain part, hard all over."""
    whole = {
        "part.section": sections,
        "part.feature": [],
        "load.torque": GONE,
        "zone.0.section": list(range(1, len(sections) + 1)),
        "zone.1": GONE,
        "workshop.heat": [{"source": source}],
    }
    return treatment, resolved(asked(whole), CATALOG)


@pytest.mark.parametrize(
    ("source", "long_mm", "expected"),
    [
        ("hand-torch", 60, "pass"),
        ("hand-torch", 150, "fail"),
        ("forge", 250, "pass"),
        ("forge", 360, "marginal"),
        ("forge", 500, "fail"),
    ],
)
def test_a_leaf_longer_than_the_fire_is_not_brought_to_one_heat(source, long_mm, expected):
    leaf = [{"shape": "flat", "size": 6, "width": 20, "length": long_mm}]
    treatment = work("c75s", "through-torch", "oil", source)
    judged, job = bar_of(leaf, source, treatment)
    said = {g.verdict: g.text for g in heating_gates(judged, OVEN, job) if "length" in g.text}
    assert list(said) == ([] if expected == "pass" else [expected])


def test_a_thin_end_that_coarsens_while_the_thick_comes_to_heat_spoils_the_part():
    even = [{"shape": "flat", "size": 10, "width": 40, "length": 40}]
    uneven = [*even, {"shape": "square", "size": 28, "length": 80}]
    treatment = work("115crv3", "through-torch", "oil", "oxy-propane")
    shares = []
    for sections in (even, uneven):
        judged, job = bar_of(sections, "oxy-propane", treatment)
        fine = spared(judged, job)
        hot = [g for g in heating_gates(judged, OVEN, job) if "grain" in g.text]
        shares.append(float(np.mean(fine)))
        assert all(g.share == shares[-1] for g in hot)
    assert shares[0] > 0.9
    assert shares[1] < 0.5


def test_a_coarse_edge_takes_its_share_off_how_often_the_part_comes_right():
    uneven = [
        {"shape": "flat", "size": 10, "width": 40, "length": 40},
        {"shape": "square", "size": 28, "length": 80},
    ]
    treatment = work("115crv3", "through-torch", "oil", "oxy-propane")
    judged, job = bar_of(uneven, "oxy-propane", treatment)
    outcome = judge(predict(prepare(judged, job), OVEN), 0.0, job)
    assert outcome.passing_all <= float(np.mean(spared(judged, job)))


def test_the_longer_a_stretch_the_fewer_hands_keep_it_at_one_heat():
    treatment = work("100mncrw4", "through-torch", "oil")
    shares = []
    for long_mm in (150.0, 220.0, 290.0, 310.0):
        flat = {"shape": "flat", "size": 6, "width": 40, "length": 0.5 * long_mm}
        changes = {"part.section": [flat, flat], "part.feature": []}
        shares.append(float(np.mean(_evenly(resolved(asked(changes), CATALOG), treatment))))
    assert shares[0] == 1.0
    assert 1.0 > shares[1] > shares[2] >= 0.5
    assert shares[3] == 0.0


@pytest.mark.parametrize(
    ("length", "expected"), [(80, []), (100, ["marginal"]), (130, ["fail"])]
)
def test_a_torch_cases_no_longer_zone_than_it_keeps_at_one_heat(length, expected):
    wanted = asked(
        {
            "part.section.0.size": "8 mm",
            "part.section.0.length": f"{length} mm",
            "part.section.1.size": "8 mm",
            "part.feature": [],
            "workshop.heat": [{"source": "hand-torch"}, {"source": "kitchen-oven"}],
            "workshop.bath": [{"medium": "water", "volume": "20 l"}],
        }
    )
    treatment = work("070m20", "case-compound", "water", "hand-torch")
    assert verdicts(wanted, treatment)[-1:] == expected
