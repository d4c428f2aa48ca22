"""Parts and workshops of the trade, invented, and the advice on them, worked out once."""

import functools
import json

from catalog import load_catalog
from selector.advice.advise import Advice, advise
from selector.requirement import requirement_from
from tests.dog import only

FORGE = {
    "heat": [{"source": "forge"}],
    "bath": [{"medium": "oil"}, {"medium": "warm-water"}],
    "measure": ["eye", "magnet"],
    "held_by": "tongs",
}
KILN = {
    "heat": [{"source": "kiln"}],
    "bath": [{"medium": "oil"}],
    "measure": ["thermocouple"],
    "held_by": "tongs",
}
BARE = {"heat": []}


def part(name, sections, zones, shop, *steels, **more):
    """Return a requirement as data: shapes and sizes of sections, zones, workshop and rack."""
    stock = [{"steel": steel, "evidence": "receipt"} for steel in steels]
    load = {"impact": "none", "cycles": "occasional", **more.pop("load", {})}
    return {
        "safety_use": "none",
        "part": {"name": name, "section": sections, **more.pop("part", {})},
        "zone": zones,
        "load": load,
        "workshop": {**shop, **({"stock": stock} if stock else {})},
        **more,
    }


@functools.cache
def _advised(asked: str, steel: str | None, slugs: tuple[str, ...]) -> Advice:
    """Return the advice for a requirement written as JSON, worked out once."""
    known = only(*slugs) if slugs else load_catalog()
    return advise(requirement_from(json.loads(asked)), known, steel=steel)


def advised(asked, steel=None, among=()):
    """Return the advice on a requirement, for one steel or among a few where they are named."""
    return _advised(json.dumps(asked, sort_keys=True), steel, tuple(among))


def flat(thick, width, length):
    """Return a flat section."""
    return {"shape": "flat", "size": thick, "width": width, "length": length}


def round_(size, length, **more):
    """Return a round section."""
    return {"shape": "round", "size": size, "length": length, **more}
