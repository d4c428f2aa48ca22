"""Whole requirements by number, every one of them valid: any part, any duty, any workshop.

Sizes and loads lie on grids that workshops use, with a few of the least and the largest that a
requirement may hold among them. The same number gives the same requirement everywhere.
"""

from dataclasses import replace
from itertools import pairwise
from random import Random
from types import MappingProxyType
from typing import Any, TypeVar, get_args

from catalog import Catalog, load_catalog
from selector.requirement import Requirement, requirement_from
from selector.requirement.part import CUTS, FeatureKind
from selector.requirement.priority import CRITERIA, Preset
from selector.requirement.whole import SafetyUse
from selector.requirement.workshop import Check, Measure
from selector.requirement.zone import Severity, Wear

T = TypeVar("T")
Table = dict[str, Any]
KNOWN = load_catalog()
SHAPES = ("round", "round", "round", "square", "hexagon", "tube", "flat")
USUAL_MM = (3, 5, 6.35, 8, 10, 12, 16, 20, 25, 30, 40)
ODD_MM = (0.5, 2, 60, 100, 300)
LENGTHS_MM = (2, 5, 10, 20, 30, 50, 80, 150)
ODD_LENGTHS_MM = (0.1, 300, 1000)
# The coldest and the hottest that a bath is met at. [°C]
BATHS_C = {
    "water": (5, 90), "brine": (0, 80), "warm-water": (25, 90), "oil": (10, 180),
    "fast-oil": (10, 120), "vegetable-oil": (10, 180), "polymer": (5, 50),
}  # fmt: skip
# Such as lie in a rack; some of the names mean several steels.
RACKED = ("C45", "EN8", "silver steel", "EN19", "42CrMo4", "O1", "S235", "unknown", "EN24T")


class Dice:
    """Chance that a number fixes."""

    def __init__(self, number: int) -> None:
        self._random = Random(number)  # noqa: S311 - nothing here is secret

    def one(self, values: Any) -> Any:
        """Return one of some values."""
        return self._random.choice(list(values))

    def of(self, kind: Any) -> Any:
        """Return one word of a closed set."""
        return self.one(get_args(kind))

    def in_ten(self, times: int) -> bool:
        """Return whether what happens so many times in ten happens."""
        return self._random.random() < times / 10

    def perhaps(self, value: T, times: int = 4) -> T | None:
        """Return a value, or None where it is left out."""
        return value if self.in_ten(times) else None

    def some(self, values: Any, most: int) -> list[Any]:
        """Return some of the values, each once at most, in their order."""
        every = list(values)
        count = self._random.randint(0, min(most, len(every)))
        return [every[k] for k in sorted(self._random.sample(range(len(every)), count))]


def given(table: Table) -> Table:
    """Return a table without the keys that were left out."""
    return {key: value for key, value in table.items() if value is not None}


def section_of(dice: Dice) -> Table:
    """Return one section, one in ten of a size or length out of the common."""
    shape = dice.one(SHAPES)
    size = dice.one(ODD_MM if dice.in_ten(1) else USUAL_MM)
    return given(
        {
            "shape": shape,
            "size": size,
            "length": dice.one(ODD_LENGTHS_MM if dice.in_ten(1) else LENGTHS_MM),
            "width": dice.one((0.5, 1, 1.5, 3, 8)) * size if shape == "flat" else None,
            "bore": dice.one((0.1, 0.5, 0.8, 0.9)) * size if shape == "tube" else None,
            "fillet": dice.perhaps(dice.one((0.05, 0.5, 2.0))),
        }
    )


def feature_of(dice: Dice, sections: list[Table]) -> Table:
    """Return one feature somewhere on the sections."""
    kind, place = dice.of(FeatureKind), dice.one(range(len(sections)))
    section = sections[place]
    before = sum(other["length"] for other in sections[:place])
    size = dice.one((0.1, 0.3, 0.6, 0.95)) * section["size"]
    return given(
        {
            "kind": kind,
            "at": before + dice.one((0.1, 0.5, 0.9)) * section["length"],
            "size": max(size, 0.01) if kind in CUTS or dice.in_ten(3) else None,
        }
    )


