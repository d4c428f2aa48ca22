import pytest

from selector.job.usual_depth import usual_depth_mm
from selector.job.usual_window import (
    usual_spring,
    usual_window,
)
from selector.job.working_end import is_struck_edge, is_tip
from selector.requirement.zone import Mate
from tests.dog import asked


def of(wear, severity="light", *, name="peg", impact="light", size=20):
    return asked(
        {
            "part.name": name, "part.feature": [],
            "load": {"impact": impact, "cycles": "static"},
            "part.section": [{"shape": "round", "size": size, "length": 60}],
            "zone": [{"section": [1], "wear": wear, "severity": severity}],
        }
    )  # fmt: skip


def test_light_sliding_asks_for_nothing_and_more_of_it_for_more():
    none, medium, heavy = (
        usual_window(part, part.zone[0])
        for part in (of("sliding", severity) for severity in ("light", "medium", "heavy"))
    )
    assert none is None
    assert medium.floor_hrc < heavy.floor_hrc
    assert medium.low_hrc < heavy.low_hrc


@pytest.mark.parametrize("severity", ["light", "medium"])
def test_a_hammered_face_that_rubs_works_from_45_hrc(severity):
    part = of("sliding", severity, impact="hammered")
    assert usual_window(part, part.zone[0]).floor_hrc == 45.0


def test_thin_work_is_asked_to_be_hard_right_through_and_no_deeper():
    thick, thin = of("edge-impact"), of("edge-impact", size=1)
    assert usual_depth_mm(thick, thick.zone[0]) == 1.0
    assert usual_depth_mm(thin, thin.zone[0]) == 0.5


def test_a_tooth_keeps_a_core_under_its_case():
    """A case of about a quarter of the module, whose tooth is 1.57 modules thick."""
    gear = of("rolling-contact", size=40)
    small = asked({
        "part.name": "pump gear", "part.feature": [{"kind": "teeth", "at": 10, "size": 3}],
        "load": {"impact": "none", "cycles": "fatigue"},
        "part.section": [{"shape": "round", "size": 40, "length": 20}],
        "zone": [{"section": [1], "wear": "rolling-contact", "severity": "light"}],
    })  # fmt: skip
    assert 0.4 < usual_depth_mm(small, small.zone[0]) < 0.55
    assert usual_depth_mm(gear, gear.zone[0]) == 0.8


def test_a_gauge_is_hard_but_for_wood():
    gauge = of("sliding", name="Taper plug gauge")
    wooden = gauge.zone[0].model_copy(
        update={"mate": Mate(material="boxwood", should_wear="mate")}
    )
    assert usual_window(gauge, gauge.zone[0]).low_hrc == 58
    assert usual_window(gauge, wooden) is None


def test_a_tool_that_rubs_is_harder_than_a_pin():
    tool, pin = of("sliding", "medium", name="Burnisher"), of("sliding", "medium")
    rubs, runs = (usual_window(part, part.zone[0]) for part in (tool, pin))
    assert rubs.low_hrc > runs.low_hrc
    assert (rubs.bought_hrc, runs.bought_hrc) == (None, 24.0)


def test_a_broad_face_that_sets_lightly_works_as_it_is_bought():
    broad, thin = (
        of("edge-impact", impact="hammered"),
        of("edge-impact", impact="hammered", size=6),
    )
    heavy = of("edge-impact", "heavy", impact="hammered")
    assert usual_window(broad, broad.zone[0]).bought_hrc == 5.0
    assert usual_window(thin, thin.zone[0]).bought_hrc is None
    assert usual_window(heavy, heavy.zone[0]).bought_hrc is None


def test_thin_springs_are_run_harder():
    assert usual_spring(1.0).low_hrc > usual_spring(4.0).low_hrc > usual_spring(8.0).low_hrc


def test_a_pin_may_be_bought_softer_than_it_is_hardened_and_teeth_may_not():
    pin = of("sliding", "medium")
    gear = pin.model_copy(update={"part": pin.part.model_copy(update={"shape_class": "gear"})})
    assert usual_window(pin, pin.zone[0]).bought_hrc < usual_window(pin, pin.zone[0]).floor_hrc
    assert usual_window(gear, gear.zone[0]).bought_hrc is None


