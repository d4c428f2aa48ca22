import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from selector import sampling
from selector.duty.strength import (
    CAP,
    Stress,
    bearing,
    has_load,
    least_factor,
    section_factor,
)
from selector.hardness_scale import hv_from_hrc
from selector.mechanics.notch import cross_hole_factor
from selector.mechanics.strength import strength
from tests.dog import GONE, asked
from tests.examples import few

NONE = {"load.torque": GONE}


def factor(hardness, changes=None):
    return least_factor(hardness, bearing(asked(changes)), sampling.shared()["load"])


def median(changes=None, hrc=(40.0, 40.0)):
    hardness = np.tile(np.array(hrc), (sampling.COUNT, 1))
    return float(np.median(factor(hardness, changes)))


def test_without_a_load_nothing_is_judged():
    assert not has_load(asked(NONE).load)
    assert median(NONE) == CAP
    assert not has_load(asked({"load.torque": "0 N m"}).load)


@pytest.mark.parametrize("load", ["bending", "axial"])
def test_any_load_is_judged(load):
    assert has_load(asked({**NONE, f"load.{load}": 10}).load)


@given(st.floats(1, 2000), st.floats(1.01, 5))
@settings(max_examples=few(25))
def test_more_torque_leaves_less_in_hand(torque, times):
    low = median({"load.torque": f"{torque} N m"})
    high = median({"load.torque": f"{torque * times} N m"})
    assert high <= low <= CAP
    if low < CAP:
        assert low / high == pytest.approx(times, rel=0.02)


@given(st.floats(-5, 45), st.floats(0.1, 10))
@settings(max_examples=few(25))
def test_a_harder_static_shaft_bears_no_less(hrc, more):
    heavy = {"load.torque": "800 N m", "load.cycles": "static", "part.feature": []}
    assert median(heavy, (hrc + more, hrc + more)) >= median(heavy, (hrc, hrc)) - 1e-9


def test_the_weakest_section_decides():
    heavy = {"load.torque": "800 N m", "part.feature": []}
    both = median(heavy, (20.0, 20.0))
    assert median(heavy, (40.0, 20.0)) == pytest.approx(both)
    assert median(heavy, (40.0, 40.0)) > both


def test_fatigue_bears_less_than_a_steady_load():
    steady = {"load.torque": "600 N m", "load.cycles": "static"}
    assert median({**steady, "load.cycles": "fatigue"}) < median(steady)


def test_a_notch_lowers_fatigue_strength():
    tired = {"load.torque": "900 N m", "load.cycles": "fatigue", "part.feature": []}
    holed = {**tired, "part.feature": [{"kind": "cross-hole", "at": 100}]}
    assert median(holed) < median(tired)


@pytest.mark.parametrize("shape", ["square", "hexagon"])
def test_a_bored_section_bears_less_and_a_bored_round_is_a_tube(shape):
    heavy = {"load.torque": "800 N m", "part.feature": []}
    bore = {f"part.section.{n}.bore": 22 for n in (0, 1)}
    tube, other = ({f"part.section.{n}.shape": s for n in (0, 1)} for s in ("tube", shape))
    # A long drive, so that its corners do not decide.
    assert median({**heavy, **bore}) == median({**heavy, **bore, **tube})
    assert median({**heavy, **bore}) < 0.5 * median(heavy)
    assert median({**heavy, **bore, **other}) < 0.7 * median({**heavy, **other})


@pytest.mark.parametrize("load", ["torque", "bending", "axial"])
@pytest.mark.parametrize("kind", ["cross-hole", "slot", "keyway"])
def test_a_soft_shaft_is_weaker_by_the_hole_across_it(load, kind):
    heavy = {**NONE, f"load.{load}": "400 kN" if load == "axial" else "800 N m"}
    holed, wide = (
        {**heavy, "part.feature": [{"kind": kind, "at": 100, "size": size}]} for size in (3, 20)
    )
    whole = median({**heavy, "part.feature": []}, (20.0, 20.0))
    assert median(wide, (20.0, 20.0)) < median(holed, (20.0, 20.0)) < whole


def test_a_hard_shaft_snaps_at_the_notch_and_the_hole_counts_once():
    """Above 56 HRC the factor is that of the notch on the whole section, and no more."""
    heavy = {"load.torque": "3000 N m"}
    hole = {**heavy, "part.feature": [{"kind": "cross-hole", "at": 100, "size": 5}]}
    plain, cut = median({**heavy, "part.feature": []}, (62.0, 57.0)), median(hole, (62.0, 57.0))
    assert plain / cut == pytest.approx(float(cross_hole_factor("torsion", 5, 25)), rel=1e-3)


