"""Measure the advice against cases of practice: what experienced hands accept or refuse.

Run with a file of cases, one JSON object a line:

    python tests/benchmarks/practice_cases.py CASES.jsonl [--show]

Reports how often an acceptable family and route is among the first three, which refused options
are recommended there, how many refused ways of working come with a caution that was named for
that case beforehand, and how many cautions stand on the first screen.
"""

import argparse
import json
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from catalog import Catalog, load_catalog
from catalog.steel import Steel, plain
from selector import Requirement, advise
from selector.advice.advise import Advice
from selector.advice.caution import advice_cautions, cautions_shown
from selector.decision.option import Option
from selector.requirement import requirement_from
from selector.trial.unknown_bar import needs_trial

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

# The cautions that answer a refused way of working, named case by case before any advice was
# asked: by the case and words of the reason. What no caution of the list answers stays without,
# and without credit. A case may name its own, in `cautions` of the entry.
NAMED: dict[str, tuple[tuple[str, frozenset[str]], ...]] = {
    case: tuple((words, frozenset(ids.split())) for words, ids in named)
    for case, named in {
        "S01": [("grinding allowance", "finish-after-heat soak-rule-furnace-only")],
        "S04": [("straightening", "straighten-warm"), ("stay flat", "finish-after-heat")],
        "S08": [
            ("on the bench", "anneal-before-requench"), ("re-quench", "anneal-before-requench"),
        ],
        "S10": [
            ("grinding marks", "sharp-notch-quench"),
            ("uncontrolled soak", "overheated-grain soak-rule-furnace-only"),
        ],
        "S16": [("welding after", "weld-hardened")],
        "S30": [("flat side", "quench-enter-edge-first")],
        "S31": [
            ("overheating", "overheated-grain"), ("water line", "keep-moving-at-water-line"),
        ],
        "S34": [("oval", "bar-out-of-round"), ("tube overheated", "shield-the-flame")],
        "S35": [("by name only", "unknown-steel-coupon")],
        "S37": [("the weld", "weld-hardened")],
        "S39": [("no-temper", "as-quenched-glass-brittle")],
        "S40": [("open flame", "temper-by-zone")],
        "S43": [("motor oil", "used-engine-oil")],
        "S46": [("differential quench", "temper-by-zone"), ("open wind", "shield-the-flame")],
        "S48": [("slot corner", "sharp-notch-quench"), ("stress raiser", "sharp-notch-quench")],
        "S49": [
            ("straightening", "straighten-warm as-quenched-glass-brittle"),
            ("sunlight", "dim-light"), ("under the oil", "oil-over-water"),
        ],
        "S52": [("chrome-plated", "chrome-fume")],
        "S55": [("finished to size", "finish-after-heat")],
        "S57": [("butt weld", "weld-hardened"), ("notch", "sharp-notch-quench")],
        "S61": [
            ("'very hot'", "overheated-grain"), ("hour per inch", "soak-rule-furnace-only"),
        ],
        "S62": [("HSS speed", "edge-runs-hot")],
        "S64": [("shank", "unknown-steel-coupon")],
        "S70": [("sawn through", "finish-after-heat"), ("one temper", "temper-by-zone")],
        "S75": [("embrittlement band", "temper-window-alloy"), ("chips", "struck-head-chips")],
        "S76": [("at the eye", "temper-by-zone")],
        "S79": [("finished to", "finish-after-heat")],
        "S82": [("ground away", "case-grind-through")],
        "S85": [("horizontally", "quench-enter-edge-first")],
    }.items()
}  # fmt: skip


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
        if "coupon-first" in entry["routes"] and needs_trial(advice.job):
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


def warned(case: Case, advice: Advice, catalog: Catalog, first: int = 3) -> Iterator[bool]:
    """Yield for each refused way of working a recommended option if a caution names it."""
    ids = {key for key, _ in advice_cautions(advice)}
    for entry in case["rejected"]:
        recommended = any(matches(entry, o, catalog) for o in advice.options[:first])
        if entry["level"] == "process" and recommended:
            yield bool(named(case, entry) & ids)


def named(case: Case, entry: Case) -> frozenset[str]:
    """Return the cautions named beforehand for a refused way of working of a case."""
    own = frozenset(entry.get("cautions", ()))
    found = [ids for words, ids in NAMED.get(case["id"], ()) if words in entry["reason"]]
    return own.union(*found)


@dataclass(frozen=True)
class Measured:
    """What the cases gave."""

    run: int
    good: int
    wrong: tuple[str, ...]
    processes: int
    cautioned: int
    screen: tuple[int, ...]

    @property
    def mean_on_screen(self) -> float:
        """How many cautions stand on the first screen, on average."""
        return sum(self.screen) / max(len(self.screen), 1)


def measure(
    path: Path,
    only: str | None = None,
    message: Callable[[Case, Advice, bool], None] | None = None,
) -> Measured:
    """Return the figures over all usable cases of a file."""
    catalog = load_catalog()
    run, good, wrong, said, screen = 0, 0, [], [], []
    for line in path.read_text(encoding="utf-8").splitlines():
        case = json.loads(line)
        if not case["usable"] or (only and case["id"] != only):
            continue
        advice = advise(requirement_of(case, catalog), catalog)
        hit = accepted(case, advice, catalog)
        bad = [f"{case['id']}: {text}" for text in refused(case, advice, catalog)]
        run, good, wrong = run + 1, good + hit, wrong + bad
        said += warned(case, advice, catalog)
        screen.append(sum(item.first_screen for item in cautions_shown(advice)))
        if message is not None:
            message(case, advice, hit and not bad)
    return Measured(run, good, tuple(wrong), len(said), sum(said), tuple(screen))


def main() -> int:
    """Run all usable cases and print the figures."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("cases", type=Path)
    parser.add_argument("--show", action="store_true", help="Print every case.")
    parser.add_argument("--only", help="One case id.")
    given = parser.parse_args()

    def message(case: Case, advice: Advice, well: bool) -> None:
        if given.show or not well:
            show(case, advice, hit=well)

    found = measure(given.cases, given.only, message)
    sys.stdout.write(
        f"{found.run} cases; acceptable among the first three in {found.good} "
        f"({100 * found.good / max(found.run, 1):.0f} %); refused options recommended: "
        f"{len(found.wrong)}; refused ways of working with their caution: {found.cautioned} of "
        f"{found.processes}; cautions on the first screen: {found.mean_on_screen:.1f} on "
        f"average, {max(found.screen, default=0)} at most\n"
    )
    sys.stdout.write("".join(f"  {text}\n" for text in found.wrong))
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
