import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from selector.duty.strength import bearing
from selector.need.section import section_needs
from tests.dog import GONE, asked
from tests.examples import few as share_of

SOFT = {"zone.0.wear": "none", "zone.0.hardness": GONE, "part.feature": []}
SQUARE = {
    **SOFT,
    "part.section.0.shape": "square",
    "part.section.0.size": 12.7,
    "part.section.0.length": 15,
    "load.torque": "569 N m",
    "part.section.1.size": 40,
}


def of(changes):
    requirement = asked(changes)
    return section_needs(requirement, bearing(requirement))


def least(needed):
    return needed[0].least.p50


@given(st.floats(50, 3000), st.floats(1.01, 3))
@settings(max_examples=share_of(25))
def test_more_torque_never_needs_less_hardness(torque, times):
    few, more = (of({**SOFT, "load.torque": f"{t} N m"}) for t in (torque, torque * times))
    for light, heavy in zip(few, more, strict=True):
        if light.least is None:
            assert heavy.least is None
        elif heavy.least is not None:
            assert heavy.least.p50 >= light.least.p50


@given(st.floats(0.2, 3.0), st.floats(0.05, 3.0))
@settings(max_examples=share_of(15))
def test_a_larger_fillet_never_needs_more_hardness(radius, more):
    shaft = {
        **SOFT,
        "part.section.0.size": 18,
        "load.torque": "250 N m",
        "load.cycles": "fatigue",
    }
    sharp, round_ = (of({**shaft, "part.section.0.fillet": r}) for r in (radius, radius + more))
    if sharp[0].least is not None:
        assert least(round_) <= least(sharp)


def test_a_hard_notched_section_has_a_top_too():
    needed = of({**SOFT, "part.feature": [{"kind": "cross-hole", "at": 5, "size": 4}],
                "load.torque": "1500 N m", "load.cycles": "static"})  # fmt: skip
    assert needed[0].most is not None
    assert needed[0].most.p50 > least(needed)
    assert "may snap" in needed[0].text


def test_what_a_square_runs_in_is_judged_beside_it():
    mate = {"zone.0.mate": {"material": "socket", "hardness": "20 HRC"}}
    needed = of({**SQUARE, **mate})
    corner = next(n for n in needed if n.governs == "corners of the drive")
    assert "rounds first" in corner.text


@pytest.mark.parametrize(
    ("energy", "words"),
    [("1 J", "or more springs back"), ("2 kJ", "it upsets unless the work yields")],
)
def test_a_blow_asks_for_hardness_too(energy, words):
    (blow,) = of({"load.impact_energy": energy, **SOFT, "load.torque": GONE})
    assert blow.governs == "blow"
    assert words in blow.text


def test_without_a_load_nothing_is_needed():
    assert of({**SOFT, "load.torque": GONE}) == ()