def plate(name, **more):
    """Return 8 mm of plate under heavy grit."""
    return asked({
        "part.name": name, "part.feature": [], "load": {"impact": "light", "cycles": "static"},
        "part.section": [{"shape": "flat", "size": 8, "width": 100, "length": 300}],
        "zone": [{"section": [1], "wear": "abrasive", "severity": "heavy"}], **more,
    })  # fmt: skip


def test_thick_plate_is_no_edge_whatever_it_is_called():
    called, edged = (
        plate("Scraper blade"),
        plate("Scraper blade", **{"part.feature": [{"kind": "edge", "at": 0}]}),
    )
    assert not called.is_edged
    assert edged.is_edged
    floors = [usual_window(part, part.zone[0]).floor_hrc for part in (called, edged)]
    assert floors[0] < 45 < floors[1]


def test_what_cuts_metal_is_harder_than_a_knife():
    bit, knife = (of("abrasive", name=name, size=3) for name in ("D-bit", "Stitching awl"))
    windows = [usual_window(part, part.zone[0]) for part in (bit, knife)]
    assert windows[0].low_hrc > windows[1].low_hrc


def test_a_face_that_takes_knocks_is_softer_than_an_edge():
    pawl = of("edge-impact", "medium", name="Winch pawl")
    axe = of("edge-impact", "medium", name="Side axe")
    face, edge = (usual_window(part, part.zone[0]) for part in (pawl, axe))
    assert face.low_hrc < edge.low_hrc
    assert face.floor_hrc < edge.floor_hrc


def test_an_edge_that_is_to_outlast_sheet_steel_is_a_press_tool_by_any_name():
    tool = of("edge-impact", "medium", name="Louvre former, upper half")
    mate = Mate(material="steel sheet 1.2 mm", should_wear="mate")
    zone = tool.zone[0].model_copy(update={"mate": mate})
    assert not tool.presses
    assert tool.model_copy(update={"zone": (zone,)}).presses


def test_thin_strip_that_its_load_would_bend_for_good_is_a_spring():
    def strip(thick, bending):
        return asked({
            "part.name": "Hook", "part.feature": [],
            "part.section": [{"shape": "flat", "size": thick, "width": 12, "length": 130}],
            "zone": [{"section": [1], "wear": "none"}],
            "load": {"impact": "none", "cycles": "occasional", "bending": bending},
        })  # fmt: skip

    assert strip(0.6, "0.3 N m").is_spring
    assert not strip(0.6, "0.05 N m").is_spring
    assert not strip(3, "8 N m").is_spring


def test_teeth_whose_size_stands_in_the_name_keep_a_core_too():
    gear = {
        "part.name": "Pinion, module 1.25", "part.feature": [{"kind": "teeth", "at": 10}],
        "load": {"impact": "none", "cycles": "fatigue"},
        "part.section": [{"shape": "round", "size": 40, "length": 20}],
        "zone": [{"section": [1], "wear": "rolling-contact", "severity": "medium"}],
    }  # fmt: skip
    small, plain = asked(gear), asked({**gear, "part.name": "Pinion"})
    # A quarter of the module, in steps of 0.05 mm.
    assert usual_depth_mm(small, small.zone[0]) == 0.3
    assert usual_depth_mm(plain, plain.zone[0]) == 0.8


def test_a_track_that_is_pressed_on_is_hard_below_its_greatest_shear():
    """1500 N on a cam 20 mm wide: half a millimetre, where the shear peaks at an eighth."""
    cam = of("sliding", "medium", size=60)
    pressed = cam.model_copy(update={"load": cam.load.model_copy(update={"contact": 4500.0})})
    assert usual_depth_mm(cam, cam.zone[0]) == 0.1
    assert 0.4 < usual_depth_mm(pressed, pressed.zone[0]) < 0.7


