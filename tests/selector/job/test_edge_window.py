import pytest

from selector.job.usual_window import usual_window
from selector.requirement.zone import Mate
from tests.dog import asked
from tests.peg import peg, plate, with_mate


def test_a_broad_face_that_sets_lightly_works_as_it_is_bought():
    broad, thin = (
        peg("edge-impact", impact="hammered"),
        peg("edge-impact", impact="hammered", size=6),
    )
    heavy = peg("edge-impact", "heavy", impact="hammered")
    assert usual_window(broad, broad.zone[0]).bought_hrc == 5.0
    assert usual_window(thin, thin.zone[0]).bought_hrc is None
    assert usual_window(heavy, heavy.zone[0]).bought_hrc is None


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
    bit, knife = (peg("abrasive", name=name, size=3) for name in ("D-bit", "Stitching awl"))
    windows = [usual_window(part, part.zone[0]) for part in (bit, knife)]
    assert windows[0].low_hrc > windows[1].low_hrc


def test_a_face_that_takes_knocks_is_softer_than_an_edge():
    pawl = peg("edge-impact", "medium", name="Winch pawl")
    axe = peg("edge-impact", "medium", name="Side axe")
    face, edge = (usual_window(part, part.zone[0]) for part in (pawl, axe))
    assert face.low_hrc < edge.low_hrc
    assert face.floor_hrc < edge.floor_hrc


def test_what_wears_in_soil_is_asked_what_stones_allow():
    scraper = plate("Scraper for a roller")
    muddy = scraper.zone[0].model_copy(update={"mate": Mate(material="mud and stones")})
    dug = scraper.model_copy(update={"zone": (muddy,)})
    assert dug.works_ground
    assert not scraper.works_ground
    assert usual_window(dug, muddy).high_hrc < usual_window(scraper, scraper.zone[0]).low_hrc


def test_what_bends_or_cuts_grass_is_softer_than_a_plane_iron():
    knife, saw, sickle, iron = (
        usual_window(part, part.zone[0])
        for part in (
            peg("abrasive", name=name, size=1)
            for name in ("Craft knife", "Tenon saw", "Sickle", "Plane iron")
        )
    )
    assert saw.high_hrc < sickle.high_hrc < knife.high_hrc <= iron.high_hrc
    assert saw.low_hrc < sickle.low_hrc < knife.low_hrc < iron.low_hrc


def test_what_is_struck_by_hand_is_softer_than_what_is_swung():
    struck, swung = (peg("edge-impact", name="Axe", impact=i) for i in ("hammered", "light"))
    windows = [usual_window(part, part.zone[0]) for part in (struck, swung)]
    assert windows[0].low_hrc < windows[1].low_hrc


def test_what_presses_on_paper_is_softer_than_what_presses_on_sheet():
    die = peg("edge-impact", "light", name="Perforating die")
    assert with_mate(die, "paper").low_hrc < with_mate(die, "steel sheet").low_hrc


def test_a_broad_face_behind_sheet_works_as_it_is_bought():
    dolly, dog = (peg("edge-impact", name=name) for name in ("Panel dolly", "Clutch dog"))
    assert usual_window(dolly, dolly.zone[0]).bought_hrc == 5.0
    assert usual_window(dog, dog.zone[0]).bought_hrc is None


def test_what_is_hammered_on_leather_needs_no_hardness_and_on_steel_it_does():
    stamp = peg("sliding", impact="hammered")
    assert with_mate(stamp, "leather") is None
    assert with_mate(stamp, "sheet steel").low_hrc == 50


def test_what_rakes_hot_ash_asks_for_no_hardness_and_what_cuts_hot_does():
    hot = {"limit": {"service_temperature": "600 degC"}}
    rake, knife = plate("Ash rake", **hot), plate("Hot knife", **hot, **{
        "part.feature": [{"kind": "edge", "at": 0}]})  # fmt: skip
    assert usual_window(rake, rake.zone[0]) is None
    assert usual_window(knife, knife.zone[0]).high_hrc == 52


def test_a_broad_wedge_for_wood_and_a_pick_for_ice_ask_for_no_hardness():
    wedge = peg("edge-impact", impact="hammered", name="Wedge", size=25)
    assert with_mate(wedge, "green oak") is None
    assert with_mate(wedge, "granite").low_hrc > 40
    assert with_mate(peg("edge-impact", name="Ice pick", size=6), "ice") is None


def test_a_hammered_face_on_brass_works_as_it_is_bought():
    punch = peg("sliding", impact="hammered")
    assert with_mate(punch, "brass eyelets").bought_hrc == 5.0
    assert with_mate(punch, "steel rivets").bought_hrc is None


def test_a_hot_knife_for_rope_asks_for_no_hardness():
    hot = {"limit": {"service_temperature": "350 degC"}}
    knife = plate("Rope knife", **{"part.feature": [{"kind": "edge", "at": 0}]}, **hot)
    assert with_mate(knife, "nylon rope") is None


