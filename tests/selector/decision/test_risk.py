import re
from dataclasses import replace

import pytest

from selector.decision.risk import chief_risk
from selector.gate import Gate
from selector.option.skin import Skin
from selector.requirement.priority import CRITERIA


@pytest.fixture
def judged(advice):
    """Return the first option with other gates and another sensitivity."""
    first = advice.options[0]

    def with_gates(*gates, sensitivity=0.0):
        values = first.judged.values.copy()
        values[:, CRITERIA.index("operator_sensitivity")] = sensitivity
        return replace(first, judged=replace(first.judged, gates=gates, values=values))

    return with_gates


SOFT = Gate("hard_enough", "marginal", "needs 50 HRC", 0.93)
CRACK = Gate("cracking", "marginal", "risk of a quench crack some", 0.9)


def test_the_gate_failed_most_often_is_named_with_its_chance(judged):
    assert chief_risk(judged(SOFT, CRACK)) == "quench crack (10 in 100)"
    assert chief_risk(judged(CRACK, SOFT)) == "quench crack (10 in 100)"
    assert chief_risk(judged(SOFT)) == "too soft (7 in 100)"


def test_a_gate_nobody_could_judge_comes_first(judged):
    unknown = Gate("snap", "marginal", "toughness unknown; let nothing strike it")
    assert chief_risk(judged(SOFT, unknown)) == unknown.text


@pytest.mark.parametrize(("bare_mm", "told"), [(0.0, True), (0.2, False)])
def test_the_skin_of_what_is_wrapped_is_no_risk(judged, bare_mm, told):
    skin = Skin(soft_mm=0.2, bare_mm=bare_mm, left_mm=0.2, loss_hrc=1.0, file_loss_hrc=2.0)
    gate = Gate("skin", "marginal", "a soft skin")
    option = judged(SOFT, gate)
    prediction = replace(option.judged.prediction, skin=skin)
    option = replace(option, judged=replace(option.judged, prediction=prediction))
    assert chief_risk(option) == (gate.text if told else "too soft (7 in 100)")


def test_where_all_pass_a_misread_colour_is_left(judged):
    sure = Gate("hard_enough", "pass", "", 1.0)
    assert chief_risk(judged(sure, sensitivity=6.0)) == "a misread colour: 6 HRC for 25 °C"
    assert chief_risk(judged(sure, sensitivity=0.5)) == "nothing above 1 in 200"


def test_without_a_sampled_gate_it_is_what_nobody_stated(judged):
    assert "beyond what was stated" in chief_risk(judged())


def test_every_option_has_one(advice):
    for option in advice.options:
        unsampled = {gate.text for gate in option.judged.gates if gate.share is None}
        text = chief_risk(option)
        assert text in unsampled or re.search(r"\d+ in 1?\d\d|HRC for 25 °C|stated", text), text
