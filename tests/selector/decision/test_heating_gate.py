import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.decision.heating_gate import heating_gates
from selector.flame.answer import flame_answer
from selector.job.job import resolved
from selector.job.treatment import Temper
from tests.dog import asked, only, work

CATALOG = load_catalog()


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
    oven = Temper("oven", 200.0, 3600.0)
    return [g.verdict for g in heating_gates(treatment, oven, resolved(asked_of, CATALOG))]


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
