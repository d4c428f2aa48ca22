"""Measure the advice against cases of practice: what experienced hands accept or refuse.

Run with a file of cases, one JSON object a line:

    python tests/benchmarks/practice_cases.py CASES.jsonl [--show]

Reports how often an acceptable family and route is among the first three, and which refused
options are recommended there. A measurement, not a test.
"""

import argparse
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np

from catalog import Catalog, load_catalog
from catalog.steel import Steel, plain
from selector import Requirement, advise
from selector.advice import Advice, Option
from selector.explain.coupon import needs_coupon
from selector.requirement import requirement_from

Case = dict[str, Any]

# Group words of the cases: the kinds of catalogue steel they mean.
GROUPS = {
    "ANY-LOW-CARBON": {"mild", "free-cutting"},
    "MILD": {"mild"},
    "ANY-CARBURISING": {"case-hardening"},
    "ANY-MEDIUM-CARBON": {"medium-carbon"},
    "ANY-HIGH-CARBON": {"high-carbon", "water-tool"},
    "ANY-TOOL-STEEL": {
        "water-tool", "oil-tool", "air-tool", "shock-tool", "hot-work-tool", "high-speed",
    },
    "STAINLESS": {"austenitic-stainless", "martensitic-stainless", "precipitation-hardening"},
    "UNKNOWN": {"unknown"},
    "HSS": {"high-speed"},
}  # fmt: skip
ELEMENTS = {"DOWEL-PIN": "dowel-pin", "LINEAR-SHAFT": "linear-shaft"}
ROUTES = {
    "through-torch": {"through-torch"},
    "local-torch": {"local-torch", "residual-heat"},
    "through-furnace": {"through-furnace"},
    "as-bought": {"as-bought", "prehard"},
    "prehard": {"prehard", "as-bought"},
    "carburise": {"carburise"},
    "case": {"case"},
    "nitride": {"nitride"},
    "induction": {"induction"},
    "buy-hard-element": {"buy-hard-element"},
}
HEAT = {
    "furnace-1100": "heat-treat-oven",
    "hand-torch": "hand-torch",
    "oxy-propane": "oxy-propane",
    "oxy-acetylene": "oxy-acetylene",
    "forge": "forge",
    "kitchen-oven": "kitchen-oven",
}


def requirement_of(case: Case, catalog: Catalog) -> Requirement:
    """Return a case as a requirement; what a case leaves out stays out."""
    shop, limits, loads = case["workshop"], case["limits"], case["loads"]
    data: dict[str, Any] = {
        "safety_use": "lifting" if case["safety_critical"] else "could hurt",
        "part": {
            "name": case["part"],
            "quantity": case["quantity"],
            "section": [_section(section) for section in case["sections"]],
            "finish_after": ["surface-grinder"] if shop["grind_after"] else [],
            "condition": "hard" if _hard(case) else "bar",
        },
        "zone": [_zone(zone) for zone in case["zones"]],
        "load": {"impact": loads["impact"], "cycles": loads["cycles"]},
        "limit": {"corrosion": limits.get("corrosion", "none")},
        "workshop": {
            "heat": [{"source": HEAT[name]} for name in shop["heat"] if name in HEAT],
            "bath": [{"medium": name} for name in shop["quench"] if name != "air"],
            "measure": list(shop["measure"]),
            "check": list(shop["test"]),
            "subcontract": shop["subcontract"],
        },
    }
    if "torque_nm" in loads:
        data["load"]["torque"] = f"{loads['torque_nm']} N m"
    if "bending_nm" in loads:
        data["load"]["bending"] = loads["bending_nm"]
    if "runout_mm" in limits:
        data["limit"]["runout"] = max(limits["runout_mm"], 0.01)
    if "service_c" in limits:
        data["limit"]["service_temperature"] = limits["service_c"]
    stock = _stock(case, catalog)
    if stock:
        data["workshop"]["stock"] = [stock]
    return requirement_from(data)


def _section(given: Case) -> dict[str, Any]:
    """Return one section of a case."""
    section: dict[str, Any] = {
        "shape": given["shape"],
        "size": given["size_mm"],
        "length": given["length_mm"],
    }
    if "bore_mm" in given:
        section["bore"] = given["bore_mm"]
    if given["shape"] == "flat":
        section["size"] = given["thickness_mm"]
        section["width"] = given["width_mm"]
    return section


def _zone(given: Case) -> dict[str, Any]:
    """Return one zone of a case; sections are counted from 1."""
    zone: dict[str, Any] = {
        "section": [index + 1 for index in given["sections"]],
        "wear": given["wear"],
        "severity": given["severity"],
    }
    window = {
        end: f"{given[f'hrc_{end}']} HRC" for end in ("min", "max") if f"hrc_{end}" in given
    }
    if window:
        zone["hardness"] = window
    return zone


def _hard(case: Case) -> bool:
    """Return whether the part is hard already."""
    stock = case["stock"]
    return bool(stock) and stock["condition"].strip() in {"hardened", "hard"}


