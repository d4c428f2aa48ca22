import pytest

from selector.job.usual_window import usual_window
from selector.requirement.zone import Mate
from tests.dog import asked
from tests.peg import peg, with_mate


def test_light_sliding_asks_for_nothing_and_more_of_it_for_more():
    none, medium, heavy = (
        usual_window(part, part.zone[0])
        for part in (peg("sliding", severity) for severity in ("light", "medium", "heavy"))
    )
    assert none is None
    assert medium.floor_hrc < heavy.floor_hrc
    assert medium.low_hrc < heavy.low_hrc


def test_a_gauge_is_hard_but_for_wood():
    gauge = peg("sliding", name="Taper plug gauge")
    wooden = gauge.zone[0].model_copy(
        update={"mate": Mate(material="boxwood", should_wear="mate")}
    )
    assert usual_window(gauge, gauge.zone[0]).low_hrc == 58
    assert usual_window(gauge, wooden) is None


def test_a_tool_that_rubs_is_harder_than_a_pin():
    tool, pin = peg("sliding", "medium", name="Burnisher"), peg("sliding", "medium")
    rubs, runs = (usual_window(part, part.zone[0]) for part in (tool, pin))
    assert rubs.low_hrc > runs.low_hrc
    assert (rubs.bought_hrc, runs.bought_hrc) == (None, 24.0)


def test_a_pin_may_be_bought_softer_than_it_is_hardened_and_teeth_may_not():
    pin = peg("sliding", "medium")
    gear = pin.model_copy(update={"part": pin.part.model_copy(update={"shape_class": "gear"})})
    assert usual_window(pin, pin.zone[0]).bought_hrc < usual_window(pin, pin.zone[0]).floor_hrc
    assert usual_window(gear, gear.zone[0]).bought_hrc is None


def test_a_pin_in_a_bush_that_is_to_wear_is_bought_as_it_comes():
    """Shafts of EN8 as bought, 190 HB, run in bronze bushes everywhere: common practice."""
    pin = peg("sliding", "medium")
    assert with_mate(pin, "bronze bush").bought_hrc < 15
    for material, wears in (("bronze bush", "either"), ("brass wheel", "mate")):
        assert with_mate(pin, material, wears).bought_hrc == 24


def test_a_track_of_needles_is_as_hard_as_one_of_rollers():
    shaft, rolls = peg("sliding", "medium"), peg("rolling-contact", "medium")
    track = with_mate(shaft, "needle rollers", "either")
    assert track == usual_window(rolls, rolls.zone[0])


def test_a_roller_on_soft_rail_asks_for_no_hardness():
    roller = peg("rolling-contact", size=60)
    rail = Mate(material="rail", hardness="150 HB", should_wear="either")
    zone = roller.zone[0].model_copy(update={"mate": rail})
    assert usual_window(roller, zone) is None
    loaded = roller.load.model_copy(update={"cycles": "fatigue"})
    tired = roller.model_copy(update={"load": loaded})
    assert usual_window(tired, zone).low_hrc == 58


def test_a_pin_in_nylon_asks_for_no_hardness_and_a_knife_edge_on_agate_for_all():
    pin = peg("sliding", "medium")
    assert with_mate(pin, "nylon rollers") is None
    assert with_mate(pin, "agate plane", "either").low_hrc > 58


def test_a_pinion_in_a_cast_iron_wheel_asks_for_no_hardness_and_a_roller_on_it_does():
    roller = peg("rolling-contact", "medium", size=40)
    gear = roller.part.model_copy(update={"shape_class": "gear"})
    occasional = roller.load.model_copy(update={"cycles": "occasional"})
    pinion = roller.model_copy(update={"part": gear, "load": occasional})
    assert with_mate(pinion, "cast-iron wheel", "either") is None
    assert with_mate(roller, "cast-iron rail", "either").low_hrc == 58


def test_what_forms_sheet_steel_lightly_is_at_least_pre_hardened():
    """Folding tools are of bar at 28 HRC and more: common practice."""
    former = peg("sliding", name="Former", size=25)
    assert with_mate(former, "mild sheet").low_hrc == 28
    assert with_mate(former, "copper tube") is None
    assert with_mate(former, "mild sheet", "either") is None


def test_what_clamps_hardened_steel_is_at_least_pre_hardened():
    closer = peg("sliding", name="Closing cone", size=30)
    load = closer.load.model_copy(update={"axial": 8000.0, "cycles": "fatigue"})
    hard = Mate(material="collets", hardness="58 HRC", should_wear="either")
    zone = closer.zone[0].model_copy(update={"mate": hard})
    assert usual_window(closer.model_copy(update={"load": load}), zone).low_hrc == 28
    assert usual_window(closer, zone) is None