def test_a_second_load_never_helps():
    torque = {"load.torque": "600 N m"}
    assert median({**torque, "load.bending": "400 N m"}) <= median(torque)


def test_the_stated_load_is_uncertain():
    factors = factor(np.full((sampling.COUNT, 2), 30.0), {"load.torque": "900 N m"})
    assert factors.shape == (sampling.COUNT,)
    assert factors.std() > 0


def test_together_two_loads_leave_less_than_either_alone():
    torque = {"load.torque": "1800 N m", "part.feature": []}
    bending = {**NONE, "load.bending": "1400 N m", "part.feature": []}
    both = {**torque, "load.bending": "1400 N m"}
    assert median(both) < min(median(torque), median(bending)) - 0.01


def test_the_corners_of_a_drive_may_be_the_weakest():
    end = {"part.section.0.shape": "square", "load.torque": "600 N m", "part.feature": []}
    long = {**end, "part.section.0.length": 200}
    short = {**end, "part.section.0.length": 4}
    assert median(short) < median(long)


def test_an_axial_fatigue_load_bears_less_than_a_steady_one():
    pulled = {**NONE, "load.axial": "400 kN", "part.feature": []}
    assert median({**pulled, "load.cycles": "fatigue"}) < median(pulled)


def test_a_punch_that_is_pushed_again_and_again_tires_less_than_what_is_pulled():
    """Punches stand 1,000 MPa and more for thousands of holes: common practice."""
    pulled = {**NONE, "load.axial": "300 kN", "part.feature": [], "load.cycles": "fatigue"}
    assert median({**pulled, "part.name": "Piercing punch"}) > median(pulled)


@pytest.mark.parametrize("use", ["lifting", "could hurt"])
def test_of_an_unknown_load_the_stronger_bar_is_safer_only_where_lives_depend(use):
    unknown = {**NONE, "safety_use": use}
    soft, hard = median(unknown, (5.0, 5.0)), median(unknown, (35.0, 35.0))
    assert (soft < hard) == (use == "lifting")
    assert hard == CAP
    assert soft >= 1


def test_the_blade_of_a_screwdriver_bears_what_its_standard_tests_it_with():
    """ISO 2380-1:2004: 5.5 N m at 1 x 5.5 mm (from memory); a long strip would not."""
    blade = {"shape": "flat", "size": "1 mm", "width": "5.5 mm", "length": "10 mm"}
    stem = {"shape": "round", "size": "6 mm", "length": "80 mm"}
    changes = {
        "part.section": [blade, stem], "part.feature": [], "zone.0.section": [1],
        "load.torque": "5 N m",
    }  # fmt: skip
    driver = asked(changes)
    hard = hv_from_hrc(np.array([54.0]))
    assert float(section_factor(bearing(driver), 0, hard)[0]) > 1.0
    long = asked({**changes, "part.section": [{**blade, "length": "40 mm"}, stem]})
    assert float(section_factor(bearing(long), 0, hard)[0]) < 1.0


def test_a_wound_spring_of_piano_wire_stands_half_its_tensile_strength():
    """Torsion springs of music wire, not peened: 0.50 of tensile strength for a million.

    R. G. Budynas, J. K. Nisbett, Shigley's Mechanical Engineering Design, 9th ed., 2011,
    Table 10-10 (from memory).
    """
    hv, tensile = 640.0, float(strength(640.0).tensile_mpa)
    wire = Stress("bending", 0.50 * tensile, 1.0, 1.0, "ground")
    assert float(wire.fatigue_factor(np.array(hv))) == pytest.approx(1.0, abs=0.15)


def test_a_pin_hole_close_by_an_end_carries_no_bending():
    """Beyond a hole for a lynch pin nothing bends the pin."""

    def bent(at, **load):
        hole = [{"kind": "cross-hole", "at": at, "size": 8}]
        return median({**NONE, "part.feature": hole, "load.bending": "800 N m",
                       "load.cycles": "fatigue", **load})  # fmt: skip

    assert bent(175) > bent(90)
    assert bent(175, **{"load.bending_over": [1, 2]}) == pytest.approx(
        bent(90, **{"load.bending_over": [1, 2]}), rel=0.1
    )
