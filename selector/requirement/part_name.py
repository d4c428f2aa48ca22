"""How a part's name is read: the thing itself, one of its stretches, the size of its teeth.

The thing itself stands before what it is for, from or in, and last of the words that go
together: a pin gauge measures, the hinge pin of a narrow-gauge wagon does not.
"""

import re

# Behind these stands what a part is made from, for or in; after a figure "in" is inches.
_BESIDE = re.compile(
    r"(?<!\d )\b(?:from|for|to|in|on|with)\b|\b(?:of (?:a|an|the))\b", re.IGNORECASE
)
# A stretch that the shop calls so ends in an edge or a point.
_END_EDGED = re.compile(r"\b(?:(?:cutting )?edge|point|lip|tooth|teeth)s?\b", re.IGNORECASE)
# The size of teeth: a module in mm, a diametral pitch, or their number.
_MODULE = re.compile(r"\b(?:module|mod\.?|m)\s?(\d+(?:\.\d+)?)\b", re.IGNORECASE)
_PITCH = re.compile(r"\b(\d+(?:\.\d+)?)\s?(?:dp\b|diametral)", re.IGNORECASE)
_TEETH = re.compile(r"\b(\d+)\s?(?:t\b|teeth|tooth)", re.IGNORECASE)


def itself(name: str) -> str:
    """Return the words of a name that say what the part is, without what it is for or from."""
    said = [_BESIDE.split(phrase, maxsplit=1)[0].strip() for phrase in re.split("[,;(]", name)]
    return ", ".join(filter(None, said)) or name


def ends_edged(stretch: str) -> bool:
    """Return whether what the shop calls a stretch of it is an edge or a point."""
    return _END_EDGED.search(stretch) is not None


def module_mm(name: str, outside_mm: float) -> float | None:
    """Return the module of teeth that a name gives, None where it gives none.

    Parameters
    ----------
    name : str
        As "module 2.5", "20 DP" or, with the diameter over the teeth, "40 teeth".
    outside_mm : float
        Diameter over the teeth. [mm]

    Returns
    -------
    float or None
        Module. [mm]
    """
    if module := _MODULE.search(name):
        return float(module[1])
    if pitch := _PITCH.search(name):
        return 25.4 / float(pitch[1])
    teeth = _TEETH.search(name)
    return outside_mm / (int(teeth[1]) + 2) if teeth else None
