from selector.job.usual_window import usual_window
from selector.job.working_end import is_struck_edge, is_tip
from tests.dog import asked
from tests.peg import peg, plate


def test_what_is_struck_is_an_edge_where_it_is_thin_or_called_so():
    broad, thin = (peg("edge-impact", impact="hammered", size=size) for size in (20, 6))
    assert not is_struck_edge(broad, broad.zone[0])
    assert is_struck_edge(thin, thin.zone[0])
    chisel = peg("edge-impact", impact="hammered", name="Cold chisel")
    assert is_struck_edge(chisel, chisel.zone[0])


def test_a_thin_firing_pin_is_no_edge():
    pin, punch = (
        peg("edge-impact", name=name, impact="hammered", size=5)
        for name in ("Firing pin", "Pin punch")
    )
    assert not is_struck_edge(pin, pin.zone[0])
    assert is_struck_edge(punch, punch.zone[0])


def test_a_thin_tip_that_pushes_is_harder_than_a_dog():
    tip, dog = (peg("edge-impact", name=name, size=3) for name in ("Beading tool", "Pawl"))
    thick = peg("edge-impact", name="Beading tool", size=12)
    assert [is_tip(part, part.zone[0]) for part in (tip, dog, thick)] == [True, False, False]
    low, high = (usual_window(part, part.zone[0]).low_hrc for part in (dog, tip))
    assert low < high


def test_a_hollow_spanner_is_as_hard_as_jaws():
    socket = asked({
        "part.name": "Socket wrench", "part.feature": [],
        "part.section": [{"shape": "tube", "size": 14, "bore": 7, "length": 25}],
        "load": {"torque": "15 N m", "impact": "none", "cycles": "occasional"},
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium"}],
    })  # fmt: skip
    assert usual_window(socket, socket.zone[0]).high_hrc == 56


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


def test_a_thick_saw_is_no_strip():
    thick = peg("abrasive", name="Saw", size=5)
    assert usual_window(thick, thick.zone[0]).high_hrc > 60


def test_prongs_that_pierce_are_a_tip_and_a_dog_with_prongs_is_none():
    def pricked(features):
        return plate("Iron with six prongs", **{
            "part.feature": features,
            "part.section": [{"shape": "flat", "size": 2.5, "width": 20, "length": 15}],
            "zone": [{"section": [1], "wear": "edge-impact", "severity": "light"}],
        })  # fmt: skip

    prongs, dog = pricked([{"kind": "teeth", "at": 4, "size": 1.2}]), pricked([])
    assert is_tip(prongs, prongs.zone[0])
    iron = prongs.model_copy(update={"part": prongs.part.model_copy(update={"name": "Prong"})})
    assert is_tip(iron, iron.zone[0])
    held = dog.model_copy(update={"part": dog.part.model_copy(update={"name": "Prong"})})
    assert not is_tip(held, held.zone[0])