def window_of(dice: Dice) -> Table:
    """Return a hardness window, either end open, in HRC or HB."""
    low, wide = dice.one((22, 30, 36, 38, 41, 50, 56, 60)), dice.one((0, 2, 4, 8))
    ends = dice.one(("both", "both", "min", "max", "soft"))
    if ends == "soft":
        return {"min": "180 HB", "max": "260 HB", "must": dice.in_ten(3)}
    return given(
        {
            "min": f"{low} HRC" if ends != "max" else None,
            "max": f"{low + wide} HRC" if ends != "min" else None,
            "must": dice.in_ten(3),
        }
    )


def mate_of(dice: Dice) -> Table:
    """Return what a zone runs against."""
    return given(
        {
            "material": "cast iron",
            "hardness": dice.perhaps(dice.one(("180 HB", "40 HRC", "60 HRC"))),
            "should_wear": dice.one(("mate", "part", "either")),
        }
    )


def zone_of(dice: Dice, sections: list[Table], places: tuple[int, ...]) -> Table:
    """Return the duty of some of the sections."""
    narrow = [min(s["size"], s.get("width", s["size"])) for s in sections]
    walls = [0.5 * (n - s.get("bore", 0.0)) for n, s in zip(narrow, sections, strict=True)]
    depth = dice.one((0.1, 0.5, 0.99)) * min(walls[place] for place in places)
    return given(
        {
            "section": [place + 1 for place in places],
            "wear": dice.of(Wear),
            "severity": dice.of(Severity),
            "hardness": dice.perhaps(window_of(dice)),
            "depth": dice.perhaps(max(depth, 0.01), 3) if depth >= 0.01 else None,
            "mate": dice.perhaps(mate_of(dice), 2),
            "life_ratio": dice.perhaps(dice.one((0.5, 2.0, 50.0)), 2),
        }
    )


def part_of(dice: Dice) -> tuple[Table, list[Table]]:
    """Return a part of one to five sections, and its zones from the working end."""
    sections = [section_of(dice) for _ in range(dice.one((1, 2, 2, 3, 4, 5)))]
    count = len(sections)
    cuts = sorted({0, count, *dice.some(range(1, count), 2)})
    runs = [tuple(range(a, b)) for a, b in pairwise(cuts)]
    # Some sections may have no duty at all.
    kept = [run for run in runs if dice.in_ten(9)] or runs[:1]
    features = [feature_of(dice, sections) for _ in range(dice.one((0, 0, 1, 3)))]
    part = {
        "name": "any part",
        "section": sections,
        "feature": features,
        "quantity": dice.one((1, 1, 10, 100_000)),
        "condition": dice.one(("bar", "bar", "plated", "hard", "welded", "finished")),
        "shape_class": dice.one(("plain", "plain", "plain", "coil-spring", "gear", "bevel")),
        "stock_removal": dice.perhaps(dice.one((0.0, 0.1, 0.5))),
        "finish_after": dice.some(("lathe", "surface-grinder"), 1),
    }
    return given(part), [zone_of(dice, sections, run) for run in kept]


def load_of(dice: Dice) -> Table:
    """Return a load, from none to far beyond what the part could bear."""
    return given(
        {
            "torque": dice.perhaps(f"{dice.one((0, 1, 5, 30, 500))} N m"),
            "bending": dice.perhaps(dice.one((0.0, 1.0, 30.0, 500.0)), 3),
            "axial": dice.perhaps(dice.one((0.0, 100.0, 5e3, 1e5)), 3),
            "contact": dice.perhaps(dice.one((0.0, 100.0, 5e3, 1e5)), 3),
            "impact": dice.one(("none", "light", "hammered")),
            "impact_energy": dice.perhaps(dice.one((0.0, 1.0, 50.0)), 2),
            "cycles": dice.one(("static", "occasional", "fatigue")),
            "failure_cost": dice.perhaps(dice.one((0.0, 100.0))),
        }
    )


def limit_of(dice: Dice) -> Table:
    """Return what the finished part must keep to."""
    return given(
        {
            "runout": dice.perhaps(dice.one((0.01, 0.1, 1.0))),
            "service_temperature": dice.perhaps(dice.one((-190, -20, 150, 600)), 3),
            "corrosion": dice.one(("none", "none", "none", "mild", "severe")),
            "budget": dice.perhaps(dice.one((0.0, 1.0, 50.0, 1e6))),
            "days": dice.perhaps(dice.one((0.0, 1.0, 14.0)), 3),
        }
    )


