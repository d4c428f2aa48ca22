"""Service in the cold: whether a steel is used below its usual ductile-brittle transition.

Only transition temperatures of Charpy V-notch tests are compared with the service temperature.
No impact energy is used. Where no transition is known, the gate says so.
"""

from dataclasses import dataclass
from typing import Literal

from selector.gate import Gate
from selector.job.treatment import Treatment
from selector.mechanics.cold import TRANSITION_SD_C, pearlitic_transition_c
from selector.requirement import Requirement

# Below this the part works in frost; above it room-temperature toughness holds. [°C]
COLD_C = 0.0
# Catalogued transitions are of hardened and tempered bar no harder than this. [HRC]
TOUGH_HRC = 38.0
# Cold drawing raises the transition by about this much. Common practice, no source. [°C]
_COLD_DRAWN_C = 25.0
_PEARLITIC = frozenset({"annealed", "hot-rolled", "normalised", "cold-drawn"})
_PLAIN = frozenset({"mild", "free-cutting", "medium-carbon"})


@dataclass(frozen=True, slots=True)
class Transition:
    """The range of temperature in which a steel turns brittle."""

    low_c: float
    high_c: float


def transition(treatment: Treatment, hardness_hrc: float) -> Transition | None:
    """Return where a steel usually turns brittle (Charpy V-notch), None where not known."""
    steel, process = treatment.steel, treatment.route.process
    known = steel.temperature_c.get("transition")
    if steel.kind == "austenitic-stainless":
        return Transition(known.low, known.high) if known is not None else None
    pearlitic = treatment.condition.name in _PEARLITIC and process in {"none", "normalise"}
    if pearlitic:
        return _of_pearlite(treatment)
    if known is None or hardness_hrc > TOUGH_HRC or process in {"case", "nitride"}:
        return None
    return Transition(known.low, known.high)


def _of_pearlite(treatment: Treatment) -> Transition | None:
    """Return the range of a plain carbon steel as rolled, normalised or cold-drawn."""
    steel = treatment.steel
    carbon = steel.composition_wt_pct.get("C")
    if steel.kind not in _PLAIN or carbon is None:
        return None
    middle = float(pearlitic_transition_c(carbon.middle))
    if treatment.condition.name == "cold-drawn" and treatment.route.process == "none":
        middle += _COLD_DRAWN_C
    return Transition(middle - TRANSITION_SD_C, middle + TRANSITION_SD_C)


def cold_gate(treatment: Treatment, hardest_hrc: float, asked: Requirement) -> Gate | None:
    """Judge service in frost against the steel's transition; None where it is warmer."""
    # A part that is struck below it fails. One that is not struck, or of which nothing is
    # known, is marginal.
    service = asked.limit.service_temperature
    if service is None or service >= COLD_C:
        return None
    steel, brittle = treatment.steel.name, transition(treatment, hardest_hrc)
    if brittle is None:
        text = (
            f"how tough {steel} stays at {service:.0f} °C in this state is not known: warm it "
            "before a blow, or break a test bar cold"
        )
        return Gate("cold", "marginal", text)
    low, high = brittle.low_c, brittle.high_c
    span = f"{low:.0f} to {high:.0f} °C" if low < high else f"{low:.0f} °C"
    text = f"{steel} usually turns brittle at {span} (Charpy V-notch); service {service:.0f} °C"
    if service >= high:
        return Gate("cold", "pass", text)
    struck = asked.load.impact == "hammered" and service < low
    verdict: Literal["fail", "marginal"] = "fail" if struck else "marginal"
    return Gate("cold", verdict, f"{text}: a blow or a notch may break it")
