import pytest

from selector.requirement.part_name import (
    breaks,
    cuts_metal,
    ends_edged,
    is_edged,
    is_ferrous,
    is_formed,
    is_metal,
    is_soil,
    is_spring,
    is_worked,
    itself,
    may_be_edged,
    measures,
    module_mm,
    presses,
    rubs,
    stamps,
    works_ground,
)


@pytest.mark.parametrize(
    ("name", "words"),
    [
        ("Hinge pin for a narrow-gauge wagon", "Hinge pin"),
        ("Gouge from a shock-absorber rod, 12 mm", "Gouge, 12 mm"),
        ("Reamer, 7/8 in to 1 in taper", "Reamer, 7/8 in"),
        ("Finger for a press, spring leaf", "Finger, spring leaf"),
        ("For the plough", "For the plough"),
    ],
)
def test_a_part_is_what_stands_before_what_it_is_for(name, words):
    assert itself(name) == words


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
        (cuts_metal, ("Reamer, 7/8 in", "Fly cutter"), ("Wad cutter", "Tap wrench")),
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
            stamps,
            ("Rivet snap, 6 mm", "Doming punch", "Letter stamp", "Chasing tool"),
            ("Hammer head", "Punch holder", "Anvil insert"),
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


def test_what_is_there_to_break_is_known_by_name():
    assert breaks("Shear pin for a rotavator, 8 mm")
    assert breaks("Shear bolt M10")
    assert not breaks("Shear blade")


def test_what_rubs_on_its_work_is_known_by_name():
    assert rubs("Engraver's burnisher, 5 mm rod")
    assert rubs("Metal-spinning tool, 16 mm ball nose")
    assert not rubs("Tool post")
    assert not rubs("Pin for a burnisher")


def test_an_end_with_a_form_of_its_own_is_known_by_name():
    assert is_formed("Spinning tool, ball nose")
    assert is_formed("Flaring cone, 45 degrees")
    assert not is_formed("Guide pillar, 20 mm")
    assert not is_formed("Pin for a ball joint")


def test_the_size_of_teeth_is_read_off_a_name():
    assert module_mm("Change wheel, 20 DP, 40 teeth", 53) == pytest.approx(1.27)
    assert module_mm("Pinion, module 2.5", 60) == 2.5
    assert module_mm("Ratchet, 24 teeth", 52) == 2
    assert module_mm("Oil-pump gear", 32) is None


def test_a_mate_may_be_the_ground_or_metal_that_is_worked():
    assert is_soil("mud and stones")
    assert not is_soil("soiled linen")
    assert is_worked("steel sheet 1.2 mm")
    assert not is_worked("steel pin")
    assert is_metal("brass")
    assert not is_metal("boxwood")
    assert is_ferrous("cast iron")
    assert ends_edged("cutting edge")
    assert not ends_edged("shank")


def test_what_is_for_measuring_measures_and_its_stand_does_not():
    assert measures("Pair of rolls for measuring dovetails")
    assert not measures("Stand for measuring clocks")