def heat_of(dice: Dice) -> Table:
    """Return one heat source of the catalogue."""
    ceiling = dice.perhaps(dice.one((260.0, 850.0, 1300.0)), 2)
    return given({"source": dice.one(KNOWN.heat_sources), "ceiling": ceiling})


def bath_of(dice: Dice) -> Table:
    """Return one bath of the catalogue, liquid and not on fire."""
    medium = dice.one(KNOWN.media)
    ends = BATHS_C.get(medium)
    return given(
        {
            "medium": medium,
            "volume": dice.perhaps(dice.one((0.1, 2.0, 20.0))),
            "temperature": dice.perhaps(dice.one(ends)) if ends else None,
            "agitation": dice.one(("none", "mild", "moderate", "strong", "violent")),
        }
    )


def bar_of(dice: Dice) -> Table:
    """Return one bar of a rack, in a condition that its steel is listed in if in any."""
    name = dice.one(RACKED)
    steels = KNOWN.find(name)
    sold = [c.name for c in steels[0].condition] if len(steels) == 1 else []
    return given(
        {
            "steel": name,
            "condition": dice.perhaps(dice.one(sold)) if sold else None,
            "evidence": dice.one(("certificate", "marking", "receipt", "none")),
        }
    )


def workshop_of(dice: Dice) -> Table:
    """Return a workshop, from a bare bench to several of everything."""
    rack = [bar_of(dice) for _ in range(dice.one((0, 0, 1, 2)))]
    skill = {name: dice.one((0.2, 1.0, 1.0, 5.0)) for name in ("bias", "scatter", "delay")}
    return {
        "heat": [heat_of(dice) for _ in range(dice.one((0, 1, 2, 2, 3)))],
        "bath": [bath_of(dice) for _ in range(dice.one((0, 1, 2, 3)))],
        "temper": [{"means": means} for means in dice.some(("oven", "furnace", "torch"), 1)],
        "measure": dice.some(get_args(Measure), 2),
        "light": dice.one(("dim", "shade", "daylight", "sun")),
        "check": dice.some(get_args(Check), 2),
        "turns_part": dice.in_ten(5),
        "subcontract": dice.in_ten(4),
        "stock": rack,
        "only_stock": bool(rack) and dice.in_ten(4),
        "skill": skill,
    }


def priorities_of(dice: Dice) -> Table:
    """Return what matters most, by one of the three ways to say so, or not at all."""
    points = {name: dice.one((0.5, 10.0)) for name in dice.some(CRITERIA, 7)}
    order = dice.some(CRITERIA, 7)[::-1]
    said = dice.one(("nothing", "preset", "order", "points"))
    if said == "preset":
        return {"preset": dice.of(Preset)}
    if said == "order":
        return {"order": order}
    return {"points": points} if said == "points" and points else {}


def draft_number(number: int) -> Table:
    """Return the whole requirement that a number stands for as a file would hold it."""
    dice = Dice(number)
    part, zones = part_of(dice)
    return {
        "safety_use": dice.of(SafetyUse) if dice.in_ten(2) else "could hurt",
        "part": part,
        "zone": zones,
        "load": load_of(dice),
        "limit": limit_of(dice),
        "workshop": workshop_of(dice),
        "priorities": priorities_of(dice),
    }


def requirement_number(number: int) -> Requirement:
    """Return the whole requirement that a number stands for."""
    return requirement_from(draft_number(number))


def catalog_for(requirement: Requirement, number: int, most: int) -> Catalog:
    """Return the shipped catalogue with a few steels alone, those of the rack among them."""
    slugs = {
        steel.slug for bar in requirement.workshop.stock for steel in KNOWN.find(bar.steel)
    }
    dice = Dice(number)
    slugs |= {dice.one(sorted(KNOWN.steels)) for _ in range(most)}
    steels = {slug: KNOWN.steels[slug] for slug in sorted(slugs)}
    return replace(KNOWN, steels=MappingProxyType(steels))