def window(part):
    return usual_window(part, part.zone[0])


@pytest.mark.parametrize("wear", ["sliding", "abrasive"])
def test_what_guides_a_tool_is_hard_however_lightly_it_is_said_to_wear(wear):
    for name in ("Drill bush, 6 mm", "Filing button"):
        assert window(peg(wear, name=name)).low_hrc == 58
    assert window(peg(wear, name="Bush of a drill stand")) == window(peg(wear))


@pytest.mark.parametrize(
    ("name", "low"),
    [
        ("Dead centre", 57),
        ("Locating pin", 52),
        ("Vice jaw", 46),
        ("Stylus", 54),
        ("Burnisher", 57),
    ],
)
def test_what_is_hard_by_its_trade_is_so_on_steel_however_lightly_it_slides(name, low):
    tool = peg("sliding", name=name)
    assert window(tool).low_hrc == low
    assert with_mate(tool, "steel work", "either").low_hrc == low
    assert with_mate(tool, "boxwood", "either") is None


def test_what_is_to_outlast_steel_is_at_least_pre_hardened_however_lightly_it_slides():
    peg_of = peg("sliding")
    assert with_mate(peg_of, "steel pallets").low_hrc == 28
    for material, wears in (("steel pallets", "either"), ("cast-iron table", "mate")):
        assert with_mate(peg_of, material, wears) is None


def test_a_pivot_in_a_jewel_is_hard_however_lightly_it_slides():
    pivot = peg("sliding", size=1)
    assert with_mate(pivot, "ruby hole").low_hrc == 51
    assert with_mate(pivot, "brass bush") is None


def test_a_feeler_of_strip_is_as_hard_as_a_spring_and_a_gauge_of_plate_is_not():
    def gauge(thick):
        return asked({
            "part.name": "Feeler gauge", "part.feature": [], "part.finish_after": ["lap"],
            "part.section": [{"shape": "flat", "size": thick, "width": 12, "length": 90}],
            "zone": [{"section": [1], "wear": "sliding", "severity": "light"}],
            "load": {"impact": "none", "cycles": "occasional"},
        })  # fmt: skip

    thin, thick = gauge(0.4), gauge(5)
    assert usual_window(thin, thin.zone[0]).high_hrc == 52
    assert usual_window(thick, thick.zone[0]).high_hrc == 64


def test_a_tool_that_rolls_gold_polishes_it_and_a_pin_in_brass_does_not():
    wheel = peg("sliding", "medium", name="Beading wheel", size=3)
    assert with_mate(wheel, "gold").low_hrc == 57
    assert with_mate(wheel, "gold", "either").low_hrc == 51
    assert with_mate(wheel, "brass bush").low_hrc == 51


def test_a_screw_that_presses_is_softer_than_a_pin():
    screw = asked({
        "part.name": "Press screw", "part.feature": [{"kind": "thread", "at": 100}],
        "part.section": [{"shape": "round", "size": 24, "length": 200}],
        "zone": [{"section": [1], "wear": "sliding", "severity": "heavy"}],
        "load": {"impact": "none", "cycles": "occasional", "axial": "20 kN"},
    })  # fmt: skip
    pin = peg("sliding", "heavy")
    asked_of_screw = usual_window(screw, screw.zone[0])
    assert asked_of_screw.low_hrc < usual_window(pin, pin.zone[0]).low_hrc
    assert asked_of_screw.bought_hrc == 28
    idle = screw.load.model_copy(update={"axial": None})
    unloaded = screw.model_copy(update={"load": idle})
    assert usual_window(unloaded, unloaded.zone[0]).low_hrc == 57


def test_a_pinion_that_drives_brass_without_end_is_softer_than_one_that_drives_steel():
    roller = peg("rolling-contact", "medium", size=12)
    gear = roller.part.model_copy(update={"shape_class": "gear"})
    load = roller.load.model_copy(update={"cycles": "fatigue"})
    pinion = roller.model_copy(update={"part": gear, "load": load})
    assert with_mate(pinion, "brass wheel").high_hrc == 60
    assert with_mate(pinion, "brass wheel").floor_hrc == 40
    assert with_mate(pinion, "steel rack").low_hrc == 58
    assert with_mate(roller, "brass rail").low_hrc == 58


