"""A change that the engine thought of, made in the form, asks the engine for the same."""

import pytest

from selector import advise
from selector.advice.altered import thought_of
from selector.advice.change import made
from selector.advice.record import ChangeOut
from selector.requirement import requirement_from
from tests.dog import only, varied
from ui.draft import put
from ui.written import edits


def told(text):
    """A change as it is told, whatever comes of it."""
    return ChangeOut(text=f"{text}: x", id="x", passing_all=0.0)


@pytest.mark.parametrize(
    "more",
    [
        {"load.torque": "700 N m"},
        {"limit.budget": 20, "zone.0.hardness.min": "63 HRC", "zone.0.hardness.max": "64 HRC"},
        {"workshop.bath": []},
    ],
)
def test_a_change_can_be_made_in_the_form(more):
    draft = varied({"limit": {}, **more})
    asked = requirement_from(draft)
    advice = advise(asked, only("c45"))
    thoughts = list(thought_of(advice))
    assert len(thoughts) > 5
    for thought in thoughts:
        wanted = made(advice, told(thought.text))
        new = varied({"limit": {}, **more})
        for path, value in edits(asked, wanted):
            put(new, path, value)
        got = requirement_from(new)
        assert got.workshop == wanted.workshop
        assert got.load.torque == pytest.approx(wanted.load.torque, rel=1e-3)
        for zone, other in zip(got.zone, wanted.zone, strict=True):
            if other.hardness and other.hardness.min:
                assert zone.hardness.min == pytest.approx(other.hardness.min, rel=1e-3)
        assert got.limit.budget == wanted.limit.budget
    with pytest.raises(ValueError, match="no such change"):
        made(advice, told("Nobody thought of it"))
