import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.job.demand import SLACK_ABOVE_HRC, SLACK_BELOW_HRC, apart_hrc, demands
from tests.dog import GONE, asked

WEARS = ["sliding", "abrasive", "rolling-contact", "edge-impact"]
SEVERITIES = ["light", "medium", "heavy"]
ALL = list(itertools.product(WEARS, SEVERITIES))


def of(changes):
    return demands(asked(changes))


def derived(**keys):
    impact = keys.pop("impact", "none")
    asked_of_zone = {f"zone.0.{key}": value for key, value in keys.items()}
    return of({"zone.0.hardness": GONE, "load.impact": impact, **asked_of_zone})[0]


def test_a_stated_window_stands_with_the_slack_of_a_drawing():
    wanted = of({})[0]
    assert (wanted.low_hrc, wanted.high_hrc) == pytest.approx((50, 56))
    assert wanted.floor_hrc == pytest.approx(50 - SLACK_BELOW_HRC)
    assert wanted.ceiling_hrc == pytest.approx(56 + SLACK_ABOVE_HRC)
    assert not wanted.derived


def test_must_takes_the_slack_away():
    window = {"min": "50 HRC", "max": "56 HRC", "must": True}
    wanted = of({"zone.0.hardness": window})[0]
    assert (wanted.floor_hrc, wanted.ceiling_hrc) == pytest.approx((50, 56))
    assert "exactly" in wanted.reason


def test_a_window_may_be_open_and_softer_than_the_c_scale():
    wanted = of({"zone.0.hardness": {"max": "180 HB"}})[0]
    assert wanted.low_hrc is None
    assert wanted.floor_hrc is None
    assert wanted.high_hrc < 20


def test_a_zone_without_wear_asks_nothing():
    wanted = of({})[1]
    assert wanted.low_hrc is None
    assert wanted.high_hrc is None
    assert wanted.depth_mm == 0


@pytest.mark.parametrize(("wear", "severity"), ALL)
def test_a_derived_window_is_in_order_and_says_why(wear, severity):
    for impact in ("none", "light", "hammered"):
        wanted = derived(wear=wear, severity=severity, impact=impact)
        if wanted.low_hrc is None:
            assert (wear, severity) == ("sliding", "light")
            continue
        assert wanted.low_hrc < wanted.high_hrc < wanted.ceiling_hrc
        assert wanted.derived
        assert severity in wanted.reason
        if wanted.floor_hrc is None:
            assert (wear, severity) == ("abrasive", "light")
            assert "a wish only" in wanted.reason
            continue
        assert wanted.floor_hrc <= wanted.low_hrc
        assert wanted.depth_mm > 0


@pytest.mark.parametrize("wear", ["sliding", "abrasive", "rolling-contact"])
def test_heavier_wear_never_asks_for_less(wear):
    floors = [derived(wear=wear, severity=s).floor_hrc or 0.0 for s in SEVERITIES]
    assert floors == sorted(floors)


@pytest.mark.parametrize(("wear", "severity"), [row for row in ALL if row[1] != "light"])
def test_a_struck_zone_is_never_left_harder(wear, severity):
    tops = [
        derived(wear=wear, severity=severity, impact=impact).high_hrc
        for impact in ("none", "light", "hammered")
    ]
    assert tops == sorted(tops, reverse=True)


def test_the_one_that_is_to_wear_is_softer():
    mate = {"material": "bronze", "should_wear": "part"}
    soft = derived(wear="sliding", severity="heavy", mate=mate)
    hard = derived(wear="sliding", severity="heavy")
    assert soft.high_hrc < hard.high_hrc
    assert "wears" in soft.reason


@given(st.floats(27, 64), st.sampled_from(["part", "mate"]))
def test_the_one_that_is_to_wear_is_softer_than_a_mate_of_known_hardness(other, should):
    mate = {"material": "ring", "should_wear": should, "hardness": f"{other} HRC"}
    wanted = derived(wear="sliding", severity="heavy", mate=mate)
    usual = derived(wear="sliding", severity="heavy")
    assert wanted.floor_hrc <= wanted.low_hrc < wanted.high_hrc
    if should == "part":
        assert wanted.high_hrc <= other - apart_hrc(other) + 1e-6
    else:
        assert wanted.high_hrc == usual.high_hrc
        assert wanted.low_hrc >= min(other + apart_hrc(other), wanted.high_hrc - 4) - 1e-6


def test_what_is_to_wear_before_a_soft_mate_needs_no_hardness():
    mate = {"material": "cast ring", "should_wear": "part", "hardness": "180 HB"}
    loser = derived(wear="rolling-contact", severity="medium", mate=mate)
    assert loser.floor_hrc is None
    assert loser.depth_mm == 0
    assert loser.ceiling_hrc > loser.high_hrc


