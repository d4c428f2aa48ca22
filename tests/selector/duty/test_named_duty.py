"""What a zone's duty is called in the trade."""

import pytest

from selector.duty.named_duty import duty_of
from selector.job.demand import demands
from selector.requirement import requirement_from


def named(name, wear, impact="none"):
    """Return a plain bar under a name, with one zone."""
    return requirement_from({
        "safety_use": "none",
        "part": {"name": name, "section": [{"shape": "round", "size": 16, "length": 90}]},
        "zone": [{"section": [1], "wear": wear}],
        "load": {"impact": impact, "cycles": "occasional"},
        "workshop": {"heat": []},
    })  # fmt: skip


@pytest.mark.parametrize(("name", "edged"), [
    ("Cold chisel", True), ("Tap M6 for brass", True), ("Plane iron", True),
    ("Countersink, 90 degrees", True), ("Sickle", True), ("Cutter block", False),
    ("Mixing blade", False),
    ("Tap wrench", False), ("Chisel handle", False), ("Cam plate", False),
])  # fmt: skip
def test_a_name_says_whether_a_part_has_an_edge(name, edged):
    assert named(name, "abrasive").is_edged is edged


@pytest.mark.parametrize(("name", "wear", "impact", "duty"), [
    ("Cold chisel", "edge-impact", "hammered", "struck edge"),
    ("Hammer face", "edge-impact", "hammered", "struck body"),
    ("Bench holdfast", "none", "hammered", "plain"),
    ("Blanking die", "edge-impact", "light", "pressed edge"),
    ("Dog of a clutch", "edge-impact", "light", "struck body"),
    ("Harrow tine", "abrasive", "light", "soil"),
    ("Wear ring", "abrasive", "none", "grit"),
    ("Leaf spring", "none", "none", "spring"),
    ("Coining die", "sliding", "light", "pressed face"),
    ("Drawing ring for cups", "sliding", "none", "pressed face"),
    ("Die holder", "sliding", "none", "plain"),
    ("Ring gauge", "sliding", "none", "gauge"),
    ("Gauge holder", "sliding", "none", "plain"),
    ("Shear pin for a baler", "none", "light", "key"),
])  # fmt: skip
def test_a_duty_goes_by_wear_blows_and_name(name, wear, impact, duty):
    asked = named(name, wear, impact)
    assert duty_of(demands(asked)[0], asked) == duty


@pytest.mark.parametrize(("name", "duty"), [
    ("Engraver's burnisher", "rubbing tool"), ("Metal-spinning tool", "rubbing tool"),
    ("Flaring cone", "rubbing tool"), ("Tool holder", "sliding"), ("Pivot pin", "sliding"),
])  # fmt: skip
def test_a_tool_that_rubs_is_no_pin(name, duty):
    part = named(name, "sliding")
    worn = part.zone[0].model_copy(update={"severity": "medium"})
    rubbing = part.model_copy(update={"zone": (worn,)})
    assert duty_of(demands(rubbing)[0], rubbing) == duty


def test_what_is_to_wear_before_a_soft_mate_is_a_plain_part():
    mate = {"material": "cast ring", "hardness": "180 HB", "should_wear": "part"}
    asked = requirement_from({
        "safety_use": "none",
        "part": {"name": "Pinion", "section": [{"shape": "round", "size": 40, "length": 30}]},
        "zone": [{"section": [1], "wear": "sliding", "severity": "medium", "mate": mate}],
        "load": {"impact": "light", "cycles": "occasional"},
        "workshop": {"heat": []},
    })  # fmt: skip
    assert duty_of(demands(asked)[0], asked) == "plain"
