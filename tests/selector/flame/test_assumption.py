from selector.flame.assumption import flame_assumptions
from tests.once import flamed


def test_what_was_not_said_is_assumed_aloud():
    answer = flamed()
    text = " ".join(flame_assumptions(answer.best.treatment, answer.job))
    assert "firebricks" in text
    assert "No gas flow given" in text
    assert "into the bath" in text