def test_nothing_is_asked_to_be_softer_than_steel_is():
    mate = {"material": "bronze wheel", "should_wear": "part", "hardness": "90 HB"}
    worm = derived(wear="sliding", severity="medium", mate=mate)
    assert worm.floor_hrc is None
    assert worm.ceiling_hrc is None
    assert "finish" in worm.reason


def test_a_pin_that_is_to_wear_in_a_hard_bush_stays_hard():
    """Index pins of 56 to 60 HRC run in bushes of 60 HRC and more, common practice."""
    mate = {"material": "hard bush", "hardness": "60 HRC", "should_wear": "part"}
    pin = derived(wear="sliding", severity="medium", mate=mate)
    assert pin.low_hrc >= 54
    assert pin.high_hrc >= 58 - 1e-6


def test_the_thinner_the_work_the_harder_its_press_tool():
    """Blanking tools run at 58 to 62 HRC, on thick plate at 54 to 58, common practice."""
    die = {"zone.0.hardness": GONE, "zone.0.wear": "edge-impact", "part.name": "Blanking die"}
    die["load.impact"] = "light"
    windows = [
        of({**die, "zone.0.severity": severity})[0] for severity in ("light", "medium", "heavy")
    ]
    assert [w.high_hrc for w in windows] == sorted((w.high_hrc for w in windows), reverse=True)
    assert windows[0].low_hrc >= 58


def test_what_is_there_to_break_is_no_harder_than_plain_bar():
    pin = of({"zone.0.hardness": GONE, "part.name": "Shear pin for a rotavator"})[0]
    assert (pin.low_hrc, pin.floor_hrc, pin.ceiling_hrc) == (None, None, 22.0)
    assert "there to break" in pin.reason


def test_what_is_struck_and_lives_depend_on_is_prehardened_bar():
    """Bucket pins, kick-start shafts: 28 to 40 HRC, common practice."""
    struck = {"zone.0.wear": "abrasive", "load.impact": "hammered", "safety_use": "lifting"}
    wanted = of({"zone.0.hardness": GONE, "zone.0.severity": "heavy", **struck})[0]
    assert (wanted.low_hrc, wanted.high_hrc) == (28, 40)
    assert wanted.floor_hrc is None
    assert "pre-hardened bar" in wanted.reason


def test_a_stated_depth_stands():
    assert derived(wear="abrasive", severity="heavy", depth="2 mm").depth_mm == 2


def test_where_lives_depend_wear_is_a_wish_and_toughness_comes_first():
    vital = derived(wear="abrasive", severity="medium")
    assert vital.floor_hrc is not None
    wanted = of({"zone.0.hardness": GONE, "zone.0.wear": "abrasive", "safety_use": "lifting"})[
        0
    ]
    assert wanted.floor_hrc is None
    assert wanted.low_hrc is not None
    assert "toughness comes first" in wanted.reason


def test_a_punch_under_a_press_is_harder_than_one_that_is_struck():
    changes = {
        "zone.0.hardness": GONE,
        "zone.0.wear": "edge-impact",
        "part.name": "Blanking punch",
    }
    pressed, struck = (of({**changes, "load.impact": i})[0] for i in ("light", "hammered"))
    assert (pressed.low_hrc, pressed.high_hrc) == (56.0, 61.0)
    assert struck.high_hrc < pressed.high_hrc


def test_what_measures_is_hard_though_it_slides_lightly():
    """Gauges and setting pieces: 58 to 64 HRC, common practice."""
    slides = {"zone.0.hardness": GONE, "zone.0.wear": "sliding", "zone.0.severity": "light",
              "load.impact": "none", "load.torque": GONE}  # fmt: skip
    lapped = {"part.finish_after": ["lap"]}
    fine = {**lapped, "limit.runout": "0.01 mm"}
    touches = {"zone.0.mate": {"material": "ground steel", "should_wear": "mate"}}
    rings = {"zone.0.mate": {"material": "gold rings", "should_wear": "mate"}}
    plain, turning = (
        of({**slides, **more})[0] for more in ({}, {**fine, "load.torque": "9 N m"})
    )
    assert plain.low_hrc is turning.low_hrc is None
    assert of({**slides, **lapped, **rings})[0].low_hrc is None
    for more in ({"part.name": "Plug gauge, 20 mm"}, fine, {**lapped, **touches}):
        gauge = of({**slides, **more})[0]
        assert (gauge.low_hrc, gauge.high_hrc) == (58, 64)


