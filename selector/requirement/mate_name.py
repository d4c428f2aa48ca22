"""What the words for a mate say that is cut, touched, run on or knocked through.

The words stand in a table by groups; here is what each kind of work makes of them.
"""

import re
from functools import cache
from pathlib import Path

from selector.requirement.vocabulary import one_of, table

_TABLE = table(Path(__file__).with_name("materials.toml"))
_SOFT_METAL = ("bearing_metal", "ductile", "precious", "zinc", "dead_soft")
_NO_METAL = ("wood", "horn", "clay", "plaster", "stone")
# A tool steel, with no silver in it.
_SILVER_STEEL = re.compile("silver steel", re.IGNORECASE)


@cache
def _words(group: str) -> re.Pattern[str]:
    """Return the pattern of one group of words."""
    said = _TABLE[group]
    inside, names = said.get("within", ()), said.get("names", ())
    patterns = [*inside, *([rf"\b{one_of(names)}\b"] if names else [])]
    return re.compile("|".join(patterns), re.IGNORECASE)


@cache
def is_of(material: str, *groups: str) -> bool:
    """Return whether a material is named in any of some groups of the table."""
    said = _SILVER_STEEL.sub("steel", material)
    return any(_words(group).search(said) for group in groups)


def is_ferrous(material: str) -> bool:
    """Return whether a mate is said to be of steel or iron."""
    return is_of(material, "steel", "iron")


def is_metal(material: str) -> bool:
    """Return whether what is worked is metal."""
    return is_of(
        material, "steel", "iron", "metal", "bearing_metal", "ductile", "precious", "zinc"
    )


def is_worked(material: str) -> bool:
    """Return whether a mate is metal as it goes into a press: sheet, strip, wire."""
    return is_of(material, "worked") and is_metal(material)


def is_soil(material: str) -> bool:
    """Return whether a mate is ground that stones lie in."""
    return is_of(material, "soil", "clay")


def is_stony(material: str) -> bool:
    """Return whether what a tool is knocked through has stones in it."""
    return is_of(material, "stony")


def is_bench_work(material: str) -> bool:
    """Return whether what is worked lies on a bench, not in the ground."""
    groups = ("hide_or_paper", "spongy", "plastic", "bench_sheet", "food")
    return is_of(material, *groups) and not is_soil(material)


def is_no_metal(material: str) -> bool:
    """Return whether what is worked is wood, horn, clay or the like."""
    no_metal = is_of(material, *_NO_METAL) or is_of(
        material, "paste", "spongy", "hide_or_paper"
    )
    return no_metal and not is_metal(material)


def has_no_hardness(material: str) -> bool:
    """Return whether no file or tester is held to it: leather, clay, packing, soil."""
    soft = ("paste", "spongy", "hide_or_paper", "plastic", "tender", "growth", "food")
    no_file = is_of(material, *_NO_METAL, *soft, "soil", "stony", "packing", "grain")
    return no_file and not is_metal(material)


def is_soft_work(material: str) -> bool:
    """Return whether what is touched wears no steel: wood, wax, gold, brass."""
    soft_metal = is_of(material, *_SOFT_METAL)
    soft = soft_metal or is_of(material, *_NO_METAL, "paste", "spongy", "plastic")
    return soft or (is_bench_work(material) and not is_metal(material))


def is_bearing(material: str) -> bool:
    """Return whether steel runs in it without being worn itself."""
    return is_of(material, "bearing_metal", "cast_iron", "plastic", "wood")


def is_slippery(material: str) -> bool:
    """Return whether soft steel runs on it without picking up."""
    return is_of(material, "bearing_metal", "iron", "plastic", "wood", "graphite")


def yields(material: str) -> bool:
    """Return whether it yields to a pin sooner than it wears it, as nylon does."""
    return is_of(material, "plastic", "spongy")


def is_harmless(material: str) -> bool:
    """Return whether it wears no gauge and dents no tool."""
    soft = ("wood", "plastic", "spongy", "hide_or_paper", "paste", "dead_soft")
    return is_of(material, *soft) and not is_ferrous(material)
