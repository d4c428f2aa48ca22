"""Whether a hardened part is still hard enough after its hours at the heat of service."""

import numpy as np
from numpy.typing import NDArray

from selector.decision.hardness_gate import floor_hrc
from selector.decision.service_gate import service_gate
from selector.figure import median
from selector.gate import Gate, judged, worst
from selector.job.job import Job, per_job
from selector.job.treatment import Temper, Treatment
from selector.option.prediction import Prediction
from selector.option.preparation import prepare
from selector.option.zone_hardness import zone_hardness
from selector.wording import shown

Bools = NDArray[np.bool_]
Floats = NDArray[np.float64]
# How long a part is hot that stays in the heat: some ten thousand shots of a die, a working
# month of a shaft. Ten times as long does what 30 to 40 °C more do. Estimate. [h]
HOT_H = 100.0


def hot_gates(prediction: Prediction, job: Job) -> list[Gate]:
    """Judge the heat of service: by the last heat of the part, and by what its hours leave.

    Parameters
    ----------
    prediction : Prediction
        The option, as it comes from its temper.
    job : Job
        Part and workshop.

    Returns
    -------
    list of Gate
        The worse of the two, where there is any.
    """
    asked = job.asked
    service_c, struck = asked.limit.service_temperature, asked.load.impact == "hammered"
    last = service_gate(prediction.treatment, prediction.temper, service_c, struck=struck)
    hours = softening_gate(prediction, job)
    if last is None or hours is None:
        return [gate for gate in (last, hours) if gate is not None]
    return [hours if worst([last, hours]) == hours.verdict != last.verdict else last]


def softening_gate(prediction: Prediction, job: Job) -> Gate | None:
    """Judge what the hours of service leave of the hardness.

    Parameters
    ----------
    prediction : Prediction
        The option, as it comes from its temper.
    job : Job
        Part and workshop.

    Returns
    -------
    Gate or None
        None where the service takes nothing off, or nothing is asked.
    """
    left = _left_hrc(prediction, job)
    floor = floor_hrc(prediction.treatment, job.leading)
    if left is None or floor is None:
        return None
    hard = prediction.surface_hrc >= floor
    if np.all(left[hard] >= floor):
        return None
    text = (
        f"{HOT_H:.0f} h at {job.asked.limit.service_temperature:.0f} °C leave it at "
        f"{shown(median(left[hard]))}; {shown(floor)} is the least"
    )
    # What comes too soft from its temper is judged as that.
    return judged("service_heat", left[hard] >= floor, text)


def keeps_hard(prediction: Prediction, job: Job) -> Bools | None:
    """Return which outcomes the hours of service leave hard; None where they take nothing."""
    left, floor = _left_hrc(prediction, job), floor_hrc(prediction.treatment, job.leading)
    if left is None or floor is None:
        return None
    return np.asarray((left >= floor) | (prediction.surface_hrc < floor))


def _left_hrc(prediction: Prediction, job: Job) -> Floats | None:
    """Return the hardness after the hours of service; None where they take nothing. [HRC]."""
    work, service_c = prediction.treatment, job.asked.limit.service_temperature
    # What is struck hot touches its work for a blow at a time and is cooled between.
    if service_c is None or job.asked.load.impact == "hammered":
        return None
    if not work.hardens or prediction.temper.means in {"none", "salt"}:
        return None
    soaked: Floats = _soaked_hrc(job, work, service_c)
    return np.minimum(prediction.surface_hrc, soaked)


@per_job
def _soaked_hrc(job: Job, work: Treatment, service_c: float) -> Floats:
    """Return the surface had the hours of service been its temper, whatever that was. [HRC]."""
    soak = Temper("furnace", service_c, 3600.0 * HOT_H)
    return zone_hardness(prepare(work, job), soak).surface
