"""The crack risk of one treatment of this part, over the sample."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector.figure import column_medians
from selector.hardening.composition import Composition
from selector.hazards.cracking import (
    CrackRisk,
    CrackShape,
    CrackSteel,
    crack_equivalent_wt_pct,
    crack_risk,
)
from selector.job.geometry import section_ratio
from selector.job.treatment import Treatment
from selector.kept import per_record
from selector.metallurgy.transformation import MOST_DISSOLVED_WT_PCT, martensite_start
from selector.requirement.part import Part
from selector.sampling import Normals, probability

Floats = NDArray[np.float64]
# Features of the requirement that the crack model counts.
_COUNTED = ("cross-hole", "sharp-corner", "keyway", "slot", "thread", "teeth", "edge")
# Inside corners want 1.5 to 3 mm for oil; at a third of the least they count as sharp. Tool and
# die design rules for heat treatment in handbooks (from memory). [mm]
SHARP_FILLET_MM = 0.5
CRACK_WORDS = {
    "medium": "the bath is too fierce for this steel",
    "carbon": "its carbon",
    "martensite": "it can crack after it is out of the bath",
    "section": "thick beside thin",
    "surface": "black skin left on",
    "overheated": "coarse grain",
}


@dataclass(frozen=True, slots=True, eq=False)
class CrackSample:
    """Rate over the sample, which parts crack, and the class with its reasons."""

    rate: Floats
    cracked: NDArray[np.bool_]
    risk: CrackRisk | None


@per_record(512)
def _share(normal: Floats) -> Floats:
    """Return the share of all samples below each; those of a steel are read but once. [-]."""
    return probability(normal)


def _has_sharp_shoulder(part: Part) -> bool:
    """Return whether a step has a stated fillet that is too small for a quench."""
    return any(
        section.fillet is not None and section.fillet < SHARP_FILLET_MM
        for section in part.section
    )


def crack_steel(steel: Steel, composition: Composition) -> CrackSteel | None:
    """Return what of a steel decides how it cracks, at its median; None of one not quenched."""
    if steel.hardened is None:
        return None
    centre = {name: column_medians(content)[0] for name, content in composition.items()}
    carbon = min(float(centre.get("C", 0.0)), MOST_DISSOLVED_WT_PCT)
    return CrackSteel(
        carbon_wt_pct=carbon,
        ms_c=float(martensite_start({**centre, "C": carbon})),
        quench_class=steel.hardened.quench,
        equivalent_wt_pct=float(crack_equivalent_wt_pct(centre)),
    )


def crack_sample(
    treatment: Treatment,
    part: Part,
    steel: CrackSteel | None,
    normals: Normals,
    *,
    thickness_mm: float,
    skin: bool,
) -> CrackSample:
    """Return how often this part cracks in this quench; thickness is that of what is hot."""
    # Rates are log-uniform in the band of the class; zero where nothing is quenched.
    medium = treatment.medium
    count = len(normals["crack"])
    quenches = treatment.hardens or treatment.route.process == "case"
    if steel is None or medium is None or not quenches:
        return CrackSample(np.zeros(count), np.zeros(count, dtype=bool), None)
    local = treatment.route.extent == "local"
    kinds = [f.kind for f in part.feature if f.kind in _COUNTED]
    if not local and "sharp-corner" not in kinds and _has_sharp_shoulder(part):
        kinds.append("sharp-corner")
    shape = CrackShape(
        section_ratio=1.0 if local else section_ratio(part),
        features=tuple(kinds),  # type: ignore[arg-type]
        surface="hot-rolled" if treatment.condition.surface == "black" else "machined",
        thickness_mm=thickness_mm,
    )
    kind = "oil" if medium.kind in {"hot-salt", "hot-oil"} else medium.kind
    if skin:
        # Behind a thin hot layer lies cold steel: water is then no harsher than polymer.
        kind = "polymer"
    risk = crack_risk(steel, kind, shape)
    low, high = np.log(risk.low_fraction), np.log(risk.high_fraction)
    rate = np.exp(low + (high - low) * _share(normals["crack_rate"]))
    return CrackSample(rate, _share(normals["crack"]) < rate, risk)


def crack_words(risk: CrackRisk) -> str:
    """Return a crack risk in words: "some, 2 to 10 in 100 (its carbon)"."""
    names = [r.name for r in risk.reasons[:2]]
    reasons = "; ".join(CRACK_WORDS.get(name, name.replace("-", " ")) for name in names)
    low, high = round(100.0 * risk.low_fraction), round(100.0 * risk.high_fraction)
    band = f"{low} to {high}" if low else f"under {high}"
    text = f"{risk.crack_class}, {band} in 100"
    return text + (f" ({reasons})" if reasons and risk.crack_class != "low" else "")
