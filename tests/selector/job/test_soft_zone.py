from selector.job.soft_zone import STRUCK_BODY_HRC, THREAD_HRC, why_soft
from tests.dog import GONE, asked


def why(**changes):
    part = asked({"zone.0.hardness": GONE, "part.feature": GONE, **changes})
    return why_soft(part, part.zone[0])


def test_a_zone_that_asks_for_nothing_says_why():
    mate = {"material": "nylon", "should_wear": "mate"}
    assert "no wear" in why(**{"zone.0.wear": "none"})[0]
    assert "light sliding" in why(**{"zone.0.severity": "light"})[0]
    assert "yields" in why(**{"zone.0.mate": mate, "load.torque": GONE})[0]
    rolls = {"zone.0.wear": "rolling-contact", "zone.0.severity": "light"}
    rail = {"material": "rail", "hardness": "150 HB"}
    assert "a roller" in why(**rolls, **{"zone.0.mate": rail})[0]


def test_what_is_struck_has_a_limit_all_the_same():
    reason, most = why(**{"zone.0.wear": "none", "load.impact": "hammered"})
    assert most == STRUCK_BODY_HRC
    assert "not above 48 HRC" in reason


def test_a_loaded_thread_has_a_limit_and_an_idle_one_none():
    """A bolt of class 12.9 ends at 44 HRC (ISO 898-1, from memory)."""
    thread = {"part.feature": [{"kind": "thread", "at": 20}], "zone.0.wear": "none"}
    reason, most = why(**thread)
    assert most == THREAD_HRC
    assert "a thread under load" in reason
    idle = {"load": {"impact": "none", "cycles": "occasional"}}
    assert why(**thread, **idle)[1] is None
    elsewhere = {**thread, "part.feature": [{"kind": "thread", "at": 120}]}
    assert why(**elsewhere)[1] is None