def test_what_is_struck_is_an_edge_where_it_is_thin_or_called_so():
    broad, thin = (of("edge-impact", impact="hammered", size=size) for size in (20, 6))
    assert not is_struck_edge(broad, broad.zone[0])
    assert is_struck_edge(thin, thin.zone[0])
    chisel = of("edge-impact", impact="hammered", name="Cold chisel")
    assert is_struck_edge(chisel, chisel.zone[0])


def test_what_wears_in_soil_is_asked_what_stones_allow():
    scraper = plate("Scraper for a roller")
    muddy = scraper.zone[0].model_copy(update={"mate": Mate(material="mud and stones")})
    dug = scraper.model_copy(update={"zone": (muddy,)})
    assert dug.works_ground
    assert not scraper.works_ground
    assert usual_window(dug, muddy).high_hrc < usual_window(scraper, scraper.zone[0]).low_hrc


def test_what_cuts_paper_works_no_ground_whatever_it_is_called():
    plough = plate("Blade for a bookbinder's plough")
    cutting = plough.zone[0].model_copy(update={"mate": Mate(material="paper and board")})
    bound = plough.model_copy(update={"zone": (cutting,)})
    assert plough.works_ground
    assert not bound.works_ground


def test_what_bends_or_cuts_grass_is_softer_than_a_plane_iron():
    knife, saw, sickle, iron = (
        usual_window(part, part.zone[0])
        for part in (
            of("abrasive", name=name, size=1)
            for name in ("Craft knife", "Tenon saw", "Sickle", "Plane iron")
        )
    )
    assert saw.high_hrc < sickle.high_hrc < knife.high_hrc <= iron.high_hrc
    assert saw.low_hrc < sickle.low_hrc < knife.low_hrc < iron.low_hrc


def test_a_thick_saw_is_no_strip():
    thick = of("abrasive", name="Saw", size=5)
    assert usual_window(thick, thick.zone[0]).high_hrc > 60


def test_what_is_struck_by_hand_is_softer_than_what_is_swung():
    struck, swung = (of("edge-impact", name="Axe", impact=i) for i in ("hammered", "light"))
    windows = [usual_window(part, part.zone[0]) for part in (struck, swung)]
    assert windows[0].low_hrc < windows[1].low_hrc


def with_mate(part, material, wears="mate"):
    zone = part.zone[0].model_copy(update={"mate": Mate(material=material, should_wear=wears)})
    return usual_window(part, zone)


def test_a_pin_in_a_bush_that_is_to_wear_is_bought_as_it_comes():
    """Shafts of EN8 as bought, 190 HB, run in bronze bushes everywhere: common practice."""
    pin = of("sliding", "medium")
    assert with_mate(pin, "bronze bush").bought_hrc < 15
    for material, wears in (("bronze bush", "either"), ("brass wheel", "mate")):
        assert with_mate(pin, material, wears).bought_hrc == 24


def test_a_track_of_needles_is_as_hard_as_one_of_rollers():
    shaft, rolls = of("sliding", "medium"), of("rolling-contact", "medium")
    track = with_mate(shaft, "needle rollers", "either")
    assert track == usual_window(rolls, rolls.zone[0])


def test_what_presses_on_paper_is_softer_than_what_presses_on_sheet():
    die = of("edge-impact", "light", name="Perforating die")
    assert with_mate(die, "paper").low_hrc < with_mate(die, "steel sheet").low_hrc


def test_a_broad_face_behind_sheet_works_as_it_is_bought():
    dolly, dog = (of("edge-impact", name=name) for name in ("Panel dolly", "Clutch dog"))
    assert usual_window(dolly, dolly.zone[0]).bought_hrc == 5.0
    assert usual_window(dog, dog.zone[0]).bought_hrc is None


def test_a_thin_firing_pin_is_no_edge():
    pin, punch = (
        of("edge-impact", name=name, impact="hammered", size=5)
        for name in ("Firing pin", "Pin punch")
    )
    assert not is_struck_edge(pin, pin.zone[0])
    assert is_struck_edge(punch, punch.zone[0])


