from selector.job.demand import demands
from selector.requirement.zone import Mate
from tests.peg import peg


def beside(part, wears="part", **mate):
    """Return what the zone of a part asks beside a mate."""
    mate = Mate(should_wear=wears, **mate)
    zone = part.zone[0].model_copy(update={"mate": mate})
    return demands(part.model_copy(update={"zone": (zone,)}))[0]


def test_an_end_under_blows_that_is_to_wear_is_no_softer_than_its_duty_asks():
    """A click of 37 HRC is battered out of shape, however dear its wheel: common practice."""
    click = peg("edge-impact", name="Click", size=3)
    wanted = beside(click, material="ratchet wheel", hardness="45 HRC")
    assert wanted.low_hrc == wanted.floor_hrc == 39
    assert wanted.high_hrc == 43
    assert beside(click, material="ratchet wheel", hardness="41 HRC").high_hrc <= 41
    assert beside(click, material="ratchet wheel", hardness="180 HB").floor_hrc is None


def test_a_track_for_balls_that_is_to_wear_is_not_made_softer():
    track, pin = (peg(wear, "medium") for wear in ("rolling-contact", "sliding"))
    balls = {"material": "steel balls", "hardness": "63 HRC"}
    assert "softened" not in beside(track, **balls).reason
    assert beside(track, **balls).high_hrc == 62
    assert "softened" in beside(pin, **balls).reason
