"""What the words for a mate say that is cut, touched or knocked through."""

import re

from selector.requirement.part_name import is_bench_work, is_metal

# What stones lie in where a tool is knocked through it.
_STONY = re.compile(r"\b(?:sand|mortar|rubble|shingle|stones|paving|asphalt|tarmac)\b", re.I)
# What is turned, bored or reamed and is no metal.
_NO_METAL = re.compile(
    r"wood|timber|\b(?:oak|elm|beech|birch|maple|pine|ebony|horn|bone|ivory|shell|clay|plaster|"
    r"cork|leather|stone|slate|alabaster|wax)\b",
    re.IGNORECASE,
)
_SOFT_METAL = re.compile(
    r"brass|bronze|copper|alumini?um|silver(?! steel)|gold|zinc|pewter|felt|nylon|"
    r"\b(?:lead|tin)\b",
    re.IGNORECASE,
)


def is_no_metal(material: str) -> bool:
    """Return whether what is worked is wood, horn, clay or the like."""
    return _NO_METAL.search(material) is not None and not is_metal(material)


def is_soft_work(material: str) -> bool:
    """Return whether what is touched wears no steel: wood, wax, gold, brass."""
    soft = _NO_METAL.search(material) or _SOFT_METAL.search(material)
    return soft is not None or (is_bench_work(material) and not is_metal(material))


def is_stony(material: str) -> bool:
    """Return whether what a tool is knocked through has stones in it."""
    return _STONY.search(material) is not None
