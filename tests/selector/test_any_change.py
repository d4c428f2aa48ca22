"""Any part, changed one way: what gets easier scores no lower, what gets harder no higher."""

from itertools import pairwise
from typing import Any

import pytest

from selector.advice.advise import Advice, advise
from selector.decision.drawback import set_back
from selector.requirement import Requirement, requirement_from
from tests.examples import few
from tests.whole_requirement import catalog_for, draft_number, requirement_number

# One in five of those that are advised on whole; more in the larger profile.
NUMBERS = range(0, few(30), 5)
ROUNDING = 1e-9
# So sure an option must be to count as coming out right. [-]
RIGHT = 0.9
EQUIPMENT = {
    "heat": {"source": "heat-treat-oven"},
    "bath": {"medium": "oil", "volume": "40 l"},
}


def changed(number: int, **parts: dict[str, Any]) -> Requirement:
    """Return the requirement that a number stands for, some of its tables altered."""
    data = draft_number(number)
    return requirement_from(data | {name: data[name] | new for name, new in parts.items()})


def advised(asked: Requirement, number: int) -> Advice:
    """Return the advice among a few steels."""
    return advise(asked, catalog_for(asked, number, 3))


def right_groups(advice: Advice) -> set[tuple[str, str]]:
    """Return families and routes that come out right and are usual and easily had."""
    return {
        option.treatment.group
        for option in advice.options
        if option.judged.passing_all >= RIGHT and not set_back(option, advice.asked)
    }


@pytest.mark.parametrize("number", NUMBERS)
def test_more_equipment_never_removes_what_came_out_right(number):
    shop = draft_number(number)["workshop"]
    more = {key: [*shop[key], extra] for key, extra in EQUIPMENT.items()}
    fewer = advised(requirement_number(number), number)
    richer = advised(changed(number, workshop=more), number)
    assert right_groups(fewer) <= {option.treatment.group for option in richer.options}


@pytest.mark.parametrize("number", NUMBERS)
def test_a_larger_budget_never_lowers_a_score(number):
    tight, ample = (
        advised(changed(number, limit={"budget": money}), number) for money in (60.0, 240.0)
    )
    scores = {option.id: option.score for option in tight.options}
    for option in ample.options:
        assert option.score >= scores.get(option.id, 0.0) - ROUNDING, option.id


PIN = {
    "safety_use": "none",
    "part": {"name": "Pin", "section": [{"shape": "round", "size": 10, "length": 40}]},
    "load": {"impact": "none", "cycles": "occasional"},
    "workshop": {"heat": [{"source": "kiln"}, {"source": "oxy-propane"}],
                 "bath": [{"medium": "oil"}, {"medium": "water"}], "measure": ["thermocouple"],
                 "subcontract": True},
}  # fmt: skip


@pytest.mark.parametrize("wear", ["none", "sliding", "abrasive"])
def test_a_higher_demand_is_never_met_more_often(wear):
    shares: list[dict[str, float]] = []
    for low in (45, 50, 55, 60):
        window = {"min": f"{low} HRC", "must": True}
        zone = {"section": [1], "wear": wear, "severity": "medium", "hardness": window}
        advice = advised(requirement_from(PIN | {"zone": [zone]}), 1)
        shares.append(
            {
                option.id: gate.share
                for option in advice.options
                for gate in option.judged.gates
                if gate.name == "hard_enough" and gate.share is not None
            }
        )
    pairs = [(a[key], b[key]) for a, b in pairwise(shares)
             for key in a.keys() & b.keys()]  # fmt: skip
    assert pairs
    assert all(higher <= lower + ROUNDING for lower, higher in pairs)
