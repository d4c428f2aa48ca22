from typing import get_args

import pytest

from selector.requirement.trade_name import (
    Trade,
    carries_lives,
    does,
    is_edged,
    is_spring,
    may_be_edged,
    measures,
    presses,
    trade_names,
    trade_window,
    works_ground,
)

SAYS = [
    ("springs", "Spring washer", "Spring plunger, 12 mm"),
    ("springs", "Valve springs, inner", "Spring collet"),
    ("springs", "Dished washer", "Spring dividers"),
    ("springs", "Coil springs", "Bush of spring steel"),
    ("measures", "Plug gauge, 1/2 in", "Axle, 5 inch gauge"),
    ("measures", "Pin gauge", "Wheel for 7 1/4in gauge"),
    ("driven_home", "Gib-head key", "Key for a lock"),
    ("driven_home", "Cotter", "Cotter pin press"),
    ("centre", "Dead centre, 2 Morse", "Four-prong drive centre"),
    ("locates", "Locating pin, 10 mm", "Lock pin"),
    ("locates", "Rest buttons", "Arm rest"),
    ("grips", "Vice jaws, a pair", "Soft vice jaws"),
    ("grips", "Chuck jaw", "Chuck jaw screw"),
    ("traces", "Tracer finger", "Stylus arm"),
    ("burnishes", "Burnisher", "Spinning wheel spindle"),
    ("collet", "Split collet, 10 mm", "Collet closer"),
    ("collet", "Expanding mandrel", "Collet nut"),
    ("meshes", "Kick-start quadrant", "Comb for a flax hackle"),
    ("worked_upon", "Ring triblet", "Ring mandrel holder"),
    ("worked_upon", "Raising stake", "Fence stake"),
    ("cuts_hot", "Hot sett", "Cold sett"),
    ("pulls", "Bearing puller jaw", "Puller screw"),
    ("prises", "Gavelock, chisel end", "Crosshead slide bar"),
    ("ground", "Marquee peg", "Tuning peg"),
    ("prises", "Tyre lever, 250 mm", "Gear lever"),
    ("prises", "Bead-lever", "Rack for tyre levers"),
    ("splits", "Cleaving iron", "Meat cleaver"),
    ("splits", "Log splitter", "Splitter box shaft"),
    ("guides_tools", "Drill bush, 6 mm", "Drill bush puller"),
    ("guides_tools", "Filing buttons", "Bush for a drill"),
    ("measures", "Alignment bar", "Aligning clamp"),
    ("measures", "Pair of parallels", "Parallel pin"),
    ("measures", "Parallel strips", "Parallel key"),
    ("crops", "Chaff knife, 300 mm", "Chaff bin latch"),
    ("crops", "Reciprocating mower knife section", "Rotary mower blade"),
    ("thin_blade", "Cabinet scraper, 0.8 mm", "Sawhorse"),
    ("thin_blade", "Dovetail saw, 0.5 mm", "Saw frame"),
    ("keen", "Plane iron, 3 mm", "Plane iron holder"),
    ("keen", "Scriber, 4 mm", "Clamp for a scriber"),
    ("turns_by_hand", "Chuck key square, 8 mm", "Gib key, 8 mm"),
    ("turns_by_hand", "Socket of a tuning lever", "Ball of a hitch"),
    ("turns_screws", "Turnscrew for a gunlock", "Socket for a bulb"),
    ("pushes", "Firing pin, 6 mm", "Pin punch, 6 mm"),
    ("backs", "Dolly for a panel beater", "Trolley axle"),
    ("bends_metal", "Press-brake top tool", "Blanking die"),
    ("bends_metal", "Vee die of a bending brake", "Die for brake discs"),
    ("dog", "Coin-slide pawl", "Beading tool"),
    ("cam", "Cam for a side-valve engine", "Camera bracket"),
    ("cam", "Cam", "Spanner for a cam follower"),
    ("backs", "Body spoon", "Spoon for tea"),
    ("grips", "Plier jaws", "Plier handle"),
    ("worked_upon", "Doming stake", "Stake vice"),
    ("backs", "Panel-beater's dollies", "Rack for dollies"),
    ("breaks", "Shear pin for a rotavator, 8 mm", "Shear blade"),
    ("breaks", "Shear bolt M10", "Shear-blade bolt"),
    ("rubs", "Engraver's burnisher, 5 mm rod", "Tool post"),
    ("rubs", "Metal-spinning tool, 16 mm ball nose", "Pin for a burnisher"),
    ("formed", "Spinning tool, ball nose", "Guide pillar, 20 mm"),
    ("formed", "Flaring cone, 45 degrees", "Pin for a ball joint"),
    ("folded_spring", "Hairpin spring", "Leaf spring"),
    ("cuts_metal", "Reamer, 7/8 in", "Wad cutter"),
    ("cuts_metal", "Fly-cutters", "Tap wrench"),
    ("stamps", "Rivet snap, 6 mm", "Hammer head"),
    ("stamps", "Doming punch", "Punch holder"),
    ("stamps", "Letter stamp", "Anvil insert"),
]


