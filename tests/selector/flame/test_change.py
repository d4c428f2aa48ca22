from selector.flame.change import first_change
from tests.once import flamed


def test_a_bar_in_air_is_given_its_own_bath():
    answer = flamed({"workshop.bath": []}, "C45", changed=True)
    assert answer.word == "no"
    assert answer.best.change is not None
    assert "quench in" in answer.best.change.text
    assert not answer.best.change.at_hand


def test_the_change_is_weighed_anew_and_fails_nothing():
    answer = flamed({"workshop.bath": []}, "C45", changed=True)
    change = answer.best.change
    assert change.option.judged.verdict in {"pass", "marginal"}
    assert change.job is not answer.job


def test_a_still_part_is_turned():
    answer = flamed({"workshop.turns_part": False}, "C45", changed=True)
    assert answer.best.change is None or answer.best.change.at_hand or answer.best.change.text


def test_no_change_makes_mild_steel_hard():
    answer = flamed(None, "S235JR")
    assert first_change(answer.job, answer.best.treatment, None) is None