def test_grit_asks_less_of_what_has_no_edge():
    """Plate for wear, of 400 to 500 HB, serves in heavy grit: common practice."""
    heavy = {"zone.0.hardness": GONE, "zone.0.wear": "abrasive", "zone.0.severity": "heavy"}
    edge = {"part.feature": [{"kind": "edge", "at": "0 mm"}]}
    plain, edged = (of({**heavy, "part.feature": [], **more})[0] for more in ({}, edge))
    assert plain.floor_hrc <= 45 < 50 < edged.floor_hrc


def test_a_punch_that_presses_grit_is_no_plate_for_wear():
    worn = {"zone.0.hardness": GONE, "zone.0.wear": "abrasive", "zone.0.severity": "medium",
            "part.feature": [], "load.impact": "none"}  # fmt: skip
    plain, punch = (of({**worn, "part.name": name})[0] for name in ("Liner", "Pellet punch"))
    assert plain.floor_hrc < 50 < punch.floor_hrc


@pytest.mark.parametrize(("shape", "size", "drives"), [
    ("square", 20, True), ("hexagon", 10, True), ("hexagon", 24, False),
])  # fmt: skip
def test_a_wide_hexagon_is_turned_by_a_spanner(shape, size, drives):
    end = {"part.section.1.shape": shape, "part.section.1.size": f"{size} mm"}
    driven = of({**end, "part.feature": [], "load.torque": "20 N m"})[1]
    assert (driven.low_hrc is not None) is drives


def test_where_either_may_wear_bar_harder_than_the_mate_is_hard_enough():
    pawl = {"part.section": [{"shape": "flat", "size": 6, "width": 10, "length": 22}],
            "part.feature": [], "load": {"impact": "light", "cycles": "static"}}  # fmt: skip
    mate = {"material": "iron ratchet", "hardness": "30 HRC"}

    def bought(who):
        zone = {"section": [1], "wear": "edge-impact", "severity": "light"}
        zone["mate"] = mate | {"should_wear": who}
        return demands(asked(pawl | {"zone": [zone]}))[0].bought_hrc

    assert bought("either") == pytest.approx(34.0, abs=0.1)
    assert bought("mate") is None


def test_teeth_lightly_loaded_against_soft_iron_ask_for_no_hardness():
    mate = {"material": "cast-iron rack", "hardness": "180 HB"}
    light = {"wear": "rolling-contact", "severity": "light", "mate": mate}
    assert derived(**light).low_hrc is None
    assert "teeth" in derived(**light).reason
    for harder in ({"mate": {**mate, "hardness": "50 HRC"}}, {"severity": "heavy"}):
        assert derived(**(light | harder)).low_hrc > 50


def test_a_shaft_that_turns_in_bronze_asks_for_no_hardness_and_a_pin_in_it_does():
    shaft = {
        "part.feature": GONE, "zone.0.hardness": GONE, "zone.0.wear": "sliding",
        "zone.0.mate": {"material": "bronze bushes", "should_wear": "mate"},
    }  # fmt: skip
    assert demands(asked(shaft))[0].low_hrc is None
    assert demands(asked({**shaft, "load.torque": GONE}))[0].low_hrc > 50


def test_a_name_alone_makes_a_gauge_a_wish():
    """A bar called a gauge is no more than that unless something says that it is kept true."""
    bar = {
        "part.name": "Pin gauge", "part.feature": GONE, "zone.0.hardness": GONE,
        "zone.0.wear": "sliding", "zone.0.severity": "light",
    }  # fmt: skip
    called, ground = (
        demands(asked({**bar, **more}))[0] for more in ({}, {"part.finish_after": ["lap"]})
    )
    assert called.low_hrc == ground.low_hrc
    assert called.floor_hrc is None
    assert ground.floor_hrc is not None


def test_a_thin_blade_that_turns_a_slot_is_a_screwdriver():
    blade = {
        "part.feature": GONE, "zone.0.hardness": GONE, "zone.0.wear": "none",
        "load.torque": "4 N m",
        "part.section.0": {"shape": "flat", "size": 1, "width": 6, "length": 10},
        "part.section.1": {"shape": "round", "size": 7, "length": 80},
    }  # fmt: skip
    found = demands(asked(blade))[0]
    assert (found.low_hrc, found.high_hrc) == (50, 58)
    assert found.purpose == "for the corners of the drive"


def test_a_driving_shank_may_be_as_hard_as_the_end_it_carries():
    bit = {
        "part.feature": GONE, "load.torque": "8 N m", "zone.0.wear": "none",
        "zone.0.hardness": {"min": "52 HRC", "max": "58 HRC"},
        "part.section.1": {"shape": "hexagon", "size": 8, "length": 25},
    }  # fmt: skip
    shank = demands(asked(bit))[1]
    assert shank.low_hrc == 39
    assert shank.ceiling_hrc > 58
