import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.decision.heating_gate import heating_gates
from selector.flame.answer import flame_answer
from selector.job.job import resolved
from selector.job.treatment import Temper
from tests.dog import GONE, asked, only, work

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
        (25, "oxy-propane", "through-torch", ["marginal"]),
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
    assert flame_answer(wanted, few).best.word.startswith("yes")
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
    assert [gate.verdict for gate in said] == ["fail"]
    assert "about 10 mm round" in said[0].text
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