def test_a_heavily_loaded_cam_is_cased_as_deep_as_a_roller():
    """Cams are cased 0.8 mm deep and more: common practice."""
    cam, pin = (of("sliding", "heavy", name=name, size=30) for name in ("Engine cam", "Pin"))
    assert usual_depth_mm(cam, cam.zone[0]) == 0.8
    assert usual_depth_mm(pin, pin.zone[0]) == 0.1


def test_a_hollow_spanner_is_as_hard_as_jaws():
    socket = asked({
        "part.name": "Socket wrench", "part.feature": [],
        "part.section": [{"shape": "tube", "size": 14, "bore": 7, "length": 25}],
        "load": {"torque": "15 N m", "impact": "none", "cycles": "occasional"},
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium"}],
    })  # fmt: skip
    assert usual_window(socket, socket.zone[0]).high_hrc == 56


def test_what_is_hammered_on_leather_needs_no_hardness_and_on_steel_it_does():
    stamp = of("sliding", impact="hammered")
    assert with_mate(stamp, "leather") is None
    assert with_mate(stamp, "sheet steel").low_hrc == 50


def test_a_roller_on_soft_rail_asks_for_no_hardness():
    roller = of("rolling-contact", size=60)
    rail = Mate(material="rail", hardness="150 HB", should_wear="either")
    zone = roller.zone[0].model_copy(update={"mate": rail})
    assert usual_window(roller, zone) is None
    loaded = roller.load.model_copy(update={"cycles": "fatigue"})
    tired = roller.model_copy(update={"load": loaded})
    assert usual_window(tired, zone).low_hrc == 58


def test_a_track_is_as_deep_as_the_force_of_its_rollers_asks():
    """Needle tracks are hard 0.3 mm deep at least, from memory of bearing catalogues."""
    plain = of("rolling-contact", "medium", size=60)

    def deep(force_n):
        load = plain.load.model_copy(update={"contact": force_n})
        pressed = plain.model_copy(update={"load": load})
        return usual_depth_mm(pressed, pressed.zone[0])

    assert deep(80.0) == 0.3 < usual_depth_mm(plain, plain.zone[0]) == 0.8 < deep(60_000.0)


def test_what_rakes_hot_ash_asks_for_no_hardness_and_what_cuts_hot_does():
    hot = {"limit": {"service_temperature": "600 degC"}}
    rake, knife = plate("Ash rake", **hot), plate("Hot knife", **hot, **{
        "part.feature": [{"kind": "edge", "at": 0}]})  # fmt: skip
    assert usual_window(rake, rake.zone[0]) is None
    assert usual_window(knife, knife.zone[0]).high_hrc == 52


def test_a_pin_in_nylon_asks_for_no_hardness_and_a_knife_edge_on_agate_for_all():
    pin = of("sliding", "medium")
    assert with_mate(pin, "nylon rollers") is None
    assert with_mate(pin, "agate plane", "either").low_hrc > 58


def test_a_thin_leaf_that_bends_in_plaster_is_a_spring_and_a_knife_is_none():
    leaf = {
        "part.name": "Leaf", "part.feature": [],
        "part.section": [{"shape": "flat", "size": 1.2, "width": 18, "length": 70}],
        "zone": [{"section": [1], "wear": "abrasive", "severity": "light"}],
        "load": {"impact": "none", "cycles": "occasional", "bending": "2.4 N m"},
    }  # fmt: skip
    assert asked(leaf).is_spring
    assert not asked({**leaf, "part.feature": [{"kind": "edge", "at": 0}]}).is_spring
    assert not asked({**leaf, "part.name": "Gouge"}).is_spring


def test_a_broad_wedge_for_wood_and_a_pick_for_ice_ask_for_no_hardness():
    wedge = of("edge-impact", impact="hammered", name="Wedge", size=25)
    assert with_mate(wedge, "green oak") is None
    assert with_mate(wedge, "granite").low_hrc > 40
    assert with_mate(of("edge-impact", name="Ice pick", size=6), "ice") is None


def test_a_turning_tool_for_clay_does_not_cut_metal():
    tool = of("abrasive", name="Turning tool", size=5)
    clay = tool.zone[0].model_copy(update={"mate": Mate(material="clay", should_wear="mate")})
    assert tool.cuts_metal
    assert not tool.model_copy(update={"zone": (clay,)}).cuts_metal


