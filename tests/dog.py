"""A drive dog to test with: an invented part in an invented workshop, and ways to vary it."""

import copy
import json
import tomllib
from dataclasses import replace
from functools import cache
from types import MappingProxyType
from typing import Any

from catalog import Catalog, load_catalog
from selector.job.treatment import Treatment
from selector.requirement import Requirement, requirement_from

TEXT = """
safety_use = "could hurt"
[part]
name = "drive dog"
[[part.section]]
shape = "round"
size = "25 mm"
length = "30 mm"
[[part.section]]
shape = "round"
size = "25 mm"
length = "150 mm"
[[part.feature]]
kind = "teeth"
at = "5 mm"
[[zone]]
section = [1]
wear = "sliding"
severity = "medium"
hardness = { min = "50 HRC", max = "56 HRC" }
[[zone]]
section = [2]
wear = "none"
[load]
torque = "90 lb ft"
impact = "light"
cycles = "occasional"
[workshop]
heat = [{ source = "oxy-propane" }, { source = "kitchen-oven" }]
bath = [{ medium = "warm-water" }, { medium = "oil" }]
turns_part = true
"""
GONE = object()
FEW = ("42crmo4", "817m40", "c45", "115crv3", "16mncr5", "s235", "100mncrw4")
# Plain, alloyed, case-hardening, tool, stainless and ready-hard steel: a steel for every kind
# of route.
EVERY_KIND = (
    *FEW, "c60", "c105u", "51crv4", "x153crmov12", "hs6-5-2", "60wcrv8", "31crmo12", "x30cr13",
    "x5crni18-10", "x5crnicunb16-4", "40crmnmo7", "linear-shaft", "unknown",
)  # fmt: skip


def varied(changes: dict[str, Any] | None = None, text: str = TEXT) -> dict[str, Any]:
    """Return the dog as plain data; keys of `changes` are dotted, numbers count from 0."""
    data = tomllib.loads(text)
    for path, value in (changes or {}).items():
        *places, last = [int(key) if key.isdigit() else key for key in path.split(".")]
        at: Any = data
        for place in places:
            at = at[place] if isinstance(place, int) else at.setdefault(place, {})
        if value is GONE:
            del at[last]
        else:
            at[last] = copy.deepcopy(value)
    return data


def asked(changes: dict[str, Any] | None = None) -> Requirement:
    """Return the dog as a Requirement: one for equal changes, as what is kept for it is."""
    return _asked(json.dumps(varied(changes)))


@cache
def _asked(draft: str) -> Requirement:
    """Return what a draft asks."""
    return requirement_from(json.loads(draft))


def only(*slugs: str) -> Catalog:
    """Return the shipped catalogue with these steels alone."""
    known = load_catalog()
    steels = {slug: known.steels[slug] for slug in sorted(slugs)}
    return replace(known, steels=MappingProxyType(steels))


def work(
    steel: str = "c45",
    route: str = "through-torch",
    medium: str | None = "oil",
    source: str | None = "oxy-propane",
    condition: str | None = None,
) -> Treatment:
    """Return a treatment by catalogue names; the first supply condition unless one is named."""
    known = load_catalog()
    bar = known.steels[steel]
    return Treatment(
        bar,
        next(c for c in bar.condition if condition in {None, c.name}),
        known.routes[route],
        medium=known.media[medium] if medium else None,
        source=known.heat_sources[source] if source else None,
    )


def treatment_of(job, steel: str, route: str, medium: str, condition: str | None = None):
    """Return the first treatment of a job by steel, route, medium and condition."""
    from selector.job.candidates import screened  # noqa: PLC0415

    def wanted(bar, by):
        return (bar.slug, by.slug) == (steel, route)

    return next(
        item.treatment
        for item in screened(job.asked, job.catalog, job.bench, wanted)
        if item.treatment.medium is not None
        and item.treatment.medium.slug == medium
        and condition in {None, item.treatment.condition.name}
    )
