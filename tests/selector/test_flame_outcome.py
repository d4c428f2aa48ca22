from selector.flame_outcome import Check, Outcome, Setup
from selector.torch_job import stretch
from tests.dog import asked


def outcome(*checks):
    part = stretch(asked(), (0,))
    return Outcome(Setup(), part, 850.0, None, checks)


def test_what_fails_is_what_is_not_met():
    soft, even = Check("hard", False, "soft"), Check("even", True, "even")
    assert outcome(soft, even).failed == (soft,)
    assert outcome(even).failed == ()
