"""Whether an option cracks in the quench, or snaps and chips in use."""

from dataclasses import replace

import numpy as np

from selector.figure import median
from selector.gate import BREAKING, Gate, judged
from selector.job.treatment import Temper, Treatment
from selector.option.cracking import crack_words
from selector.option.prediction import TOUGHNESS, Prediction, embrittled
from selector.option.temper_choice import SERVICE_MARGIN_C, STRUCK_LEAST_TEMPER_C
from selector.requirement import Requirement
from selector.requirement.load import Load

# Up to this margin a part is near the hardness at which it chips. One temper colour. [HRC]
NEAR_HRC = 4


def breaking_gates(prediction: Prediction, load: Load) -> list[Gate]:
    """Return the gates of quench cracks, where it is quenched, and of snapping in use."""
    snap, risk = _snap_gate(prediction, load.impact), prediction.crack.risk
    if risk is None:
        return [snap]
    text = f"risk of a quench crack {crack_words(risk)}"
    return [judged("cracking", ~prediction.crack.cracked, text, BREAKING), snap]


def snap_words(margin_hrc: float) -> str:
    """Return how near it is to chipping: "near its limit: 3 HRC harder and it chips"."""
    margin = round(margin_hrc)
    if margin > NEAR_HRC:
        return f"{margin} HRC below where it chips"
    if margin > 0:
        return f"near its limit: {margin} HRC harder and it chips"
    if margin == 0:
        return "at its limit: any harder and it chips"
    return f"{-margin} HRC too hard for this use: it chips"


def _snap_gate(prediction: Prediction, impact: str) -> Gate:
    """Judge snapping and chipping; unknown toughness is no pass."""
    margin = prediction.snap_margin_hrc
    if np.isnan(margin).any():
        text = "as quenched or tempered below 150 °C: toughness unknown"
        if impact == "none":
            return Gate("snap", "marginal", f"{text}; let nothing strike it")
        if impact == "light" and prediction.temper.means != "none":
            return Gate("snap", "marginal", f"{text}; it bears no more than light taps")
        return Gate("snap", "fail", f"{text}, and it is struck: it chips or snaps")
    temper, brittle = prediction.temper, embrittled(prediction.treatment, prediction.temper)
    amiss = _amiss_under_blows(prediction.treatment, temper) if impact == "hammered" else None
    if amiss is not None:
        return Gate("snap", "fail", amiss)
    lowered = ", lowered by a temper in its embrittlement window" if brittle else ""
    text = (
        f"{snap_words(median(margin))} ({'no' if impact == 'none' else impact} impact, "
        f"{TOUGHNESS[prediction.treatment.steel.toughness]} toughness{lowered})"
    )
    # The likelihood is estimated: the share counts where a snap is less likely than not.
    gate = judged("snap", margin > 0.0, text, BREAKING)
    if brittle and gate.verdict == "pass":
        warned = f"{temper.temperature_c:.0f} °C is where this steel turns brittle; {text}"
        return replace(gate, verdict="marginal", text=warned)
    return gate


def _amiss_under_blows(work: Treatment, temper: Temper) -> str | None:
    """Return what is amiss with a temper of what is struck, if anything."""
    if not _is_hard(work):
        return None
    heat = f"{temper.temperature_c:.0f} °C"
    if embrittled(work, temper):
        text = f"{heat} is where this steel turns brittle: blows snap it"
        return f"{text}, temper it cooler or hotter"
    if temper.temperature_c >= STRUCK_LEAST_TEMPER_C:
        return None
    if temper.means == "none":
        return "a struck end not tempered: it chips, temper it hotter"
    return f"a struck end tempered at {heat} only: straw chips, temper it hotter"


def _is_hard(work: Treatment) -> bool:
    """Return whether a treatment leaves martensite, through or in a case."""
    return work.hardens or work.route.process == "case"


def is_bound_to_fail(treatment: Treatment, temper: Temper, asked: Requirement) -> bool:
    """Return whether a temper fails whatever the sample: brittle under blows, or too cool."""
    if not _is_hard(treatment):
        return False
    impact, service = asked.load.impact, asked.limit.service_temperature
    brittle = impact != "none" and temper.means == "none"
    if impact == "hammered":
        brittle = _amiss_under_blows(treatment, temper) is not None
    hot = service is not None and temper.temperature_c - service < SERVICE_MARGIN_C
    return brittle or hot
