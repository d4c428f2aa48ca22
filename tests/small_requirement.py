"""Small parts of any kind by number, in workshops where something comes out right.

They are cheap to advise on, so that a rule is tried on many of them: few sizes and forms, for
what heat does to one of them serves all others like it. `whole_requirement` numbers the odd
and the impossible ones.
"""

from typing import Any

from selector.requirement import Requirement, requirement_from
from tests.whole_requirement import Dice, given

Table = dict[str, Any]
WEARS = ("none", "sliding", "abrasive", "rolling-contact", "edge-impact")
SHAPES = ("round", "round", "round", "square", "hexagon", "flat", "tube")
SIZES_MM = (6, 10, 16)
LENGTHS_MM = (15, 40)
# Steels of the small catalogue, by the names that a rack is labelled with.
RACK = ("silver steel", "O1", "C45", "42CrMo4", "16MnCr5", "S235", "unknown")
BENCHES: tuple[Table, ...] = (
    {"heat": [{"source": "hand-torch"}], "measure": ["eye", "magnet"]},
    {"heat": [{"source": "kiln"}], "measure": ["thermocouple"]},
    {"heat": [{"source": "heat-treat-oven"}], "measure": ["thermocouple"]},
    {"heat": [], "subcontract": True},
    {"heat": [{"source": "kitchen-oven"}], "subcontract": True},
    {"heat": [{"source": "kiln"}], "measure": ["thermocouple"], "subcontract": True},
)


def _section(shape: str, size: float, length: float) -> Table:
    """Return one section of a small part."""
    return given(
        {
            "shape": shape,
            "size": size,
            "length": length,
            "width": 2.5 * size if shape == "flat" else None,
            "bore": 0.5 * size if shape == "tube" else None,
            "fillet": 1.0,
        }
    )


def _zone(dice: Dice) -> Table:
    """Return what the working end suffers."""
    mate = given(
        {
            "material": "bronze bush",
            "hardness": dice.perhaps("48 HRC", 5),
            "should_wear": dice.one(("mate", "part", "either")),
        }
    )
    low = dice.one((28, 40, 48, 52, 56))
    window = {"min": f"{low} HRC", "max": f"{low + 6} HRC", "must": dice.in_ten(2)}
    return given(
        {
            "section": [1],
            "wear": dice.one(WEARS),
            "severity": dice.one(("light", "medium", "heavy")),
            "hardness": dice.perhaps(window, 5),
            "mate": dice.perhaps(mate, 4),
        }
    )


def small_draft(number: int) -> Table:
    """Return the small requirement that a number stands for, as a file would hold it."""
    dice = Dice(number)
    size, first, behind = dice.one(SIZES_MM), dice.one(SHAPES), dice.one(("same", "round"))
    shapes = (first, first if behind == "same" else behind)[: dice.one((1, 2))]
    sections = [_section(*made) for made in zip(shapes, (size, size), LENGTHS_MM, strict=False)]
    zones = [_zone(dice), *({"section": [2], "wear": "none"} for _ in sections[1:])]
    shop = {
        "bath": [{"medium": "oil"}, {"medium": "water"}],
        "turns_part": True,
        "held_by": "tongs",
        "check": dice.some(("file", "hardness-files", "tester"), 1),
        "stock": [
            {"steel": dice.one(RACK), "evidence": "receipt"} for _ in range(dice.one((0, 1, 1)))
        ],
    }
    return {
        "safety_use": "none",
        "part": {"name": "small part", "section": sections},
        "zone": zones,
        "load": {
            "impact": dice.one(("none", "light", "hammered")),
            "cycles": dice.one(("static", "occasional", "fatigue")),
        },
        "limit": given({"budget": dice.one((60.0, 150.0, 400.0)), "runout": dice.perhaps(0.2)}),
        "workshop": shop | dice.one(BENCHES),
    }


def small_requirement(number: int) -> Requirement:
    """Return the small requirement that a number stands for."""
    return requirement_from(small_draft(number))