@pytest.mark.parametrize("severity", ["light", "medium"])
def test_a_hammered_face_that_rubs_works_from_45_hrc(severity):
    part = peg("sliding", severity, impact="hammered")
    assert usual_window(part, part.zone[0]).floor_hrc == 45.0


def window(part):
    return usual_window(part, part.zone[0])


def on(part, material, wears="mate"):
    """Return a part whose zone works on some material."""
    zone = part.zone[0].model_copy(update={"mate": Mate(material=material, should_wear=wears)})
    return part.model_copy(update={"zone": (zone,)})


@pytest.mark.parametrize("material", ["thorn and twigs", "hay", "green wood", "brambles"])
def test_an_edge_swung_at_what_grows_is_as_hard_as_one_for_crops(material):
    slasher = on(peg("abrasive", "medium", name="Hedging blade", size=4), material)
    assert window(slasher).high_hrc == 58


@pytest.mark.parametrize("material", ["boxwood", "steel", "leather"])
def test_an_edge_swung_at_what_does_not_grow_is_as_hard_as_it_was(material):
    tool = on(peg("abrasive", "medium", name="Hook blade", size=4), material)
    assert window(tool).high_hrc >= 63


def test_what_splits_wood_is_softer_than_what_cuts_it():
    edge = {
        "part.feature": [{"kind": "edge", "at": 0}],
        "load": {"impact": "hammered", "cycles": "static"},
    }
    struck = {**edge, "zone": [{"section": [1], "wear": "edge-impact", "severity": "medium"}]}
    froe, iron, chisel = (
        window(plate(n, **struck)) for n in ("Froe", "Cleaving iron", "Chisel")
    )
    assert froe == iron
    assert froe.high_hrc < chisel.high_hrc
    assert froe.low_hrc < chisel.low_hrc


def test_a_thin_struck_end_that_dents_nothing_is_no_edge():
    iron = peg("edge-impact", name="Caulking iron", impact="hammered", size=5)
    assert window(on(iron, "oakum")).bought_hrc == 5.0
    assert window(on(iron, "steel rivets")).bought_hrc is None
    assert window(on(iron, "oakum and steel")).bought_hrc is None


def test_a_slender_point_that_is_bent_is_let_down_and_a_stout_or_idle_one_is_not():
    def point(size=2, bending="0.5 N m", name="Etching awl"):
        return asked({
            "part.name": name, "part.feature": [],
            "part.section": [{"shape": "round", "size": size, "length": 60}],
            "zone": [{"section": [1], "wear": "abrasive", "severity": "light"}],
            "load": {"impact": "none", "cycles": "occasional", "bending": bending},
        })  # fmt: skip

    assert window(point()).high_hrc == 58
    for other in (point(bending=None), point(size=6), point(name="Graver")):
        assert window(other).high_hrc > 58


def test_an_edge_that_stands_wet_may_be_of_stainless_steel():
    wet = {"limit": {"corrosion": "severe"}, "part.feature": [{"kind": "edge", "at": 0}]}
    dry = {"part.feature": [{"kind": "edge", "at": 0}]}
    assert window(plate("Knife", **wet)).low_hrc == 52
    assert window(plate("Knife", **dry)).low_hrc == 59


def test_a_lever_that_prises_and_wears_is_as_hard_as_a_dog():
    shucker, liner = (peg("abrasive", "medium", name=n) for n in ("Shucker", "Chute liner"))
    assert window(shucker).high_hrc == 57
    assert window(liner).high_hrc == 63


@pytest.mark.parametrize(
    ("name", "high"), [("Hot sett", 55), ("Gavelock", 54), ("Cold sett", 60)]
)
def test_what_cuts_hot_iron_or_prises_is_softer_than_what_cuts_cold(name, high):
    tool = peg("edge-impact", "medium", name=name, impact="hammered", size=8)
    assert window(tool).high_hrc == high


def test_a_prong_is_struck_as_an_edge_whatever_its_width():
    iron = plate("Pricking iron", **{
        "part.feature": [{"kind": "teeth", "at": 1, "size": 1.2}],
        "load": {"impact": "hammered", "cycles": "static"},
        "zone": [{"section": [1], "wear": "edge-impact", "severity": "light"}],
    })  # fmt: skip
    assert window(on(iron, "bridle leather")).low_hrc == 52
    plain = plate("Stamp plate", **{
        "part.feature": [], "load": {"impact": "hammered", "cycles": "static"},
        "zone": [{"section": [1], "wear": "edge-impact", "severity": "light"}],
    })  # fmt: skip
    assert window(on(plain, "bridle leather")).bought_hrc == 5


def test_a_gauge_that_dust_wears_is_as_hard_as_any():
    gauge = peg("abrasive", name="Plug gauge")
    assert window(gauge).low_hrc == 58
    assert window(on(gauge, "boxwood")).low_hrc < 58