@pytest.mark.parametrize(("trade", "does_it", "does_not"), SAYS)
def test_a_name_says_what_a_tool_does(trade, does_it, does_not):
    assert does(does_it, trade)
    assert not does(does_not, trade)


def test_each_trade_has_its_names_and_no_other_stands_in_the_table():
    assert set(trade_names()) == set(get_args(Trade))


@pytest.mark.parametrize(
    ("says", "yes", "no"),
    [
        (
            measures,
            (
                "Pin gauge",
                "Gauge pin, 10 mm",
                "Setting ring",
                "Vee block",
                "7/8 in plug gauge",
                "Go pin for drilled holes",
                "No-go end",
                "Test mandrel",
                "Master disc",
                "Type-high setting piece",
            ),
            (
                "Pin, 15 in gauge locomotive",
                "Narrow-gauge axle",
                "Gauge plate cam",
                "Gauge box",
                "Track gauge bar",
            ),
        ),
        (
            is_edged,
            ("Cold chisel, 12 mm shank", "Stitching awl", "Reamers, 3 off"),
            ("Chisel holder", "Tap wrench", "Scraper blade", "Pin of a chisel"),
        ),
        (
            may_be_edged,
            ("Blade for a saddler's knife", "Paper knives, 3 off", "Scraper blade"),
            ("Pin of a rudder blade", "Blade screw", "Mixing blade"),
        ),
        (
            presses,
            (
                "Piercing punch for 2 mm plate",
                "Blanking die",
                "Draw plate",
                "Press-brake top tool",
            ),
            (
                "Core pin for zinc die casting",
                "Shear-proof bolt",
                "Punch holder",
                "Die set",
                "Die block",
            ),
        ),
        (
            is_spring,
            (
                "Leaf spring",
                "Mainspring, 4 mm",
                "V spring for a lock",
                "R-clip, 3 mm",
                "Circlips",
                "Top leaf for a gig spring",
                "Reed tongue for an accordion",
            ),
            (
                "Spring seat",
                "Pin for a spring",
                "Spring anchor plate",
                "Hinge leaf",
                "Reed knife",
            ),
        ),
        (
            works_ground,
            ("Hay tine", "Chain-harrow link", "Share for a plough"),
            ("Plough bolt", "Tine holder"),
        ),
    ],
)
def test_a_name_says_what_a_part_does_by_its_last_words(says, yes, no):
    assert [name for name in yes if not says(name)] == []
    assert [name for name in no if says(name)] == []


def test_what_is_for_measuring_measures_and_its_stand_does_not():
    assert measures("Pair of rolls for measuring dovetails")
    assert not measures("Stand for measuring clocks")


def test_a_trade_that_has_a_window_of_its_own_has_it_in_order():
    window = trade_window("crops")
    assert window.floor_hrc < window.low_hrc < window.high_hrc < trade_window("keen").high_hrc


def test_a_bar_for_lining_up_measures_and_a_drift_for_it_does_not():
    assert measures("Bar for lining up a headstock")
    assert not measures("Taper drift for lining up holes")
    assert not measures("Lever for truing")


@pytest.mark.parametrize(
    "name",
    [
        "Shackle pin for a children's swing",
        "Lifting eye for engine blocks",
        "Brake-rod clevis",
        "Pivot pin of a brake pedal",
        "Steering arm",
        "Chain-sling hook",
        "Track-rod end",
    ],
)
def test_lives_hang_on_some_parts_by_their_names(name):
    assert carries_lives(name)


@pytest.mark.parametrize(
    "name",
    [
        "Vee die of a bending brake",
        "Press-brake pin",
        "Lifting cam follower",
        "Swing gate hinge",
        "Spanner for a brake caliper",
        "Steering-wheel puller",
        "Swing bolt of a door",
        "Hinge pin of a field gate",
        "Valve lifter",
        "Toy crane hook",
        "Sling swivel",
    ],
)
def test_on_tools_for_them_and_what_sounds_alike_none_hang(name):
    assert not carries_lives(name)
