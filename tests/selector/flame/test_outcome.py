from dataclasses import replace
from types import SimpleNamespace

from selector.flame.outcome import SAFE, Check, Outcome, Setup
from selector.torch.part import stretch
from tests.dog import asked


def outcome(*checks):
    part = stretch(asked(), (0,))
    return Outcome(Setup(), part, 850.0, None, checks)


def test_what_fails_is_what_is_not_met():
    soft, even = Check("hard", False, "soft"), Check("even", True, "even")
    assert outcome(soft, even).failed == (soft,)
    assert outcome(even).failed == ()


def test_the_margin_is_the_narrowest_and_no_more_than_safe():
    wide, narrow = Check("corner", True, "", 5.0), Check("hard", True, "", 0.3)
    assert outcome(wide, narrow).margin == 0.3
    assert outcome(wide).margin == outcome().margin == SAFE


def test_what_is_hard_to_its_middle_is_said_to_be_hard_through():
    heated = SimpleNamespace(heat_s=30.0)
    found = replace(outcome(), heated=heated, surface_hrc=53.0, depth_mm=5.0, wall_mm=5.0)
    assert found.sentence.startswith("53 HRC, hard through, after 30 s")
    assert replace(found, depth_mm=4.9).sentence.startswith("53 HRC, hard to 4.9 mm, after")