@pytest.mark.parametrize("impact", ["none", "light", "hammered"])
def test_what_soft_metal_is_formed_on_is_hard_or_at_least_pre_hardened(impact):
    """Mandrels of 28 to 34 HRC take no dents from a mallet: common practice."""
    mandrel = peg("sliding", name="Ring triblet", impact=impact)
    usual = with_mate(mandrel, "silver rings")
    assert (usual.low_hrc, usual.bought_hrc) == (46, 26)
    assert with_mate(peg("sliding", name="Spacer", impact="none"), "silver rings") is None
    assert with_mate(mandrel, "boxwood") is None


def test_bar_left_soft_does_not_run_on_a_hard_mate():
    """A cam of 30 HRC against a roller of 58 is worn in a season: common practice."""

    def bought(hardness, wears="part"):
        cam = peg("sliding", "medium")
        mate = Mate(material="roller", hardness=hardness, should_wear=wears)
        return usual_window(cam, cam.zone[0].model_copy(update={"mate": mate})).bought_hrc

    assert bought("58 HRC") is None
    assert bought("58 HRC", "either") is None
    assert bought("30 HRC") == 24
    assert bought(None) == 24


def test_teeth_of_plain_bar_run_on_a_wheel_of_such_bar():
    rolling = peg("rolling-contact", "medium", size=40)
    gear = rolling.part.model_copy(update={"shape_class": "gear"})
    load = rolling.load.model_copy(update={"cycles": "fatigue"})
    pinion = rolling.model_copy(update={"part": gear, "load": load})

    def bought(part, hardness):
        mate = Mate(material="wheel", hardness=hardness, should_wear="either")
        return usual_window(part, part.zone[0].model_copy(update={"mate": mate})).bought_hrc

    assert bought(pinion, "200 HB") == 10
    assert bought(pinion, "300 HB") is None
    assert bought(rolling.model_copy(update={"load": load}), "200 HB") is None


def test_what_is_ground_true_and_called_no_gauge_may_be_a_little_softer_than_one():
    def true(name, finish):
        return asked({
            "part.name": name, "part.feature": [], "part.finish_after": [finish],
            "part.section": [{"shape": "round", "size": 10, "length": 90}],
            "zone": [{"section": [1], "wear": "sliding", "severity": "light"}],
            "limit": {"runout": "0.01 mm"}, "load": {"impact": "none", "cycles": "static"},
        })  # fmt: skip

    pilot, gauge = true("Pilot", "toolpost-grinder"), true("Plug gauge", "toolpost-grinder")
    assert window(pilot).floor_hrc < window(gauge).floor_hrc
    assert window(true("Pilot", "lap")) == window(gauge)
    assert window(true("Pilot", "lathe")) is None


def test_a_broad_face_that_beats_a_panel_works_as_it_is_bought():
    slapper, stake = (
        peg("sliding", "medium", name=name, impact="hammered", size=40)
        for name in ("Slapper", "Peen")
    )
    assert with_mate(slapper, "body panel, steel").bought_hrc == 5
    assert (
        with_mate(stake, "body panel, steel").low_hrc
        > with_mate(slapper, "steel panel").low_hrc
    )


@pytest.mark.parametrize("name", ["Cotter for a strap", "Taper pin", "Gib-head key"])
def test_what_is_driven_home_is_no_tool_for_being_hammered(name):
    home = peg("sliding", name=name, impact="hammered")
    assert usual_window(home, home.zone[0]) is None


def test_what_is_to_wear_itself_asks_for_nothing_when_it_is_hammered_home():
    strap = peg("sliding", name="strip", impact="hammered")
    assert usual_window(strap, strap.zone[0]) is not None
    assert with_mate(strap, "gib of mild steel", "part") is None


@pytest.mark.parametrize(("shape", "bought"), [("tube", 24.0), ("round", None)])
def test_a_bush_that_is_to_wear_on_a_hard_pin_may_be_of_prehardened_bar(shape, bought):
    part = peg("sliding", "heavy", name="Bush")
    bore = {"shape": shape, "bore": 12.0 if shape == "tube" else None}
    section = part.part.section[0].model_copy(update=bore)
    part = part.model_copy(
        update={"part": part.part.model_copy(update={"section": (section,)})}
    )
    mate = Mate(material="hard pin", hardness="58 HRC", should_wear="part")
    zone = part.zone[0].model_copy(update={"mate": mate})
    assert usual_window(part, zone).bought_hrc == bought
