"""Route × workshop × part into the numbers that heat and metallurgy take."""

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from catalog.medium import Medium
from selector.draws import Normals
from selector.heat.operator import reading
from selector.heat.quench import bath_end_c, grossmann_h
from selector.requirement.workshop import Bath, Workshop
from selector.treatment import Temper, Treatment

Floats = NDArray[np.float64]

# A furnace with its own instrument: lasting and changing error. Common practice. [°C]
FURNACE_C = (8.0, 5.0)
TEMPER_C: dict[str, tuple[float, float]] = {
    "oven": (10.0, 6.0),
    "furnace": (6.0, 4.0),
    "plate": (10.0, 10.0),
    "torch": (12.0, 14.0),
    "blaze": (15.0, 15.0),
    "residual": (14.0, 18.0),
    "none": (0.0, 0.0),
}
# Heating rate and time at heat by kind of source, common practice, no source. [°C/s], [s]
RATE_C_PER_S = {"flame": 6.0, "fire": 2.0, "furnace": 0.2, "salt-bath": 3.0, "induction": 100.0}
HOLD_S = {"flame": 90.0, "fire": 180.0, "furnace": 1500.0, "salt-bath": 600.0, "induction": 2.0}
STRUCTURE = {
    "annealed": "ferrite-pearlite",
    "hot-rolled": "ferrite-pearlite",
    "normalised": "normalised",
    "cold-drawn": "ferrite-pearlite",
    "prehard": "quenched and tempered",
    "solution-treated": "quenched and tempered",
}
SPHEROIDISED_ABOVE_WT_PCT = 0.7
HOT_PART_C = 850.0


@dataclass(frozen=True, slots=True, eq=False)
class Heat:
    """One hardening heat: peak over the draws, time at heat, rate, structure, what follows."""

    target_c: float
    peak_c: Floats
    hold_s: float
    rate_c_per_s: float
    structure: str
    medium_class: Literal["water", "oil", "air"] = "oil"


@dataclass(frozen=True, slots=True, eq=False)
class Quench:
    """One quench: Grossmann severity over the draws, shape (draws, 1)."""

    severity: Floats


def reading_error_c(treatment: Treatment, workshop: Workshop) -> tuple[float, float, float]:
    """Return bias, scatter and mean shift of a hardening heat, all standard deviations in °C.

    Parameters
    ----------
    treatment : Treatment
        What is heated, and by what.
    workshop : Workshop
        Instruments, light and skill.

    Returns
    -------
    tuple of float
        Lasting error, error from heat to heat, mean shift. [°C]
    """
    skill = workshop.skill
    if not treatment.by_eye:
        return FURNACE_C[0], FURNACE_C[1], 0.0
    read = reading(workshop.measure, workshop.light)
    return read.bias_c * skill.bias, read.scatter_c * skill.scatter, read.shift_c


def hardening_heat(treatment: Treatment, workshop: Workshop, normals: Normals) -> Heat | None:
    """Return the hardening heat as this workshop would give it.

    Parameters
    ----------
    treatment : Treatment
        What is heated.
    workshop : Workshop
        By whom and with what.
    normals : mapping of str to ndarray
        The shared draws.

    Returns
    -------
    Heat or None
        None where the route does not harden by a quench.
    """
    hardened = treatment.steel.hardened
    if not treatment.hardens or hardened is None:
        return None
    target = hardened.temperature_c.middle
    bias, scatter, shift = reading_error_c(treatment, workshop)
    eye = treatment.by_eye
    lasting = normals["eye_bias" if eye else "furnace_bias"]
    peak = target + shift + bias * lasting + scatter * normals["eye_scatter"]
    kind = treatment.source.kind if treatment.source else "furnace"
    if treatment.route.kind == "induction":
        kind = "induction"
    carbon = treatment.steel.composition_wt_pct.get("C")
    rich = carbon is not None and carbon.middle > SPHEROIDISED_ABOVE_WT_PCT
    structure = STRUCTURE.get(treatment.condition.name, "ferrite-pearlite")
    return Heat(
        target_c=target,
        peak_c=peak[:, None],
        hold_s=HOLD_S.get(kind, 600.0),
        rate_c_per_s=RATE_C_PER_S.get(kind, 1.0),
        structure="spheroidised" if rich and structure == "ferrite-pearlite" else structure,
        medium_class=treatment.medium.severity_class if treatment.medium else "oil",
    )


def quench(medium: Medium, workshop: Workshop, normals: Normals, mass_kg: float) -> Quench:
    """Return the quench in this workshop's bath, as warm as it is and as the part makes it.

    Parameters
    ----------
    medium : Medium
        What it is quenched in.
    workshop : Workshop
        Its baths.
    normals : mapping of str to ndarray
        The shared draws.
    mass_kg : float
        Mass of the hot part. [kg]

    Returns
    -------
    Quench
        Severity over the draws; a bath that is warm, small or still quenches less.
    """
    bath = next((bath for bath in workshop.bath if bath.medium == medium.slug), None)
    agitation = bath.agitation if bath else "moderate"
    spans = medium.severity_per_in
    span = spans.get(agitation) or next(iter(spans.values()))
    spread = 0.5 * np.log(max(span.high / span.low, 1.3))
    middle = np.sqrt(span.low * span.high)
    if bath is not None and medium.severity_class == "water":
        middle *= _warmth(medium, bath, mass_kg)
    severity = middle * np.exp(spread * np.clip(normals["bath_bias"], -2, 2))
    return Quench(severity[:, None])


def _warmth(medium: Medium, bath: Bath, mass_kg: float) -> float:
    """Return how much a water bath loses by being warmer than its medium usually is. [-]."""
    usual = medium.temperature_c.middle
    start = usual if bath.temperature is None else bath.temperature
    end = start
    if bath.volume is not None:
        end = float(bath_end_c(mass_kg, HOT_PART_C, bath.volume, start))
    warm = grossmann_h("water", bath.agitation, 0.5 * (start + end)).severity
    return warm / grossmann_h("water", bath.agitation, usual).severity


def temper_peak_c(temper: Temper, workshop: Workshop, normals: Normals) -> Floats:
    """Return the temperature a temper really reaches, over the draws.

    Parameters
    ----------
    temper : Temper
        What is aimed at.
    workshop : Workshop
        Instruments and skill.
    normals : mapping of str to ndarray
        The shared draws.

    Returns
    -------
    ndarray
        Temperature; shape (draws, 1). [°C]
    """
    bias, scatter = TEMPER_C[temper.means]
    skill = workshop.skill
    lasting = 0.6 if "oven-thermometer" in workshop.measure else 1.0
    error = bias * lasting * skill.bias * normals["temper_bias"]
    error = error + scatter * skill.scatter * normals["temper_scatter"]
    return np.asarray((temper.temperature_c + error)[:, None])
