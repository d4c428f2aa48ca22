"""Service in the cold: whether a steel is used below its usual transition to brittle.

Energies of impact are compared with nothing here: a transition temperature is that of Charpy
V-notch alone, and where none is known the answer is that it is not known.
"""

from typing import Literal

from selector.figure import median
from selector.gate import Gate
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.mechanics.cold import TRANSITION_SD_C, pearlitic_transition_c
from selector.option.prediction import Prediction

# Frost; warmer service is what published energies at room temperature stand for. [°C]
COLD_C = 0.0
# Catalogued transitions are of hardened and tempered bar no harder than this. [HRC]
TOUGH_HRC = 38.0
# Cold drawing raises the transition by about this much. Common practice, no source. [°C]
_DRAWN_C = 25.0
_PEARLITIC = frozenset({"annealed", "hot-rolled", "normalised", "cold-drawn"})
_PLAIN = frozenset({"mild", "free-cutting", "medium-carbon"})


def transition_c(treatment: Treatment, hardness_hrc: float) -> tuple[float, float] | None:
    """Return the range in which a steel usually turns brittle.

    Parameters
    ----------
    treatment : Treatment
        Steel, condition and route.
    hardness_hrc : float
        Of its surface. [HRC]

    Returns
    -------
    tuple of float or None
        Charpy V-notch; None where none is known for this state. [°C]
    """
    steel, process = treatment.steel, treatment.route.process
    known = steel.temperature_c.get("transition")
    if steel.kind == "austenitic-stainless":
        return (known.low, known.high) if known is not None else None
    pearlitic = treatment.condition.name in _PEARLITIC and process in {"none", "normalise"}
    if pearlitic:
        return _of_pearlite(treatment)
    if known is None or hardness_hrc > TOUGH_HRC or process in {"case", "nitride"}:
        return None
    return known.low, known.high


def _of_pearlite(treatment: Treatment) -> tuple[float, float] | None:
    """Return the range of a plain carbon steel as rolled, normalised or drawn."""
    steel = treatment.steel
    carbon = steel.composition_wt_pct.get("C")
    if steel.kind not in _PLAIN or carbon is None:
        return None
    middle = float(pearlitic_transition_c(carbon.middle))
    if treatment.condition.name == "cold-drawn" and treatment.route.process == "none":
        middle += _DRAWN_C
    return middle - TRANSITION_SD_C, middle + TRANSITION_SD_C


def cold_gate(prediction: Prediction, job: Job) -> Gate | None:
    """Judge service in frost against the steel's usual transition.

    Struck below it, a part fails; not struck, or where nothing is known, it comes with a
    caution.

    Parameters
    ----------
    prediction : Prediction
        The option.
    job : Job
        What is asked.

    Returns
    -------
    Gate or None
        None without a stated service temperature below 0 °C.
    """
    service = job.asked.limit.service_temperature
    if service is None or service >= COLD_C:
        return None
    steel = prediction.treatment.steel.name
    hardest = max(median(prediction.surface_hrc), median(prediction.core_hrc))
    found = transition_c(prediction.treatment, hardest)
    if found is None:
        text = (
            f"how tough {steel} stays at {service:.0f} °C in this state is not known: warm it "
            "before a blow, or break a test bar cold"
        )
        return Gate("cold", "marginal", text)
    low, high = found
    span = f"{low:.0f} to {high:.0f} °C" if low < high else f"{low:.0f} °C"
    text = f"{steel} usually turns brittle at {span} (Charpy V-notch); service {service:.0f} °C"
    if service >= high:
        return Gate("cold", "pass", text)
    struck = job.asked.load.impact == "hammered" and service < low
    verdict: Literal["fail", "marginal"] = "fail" if struck else "marginal"
    return Gate("cold", verdict, f"{text}: a blow or a notch may break it")
