from selector.requirement.zone import Mate
from tests.dog import asked
from tests.peg import peg, plate


def test_an_edge_that_is_to_outlast_sheet_steel_is_a_press_tool_by_any_name():
    tool = peg("edge-impact", "medium", name="Louvre former, upper half")
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


def test_what_cuts_paper_works_no_ground_whatever_it_is_called():
    plough = plate("Blade for a bookbinder's plough")
    cutting = plough.zone[0].model_copy(update={"mate": Mate(material="paper and board")})
    bound = plough.model_copy(update={"zone": (cutting,)})
    assert plough.works_ground
    assert not bound.works_ground


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


def test_a_turning_tool_for_clay_does_not_cut_metal():
    tool = peg("abrasive", name="Turning tool", size=5)
    clay = tool.zone[0].model_copy(update={"mate": Mate(material="clay", should_wear="mate")})
    assert tool.cuts_metal
    assert not tool.model_copy(update={"zone": (clay,)}).cuts_metal


def test_what_garden_soil_wears_lightly_works_the_ground_and_a_potters_rib_does_not():
    def worn_by(material):
        rim = peg("abrasive", name="Rim")
        zone = rim.zone[0].model_copy(update={"mate": Mate(material=material)})
        return rim.model_copy(update={"zone": (zone,)})

    assert worn_by("garden soil").works_ground
    assert worn_by("gravel and clay").works_ground
    assert not worn_by("soft clay").works_ground


def test_a_part_on_which_lives_hang_by_its_name_is_referred_whatever_is_ticked():
    swing = peg("sliding", name="Shackle pin for a children's swing")
    assert swing.safety_use == "could hurt"
    assert swing.safety_critical
    assert swing.vital_use == "lives may hang on it by its name"
    brake = swing.model_copy(update={"safety_use": "brake"})
    assert brake.vital_use == "brake"
    assert not peg("sliding", name="Hinge pin of a gate").safety_critical