def test_a_hammered_face_on_brass_works_as_it_is_bought():
    punch = of("sliding", impact="hammered")
    assert with_mate(punch, "brass eyelets").bought_hrc == 5.0
    assert with_mate(punch, "steel rivets").bought_hrc is None


def test_a_hot_knife_for_rope_asks_for_no_hardness():
    hot = {"limit": {"service_temperature": "350 degC"}}
    knife = plate("Rope knife", **{"part.feature": [{"kind": "edge", "at": 0}]}, **hot)
    assert with_mate(knife, "nylon rope") is None


def test_a_pinion_in_a_cast_iron_wheel_asks_for_no_hardness_and_a_roller_on_it_does():
    roller = of("rolling-contact", "medium", size=40)
    gear = roller.part.model_copy(update={"shape_class": "gear"})
    occasional = roller.load.model_copy(update={"cycles": "occasional"})
    pinion = roller.model_copy(update={"part": gear, "load": occasional})
    assert with_mate(pinion, "cast-iron wheel", "either") is None
    assert with_mate(roller, "cast-iron rail", "either").low_hrc == 58


def test_a_thin_tip_that_pushes_is_harder_than_a_dog():
    tip, dog = (of("edge-impact", name=name, size=3) for name in ("Beading tool", "Pawl"))
    thick = of("edge-impact", name="Beading tool", size=12)
    assert [is_tip(part, part.zone[0]) for part in (tip, dog, thick)] == [True, False, False]
    low, high = (usual_window(part, part.zone[0]).low_hrc for part in (dog, tip))
    assert low < high


def test_what_forms_sheet_steel_lightly_is_at_least_pre_hardened():
    """Folding tools are of bar at 28 HRC and more: common practice."""
    former = of("sliding", name="Former", size=25)
    assert with_mate(former, "mild sheet").low_hrc == 28
    assert with_mate(former, "copper tube") is None
    assert with_mate(former, "mild sheet", "either") is None


def test_a_spanner_of_sheet_has_jaws_as_hard_as_strip():
    spanner = {
        "part.name": "Cone spanner", "part.feature": [{"kind": "slot", "at": 5, "size": 15}],
        "part.section": [{"shape": "flat", "size": 2, "width": 34, "length": 170}],
        "zone": [{"section": [1], "wear": "sliding", "severity": "light"}],
        "load": {"impact": "light", "cycles": "occasional", "bending": "6 N m"},
    }  # fmt: skip
    thin, plate_of_it = asked(spanner), asked({**spanner, "part.name": "Plate"})
    assert usual_window(thin, thin.zone[0]).low_hrc == 44
    assert usual_window(plate_of_it, plate_of_it.zone[0]) is None


def test_what_is_lapped_and_tried_on_steel_is_a_gauge_by_any_name():
    snail = {
        "part.name": "Stepped snail", "part.feature": [], "part.finish_after": ["lap"],
        "part.section": [{"shape": "round", "size": 38, "length": 6}],
        "load": {"impact": "none", "cycles": "occasional"},
    }  # fmt: skip
    zone = {"section": [1], "wear": "sliding", "severity": "light"}

    def measures(material, **load):
        mate = {"material": material, "should_wear": "either"}
        part = {**snail, "zone": [{**zone, "mate": mate}]}
        return asked({**part, "load": {**snail["load"], **load}}).measures

    assert measures("planer knives")
    assert not measures("wax patterns")
    assert not measures("planer knives", bending="5 N m")
    assert not measures("planer knives", cycles="fatigue")


def test_what_clamps_hardened_steel_is_at_least_pre_hardened():
    closer = of("sliding", name="Closing cone", size=30)
    load = closer.load.model_copy(update={"axial": 8000.0, "cycles": "fatigue"})
    hard = Mate(material="collets", hardness="58 HRC", should_wear="either")
    zone = closer.zone[0].model_copy(update={"mate": hard})
    assert usual_window(closer.model_copy(update={"load": load}), zone).low_hrc == 28
    assert usual_window(closer, zone) is None
