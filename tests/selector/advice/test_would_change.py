from dataclasses import replace

import numpy as np

from selector.advice.would_change import would_change
from selector.decision.option import Rejected
from selector.gate import Gate
from selector.requirement.priority import CRITERIA
from tests.once import advised


def test_a_poor_chance_names_the_demand_that_is_met_least():
    sure = advised({}, "42crmo4")
    assert sure.options[0].judged.passing_all > 0.8
    assert not any("what stops it" in text for text in would_change(sure))
    first, *others = sure.options
    right = np.arange(len(first.judged.right)) % 2 == 0
    poor = replace(first, judged=replace(first.judged, right=right))
    text = would_change(replace(sure, options=(poor, *others)))[0]
    assert "right only 50 in 100; what stops it most often" in text


def test_an_unusual_first_names_what_stops_the_usual_way():
    found = advised({}, "42crmo4")
    first = found.options[0]
    values = first.judged.values.copy()
    values[:, CRITERIA.index("custom")] = 0.0
    odd = replace(first, judged=replace(first.judged, values=values))
    gate = Gate("movement", "fail", "bows 0.021 of the 0.02 mm you allow", 0.41)
    missed = (Rejected(first.treatment, gate, 0.41),)
    said = would_change(replace(found, options=(odd,), rejected=missed))
    assert said[0].startswith("The usual way that comes nearest: ")
    assert "bows 0.021 of the 0.02 mm you allow (right 41 in 100)" in said[0]
    usual = would_change(replace(found, options=(first,), rejected=missed))
    assert not any("comes nearest" in text for text in usual)