def _stock(case: Case, catalog: Catalog) -> dict[str, Any] | None:
    """Return the bar in the rack, "unknown" where its name is not in the catalogue."""
    given = case["stock"]
    if not given:
        return None
    name = {"MILD": "mild steel", "ANY-LOW-CARBON": "mild steel"}.get(
        given["steel"], given["steel"]
    )
    if not catalog.find(name):
        name = "unknown"
    return {"steel": name}


def matches_steel(word: str, steel: Steel, catalog: Catalog) -> bool:
    """Return whether a word of a case means this steel or one of its family."""
    if word == "ANY":
        return True
    if word in GROUPS:
        return steel.kind in GROUPS[word]
    if word in ELEMENTS:
        return steel.slug == ELEMENTS[word]
    found = catalog.find(word)
    return steel.family in {other.family for other in found} or any(
        plain(word) == plain(name) for name in steel.names()
    )


def matches_route(word: str, option: Option) -> bool:
    """Return whether a word of a case means this route."""
    route, source = option.treatment.route, option.treatment.source
    if word == "any":
        return True
    if word == "subcontract":
        return route.place == "subcontract"
    if word == "through-furnace" and source is not None and source.kind == "fire":
        return route.kind == "through-torch"
    return route.kind in ROUTES.get(word, set())


def matches(entry: Case, option: Option, catalog: Catalog) -> bool:
    """Return whether an option is what an entry accepts or refuses."""
    work = option.treatment
    if not any(matches_steel(word, work.steel, catalog) for word in entry["steels"]):
        return False
    if not any(matches_route(word, option) for word in entry["routes"]):
        return False
    if entry.get("quench") and work.medium is not None:
        kinds = {"water": {"water", "brine"}, "oil": {"oil"}, "air": {"air"}}[entry["quench"]]
        if work.medium.severity_class not in kinds:
            return False
    return not entry.get("hrc") or _in_window(entry["hrc"], option)


def _in_window(window: list[float | None], option: Option) -> bool:
    """Return whether the predicted surface, or the bar under a layer, lies in a window."""
    low, high = window
    prediction = option.judged.prediction
    found = [prediction.surface_hrc, prediction.core_hrc]
    return any(
        (low is None or np.median(hrc) >= low - 2)
        and (high is None or np.median(hrc) <= high + 2)
        for hrc in found
    )


def accepted(case: Case, advice: Advice, catalog: Catalog, first: int = 3) -> bool:
    """Return whether an acceptable family and route is among the first few."""
    for entry in case["acceptable"]:
        if "coupon-first" in entry["routes"] and needs_coupon(advice):
            return True
        if any(matches(entry, option, catalog) for option in advice.options[:first]):
            return True
    return False


def refused(case: Case, advice: Advice, catalog: Catalog, first: int = 3) -> Iterator[str]:
    """Yield the options among the first few that practice refuses."""
    for entry in case["rejected"]:
        if entry["level"] != "option":
            continue
        for option in advice.options[:first]:
            if matches(entry, option, catalog):
                yield f"{option.id}: {entry['reason']}"


def main() -> int:
    """Run all usable cases and print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("cases", type=Path)
    parser.add_argument("--show", action="store_true", help="Print every case.")
    parser.add_argument("--only", help="One case id.")
    given = parser.parse_args()
    catalog = load_catalog()
    good, wrong, run = 0, [], 0
    for line in given.cases.read_text(encoding="utf-8").splitlines():
        case = json.loads(line)
        if not case["usable"] or (given.only and case["id"] != given.only):
            continue
        run += 1
        advice = advise(requirement_of(case, catalog), catalog)
        hit = accepted(case, advice, catalog)
        bad = list(refused(case, advice, catalog))
        good += hit
        wrong += [f"{case['id']}: {text}" for text in bad]
        if given.show or not hit or bad:
            show(case, advice, hit=hit)
    sys.stdout.write(
        f"{run} cases; acceptable among the first three in {good} "
        f"({100 * good / max(run, 1):.0f} %); refused options recommended: {len(wrong)}\n"
    )
    sys.stdout.write("".join(f"  {text}\n" for text in wrong))
    return 0


def show(case: Case, advice: Advice, *, hit: bool) -> None:
    """Print one case beside its advice."""
    sys.stdout.write(
        f"{'ok ' if hit else 'MISS'} {case['id']} {case['part']}: {advice.verdict}\n"
    )
    for entry in case["acceptable"]:
        names = ",".join(entry["steels"][:3])
        sys.stdout.write(f"     wanted {names} {entry['routes']} {entry['hrc']}\n")
    for option in advice.options[:4]:
        found = option.judged.prediction
        narrow = [g.name for g in option.judged.gates if g.verdict != "pass"]
        hrc = np.median(found.surface_hrc)
        sys.stdout.write(f"     {option.score:.3f} {option.id} {hrc:.0f} HRC {narrow}\n")


if __name__ == "__main__":
    raise SystemExit(main())
