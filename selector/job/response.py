"""Rules of screening: whether a steel answers to what a route does, and its carbon suits it."""

from catalog.steel import Steel
from selector.gate import Gate
from selector.job.treatment import Treatment
from selector.requirement import Requirement

# Routes that ask nothing of how a steel hardens.
UNHARDENING = frozenset({"chrome", "anneal", "normalise"})
_NO_FERRITE = frozenset({"austenitic-stainless", "precipitation-hardening", "maraging"})
# Steels that keep austenite when hardened, which a cold step turns. Common practice.
KEEPS_AUSTENITE = frozenset({"air-tool", "oil-tool", "bearing", "martensitic-stainless"})
LEAST_CARBON_TORCH = 0.30
MOST_CARBON_CORE = 0.28


def answers(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to a steel that does not answer to the route."""
    del asked
    steel, process = work.steel, work.route.process
    if steel.kind == "unknown":
        return Gate("response", "unknown", _why_unknown(steel, process))
    if process == "none":
        return None
    if process in UNHARDENING:
        return _soft_heat(steel, process)
    needs = {"case": "case", "nitride": "nitride", "age": "age"}.get(process, "quench")
    if needs not in steel.hardens_by:
        return Gate("response", "fail", _why_not(steel, needs))
    if work.route.cold_c is not None and steel.kind not in KEEPS_AUSTENITE:
        text = f"{steel.name} keeps too little soft austenite for a cold step to turn"
        return Gate("response", "fail", text)
    return None


def _why_unknown(steel: Steel, process: str) -> str:
    """Return what to do with a bar of unknown grade; of cast iron what is known is said."""
    first = "file or test the bar" if process == "none" else "try a coupon of the same bar"
    heat = {"none": None, "case": "case", "nitride": "nitride"}.get(process, "quench")
    known = [limit.why.text for limit in steel.limitation if limit.process == heat]
    # What has a standard is known by name, though not by grade.
    if not steel.designations.en:
        return f"grade unknown: {first} first"
    return known[0] if known else f"{steel.spoken} of unknown grade: {first} first"


def _soft_heat(steel: Steel, process: str) -> Gate | None:
    """Object to a heat that should leave a steel soft and does not."""
    if process == "chrome":
        return None
    if "Pb" in steel.composition_wt_pct:
        return Gate("response", "fail", "lead leaves as fume at such a heat: use it as bought")
    if steel.kind in _NO_FERRITE:
        text = f"{steel.name} has no soft state that such a heat gives"
        return Gate("response", "fail", text)
    if process == "normalise" and steel.hardened and steel.hardened.quench != "water":
        text = (
            "cooling in air hardens it in part and nothing tempers it: anneal it, or harden it"
        )
        return Gate("response", "fail", text)
    return None


def _why_not(steel: Steel, needs: str) -> str:
    """Return the catalogued reason why a steel does not answer, or a plain one."""
    processes = {needs, "any"} | ({"torch"} if needs == "quench" else set())
    for limitation in steel.limitation:
        if limitation.process in processes and limitation.verdict == "no":
            return limitation.why.text
    words = {
        "quench": f"{steel.name} does not harden by heat and quench",
        "case": f"{steel.name} is no case-hardening steel",
        "nitride": f"{steel.name} has no nitride formers or is over-tempered by the heat",
        "age": f"{steel.name} does not age-harden",
    }
    return words[needs]


def limited(asked: Requirement, work: Treatment) -> Gate | None:
    """Object where the catalogue says no to this process for this steel."""
    del asked
    named = {"case": "case", "nitride": "nitride", "age": "age"}
    process = named.get(work.route.process, "quench")
    wanted = {process, "any"} if work.route.process not in {"none", *UNHARDENING} else set()
    if work.by_eye and work.hardens:
        wanted.add("torch")
    for limitation in work.steel.limitation:
        if limitation.process in wanted and limitation.verdict == "no":
            return Gate("response", "fail", limitation.why.text)
    return None


def carbon_fits(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to too little carbon for a quench, and too much for a tough core."""
    del asked
    carbon = work.steel.composition_wt_pct.get("C")
    if carbon is None:
        return None
    stainless = work.steel.kind == "martensitic-stainless"
    if work.hardens and not stainless and carbon.middle < LEAST_CARBON_TORCH:
        text = f"{carbon.middle:.2f} % carbon: needs about 0.35 % or more to harden usefully"
        return Gate("response", "fail", text)
    if work.route.process == "case" and carbon.middle > MOST_CARBON_CORE:
        text = f"{carbon.middle:.2f} % carbon: the core hardens too, no tough core is left"
        return Gate("core", "fail", text)
    return None


def plating_holds(asked: Requirement, work: Treatment) -> Gate | None:
    """Object to hard chromium where it is struck or ends in an edge: it chips."""
    if work.route.process != "chrome":
        return None
    edged = any(feature.kind == "edge" for feature in asked.part.feature)
    if asked.load.impact != "none" or edged:
        return Gate("snap", "fail", "hard chromium chips under blows and at edges")
    return None
