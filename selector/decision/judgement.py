"""One predicted option judged: its gates, and its value on each criterion."""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from selector.decision.bath_gate import bath_gates
from selector.decision.duty_gate import contact_factor, duty_gates
from selector.decision.heating_gate import heating_gates
from selector.duty.strength import has_load, least_factor
from selector.duty.wear import edge_loss_hrc, life
from selector.figure import median
from selector.gate import BREAKING, Gate, judged, worst
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.treatment import Temper, Treatment
from selector.option.cracking import crack_words
from selector.option.prediction import TOUGHNESS, Prediction, embrittled
from selector.option.temper_choice import LEAST_SAFE_C, STRUCK_LEAST_TEMPER_C
from selector.requirement.priority import CRITERIA
from selector.wording import shown

Floats = NDArray[np.float64]
# How well a check reads hardness, as sd; a file only tells soft from hard. [HRC]
CHECK_SD_HRC = {"tester": 1.0, "rebound": 2.0, "hardness-files": 2.5}
# A temper must stand this far above the service temperature. Common practice. [°C]
SERVICE_MARGIN_C = 30.0
# Drawing one zone further by torch without spoiling the next comes off in three of four.
# Estimate; as a bound on a standard normal.
REDRAW_NORMAL = 0.674


@dataclass(frozen=True, slots=True, eq=False)
class Judged:
    """An option with its gates and its criteria; shape of values (draws, criteria)."""

    prediction: Prediction
    gates: tuple[Gate, ...]
    values: Floats
    passing: NDArray[np.bool_]
    corrected_hrc: Floats
    failing: Floats

    @property
    def verdict(self) -> str:
        """The verdict of the deciding gate."""
        return worst(self.gates)

    @property
    def passing_all(self) -> float:
        """The share of draws that pass every drawn demand of the leading zone at once."""
        return float(np.mean(self.passing))

    @property
    def failing_all(self) -> float:
        """The chance that it yields, tires or snaps in service; NaN where that is unknown."""
        return float(np.mean(self.failing))


def corrected(prediction: Prediction, demand: Demand, job: Job) -> Floats:
    """Return the surface hardness after check and redraw.

    A part found too hard is drawn again to the middle of its window, as well as the check
    reads. A part found too soft stays what it is; hardening it again is a cost, not a cure.

    Parameters
    ----------
    prediction : Prediction
        The option.
    demand : Demand
        What its zone asks.
    job : Job
        The workshop's checks.

    Returns
    -------
    ndarray
        Hardness; shape (draws,). [HRC]
    """
    hrc = prediction.surface_hrc
    checks = [CHECK_SD_HRC[c] for c in job.asked.workshop.check if c in CHECK_SD_HRC]
    if demand.high_hrc is None or not checks or prediction.temper.means == "none":
        return hrc
    error = min(checks) * job.shared()["check_reading"]
    middle = 0.5 * (demand.high_hrc + (demand.low_hrc or demand.high_hrc - 4.0))
    too_hard = hrc + error > demand.high_hrc
    return np.asarray(np.where(too_hard, np.minimum(hrc, middle - error), hrc))


def _hard_enough(hrc: Floats, prediction: Prediction, demand: Demand) -> list[Gate]:
    """Judge floor, ceiling and depth of the leading zone."""
    gates = []
    middle = median(hrc)
    if demand.floor_hrc is not None:
        text = f"needs {shown(demand.floor_hrc)} or more; predicted {shown(middle)}"
        gates.append(judged("hard_enough", hrc >= demand.floor_hrc, text))
    if demand.ceiling_hrc is not None:
        text = f"must not pass {shown(demand.ceiling_hrc)}; predicted {shown(middle)}"
        gates.append(judged("not_too_hard", hrc <= demand.ceiling_hrc, text))
    if demand.depth_mm > 0 and demand.floor_hrc is not None:
        depth = prediction.depth_mm
        text = f"needs {demand.depth_mm:g} mm deep; predicted {median(depth):.1f} mm"
        gates.append(judged("depth", depth >= demand.depth_mm, text))
    return gates


def _breaking(prediction: Prediction, job: Job) -> list[Gate]:
    """Judge cracking in the quench and snapping in service."""
    gates = []
    risk = prediction.crack.risk
    if risk is not None:
        text = f"risk of a quench crack {crack_words(risk)}"
        gates.append(judged("cracking", ~prediction.crack.cracked, text, BREAKING))
    return [*gates, _snap_gate(prediction, job)]


def _snap_gate(prediction: Prediction, job: Job) -> Gate:
    """Judge snapping and chipping, unknown toughness told from known."""
    impact = job.asked.load.impact
    margin = prediction.snap_margin_hrc
    if np.isnan(margin).any():
        text = "as quenched or drawn below 180 °C: toughness unknown"
        if impact == "none":
            return Gate("snap", "marginal", f"{text}; let nothing strike it")
        return Gate("snap", "fail", f"{text}, and it is struck: it chips or snaps")
    temper = prediction.temper
    quenched = prediction.treatment.hardens and temper.means != "none"
    if impact == "hammered" and quenched and temper.temperature_c < STRUCK_LEAST_TEMPER_C:
        text = f"a struck end drawn to {temper.temperature_c:.0f} °C only: straw chips, draw on"
        return Gate("snap", "fail", text)
    brittle = embrittled(prediction.treatment, temper)
    lowered = ", lowered by a temper in its embrittlement window" if brittle else ""
    text = (
        f"{median(margin):.0f} HRC in hand before it snaps ({impact} impact, "
        f"{TOUGHNESS[prediction.treatment.steel.toughness]} toughness{lowered})"
    )
    # The likelihood is estimated, so each draw asks whether a snap is less likely than not.
    gate = judged("snap", margin > 0.0, text, BREAKING)
    if brittle and gate.verdict == "pass":
        warned = f"{temper.temperature_c:.0f} °C is where this steel turns brittle; {text}"
        return replace(gate, verdict="marginal", text=warned)
    return gate


def fails_undrawn(treatment: Treatment, temper: Temper, job: Job) -> bool:
    """Return whether a temper is bound to fail a gate, whatever the draws say.

    Parameters
    ----------
    treatment : Treatment
        What is tempered.
    temper : Temper
        How it is drawn.
    job : Job
        What is asked.

    Returns
    -------
    bool
        For a quenched part that is struck, or works too hot for the temper.
    """
    if not treatment.hardens:
        return False
    impact, service = job.asked.load.impact, job.asked.limit.service_temperature
    least = {"none": 0.0, "hammered": STRUCK_LEAST_TEMPER_C}.get(impact, LEAST_SAFE_C)
    brittle = impact != "none" and (temper.means == "none" or temper.temperature_c < least)
    hot = service is not None and temper.temperature_c - service < SERVICE_MARGIN_C
    return brittle or hot


def _bearing(prediction: Prediction, job: Job, factor: Floats) -> list[Gate]:
    """Judge strength and movement."""
    gates = []
    if has_load(job):
        text = f"least factor of strength {median(factor):.2f}"
        gates.append(judged("strength", factor >= 1.0, text))
    move = prediction.movement
    if move.stated:
        text = f"moves about {median(move.moved_mm):.2f} mm; {move.permitted_mm:.2f} permitted"
        gates.append(judged("movement", move.moved_mm <= move.permitted_mm, text))
    return gates


def _surroundings(prediction: Prediction, job: Job) -> list[Gate]:
    """Judge corrosion, service heat, budget and days."""
    gates, limit = [], job.asked.limit
    steel = prediction.treatment.steel
    if limit.corrosion == "severe":
        good = steel.corrosion == "good"
        text = f"corrosion resistance of {steel.name}: {steel.corrosion}"
        gates.append(Gate("corrosion", "pass" if good else "fail", text))
    if limit.service_temperature is not None and prediction.treatment.hardens:
        spare = prediction.temper.temperature_c - limit.service_temperature
        text = f"temper stands {spare:.0f} °C above service; {SERVICE_MARGIN_C:.0f} wanted"
        gates.append(
            Gate("service_heat", "pass" if spare >= SERVICE_MARGIN_C else "fail", text)
        )
    if limit.budget is not None:
        text = f"costs about {median(prediction.bill.cost):.0f} {prediction.bill.currency}"
        gates.append(judged("budget", prediction.bill.cost <= limit.budget, text))
    if limit.days is not None:
        late = prediction.bill.days > limit.days
        text = f"takes {prediction.bill.days:g} days; {limit.days:g} allowed"
        gates.append(Gate("days", "fail" if late else "pass", text))
    return gates


def _window_distance(hrc: Floats, demand: Demand) -> Floats:
    """Return how far outside the window the hardness lies. [HRC]."""
    below = 0.0 if demand.low_hrc is None else np.maximum(demand.low_hrc - hrc, 0.0)
    above = 0.0 if demand.high_hrc is None else np.maximum(hrc - demand.high_hrc, 0.0)
    return np.asarray(below + above + np.zeros_like(hrc))


def _wearing(prediction: Prediction, hrc: Floats, demand: Demand, job: Job) -> Floats:
    """Return the life over the life wanted where one is, else how far off the window. [HRC]."""
    wanted = job.asked.zone[demand.zone].life_ratio
    work, normals = prediction.treatment, job.shared()
    if wanted is not None:
        return life(work, hrc, demand, job.asked, normals) / wanted
    return _window_distance(hrc, demand) + edge_loss_hrc(work, demand, job.asked, normals)


def judge(prediction: Prediction, sensitivity_hrc: float, job: Job) -> Judged:
    """Return an option with its gates and criteria.

    Parameters
    ----------
    prediction : Prediction
        The option over the draws.
    sensitivity_hrc : float
        Change of hardness for a colour misread by 25 °C. [HRC]
    job : Job
        What is asked.

    Returns
    -------
    Judged
        Gates, values and the draws that pass all drawn gates at once.
    """
    demand = job.leading
    hrc = corrected(prediction, demand, job)
    factor = least_factor(prediction.section_hrc, job)
    pressed = contact_factor(hrc, job)
    gates = [
        *heating_gates(prediction.treatment, job),
        *bath_gates(prediction.treatment, job),
        *_hard_enough(hrc, prediction, demand),
        *_other_zones(prediction, job),
        *_breaking(prediction, job),
        *_bearing(prediction, job, factor),
        *duty_gates(prediction, hrc, job),
        *_surroundings(prediction, job),
    ]
    move = prediction.movement
    count = len(hrc)
    margin = np.nan_to_num(prediction.snap_margin_hrc, nan=0.0)
    by_name: dict[str, Any] = {
        "hardness": _wearing(prediction, hrc, demand, job),
        "strength": np.minimum(factor, pressed),
        "snap_margin": margin,
        "movement": move.moved_mm / move.permitted_mm,
        "cost": prediction.bill.cost,
        "operator_sensitivity": np.full(count, sensitivity_hrc),
        "days": np.full(count, prediction.bill.days),
    }
    values = np.stack([by_name[name] for name in CRITERIA], axis=1)
    return Judged(
        prediction,
        tuple(gates),
        values,
        _together(hrc, prediction, job, np.minimum(factor, pressed)),
        hrc,
        failing=1 - (np.minimum(factor, pressed) >= 1.0) * (1 - prediction.snapped),
    )


def _other_zones(prediction: Prediction, job: Job) -> list[Gate]:
    """Judge the zones beside the leading one against their own floor and ceiling."""
    gates = []
    for demand in job.demands:
        if demand.zone == job.leading.zone:
            continue
        hrc = prediction.section_hrc[:, list(demand.sections)].min(axis=1)
        name = f"zone {demand.zone + 1}"
        middle = median(hrc)
        if demand.floor_hrc is not None:
            text = f"{name} needs {shown(demand.floor_hrc)}; predicted {shown(middle)}"
            gates.append(judged("hard_enough", hrc >= demand.floor_hrc, text))
        if demand.ceiling_hrc is not None:
            text = (
                f"{name} must not pass {shown(demand.ceiling_hrc)}; predicted {shown(middle)}"
            )
            gate = judged("not_too_hard", hrc <= demand.ceiling_hrc, text)
            gates.append(_redrawn(gate, job))
    return gates


def _has_flame(job: Job) -> bool:
    """Return whether the workshop can draw one zone further than another."""
    return any(source.kind in {"flame", "fire"} for source in job.bench.sources)


def _redrawn(gate: Gate, job: Job) -> Gate:
    """Return a too-hard zone as narrow pass where a flame can draw it further on its own."""
    if gate.verdict == "fail" and _has_flame(job):
        return Gate(gate.name, "marginal", f"{gate.text}: draw it further by torch", gate.share)
    return gate


def _together(
    hrc: Floats, prediction: Prediction, job: Job, factor: Floats
) -> NDArray[np.bool_]:
    """Return which draws pass every drawn demand of the leading zone at once."""
    demand, move = job.leading, prediction.movement
    good = ~prediction.crack.cracked & (factor >= 1.0)
    good &= np.nan_to_num(prediction.snap_margin_hrc, nan=1.0) > 0
    if demand.floor_hrc is not None:
        good &= (hrc >= demand.floor_hrc) & (prediction.depth_mm >= demand.depth_mm)
    if demand.ceiling_hrc is not None:
        good &= hrc <= demand.ceiling_hrc
    if move.stated:
        good &= move.moved_mm <= move.permitted_mm
    if job.asked.limit.budget is not None:
        good &= prediction.bill.cost <= job.asked.limit.budget
    return np.asarray(good & _others_met(prediction, job))


def _others_met(prediction: Prediction, job: Job) -> NDArray[np.bool_]:
    """Return which draws keep the other zones in bounds, drawing one further where it must."""
    met = np.ones(len(prediction.surface_hrc), dtype=bool)
    redrawn = job.shared()["rework"] < REDRAW_NORMAL
    for demand in job.demands:
        if demand.zone == job.leading.zone:
            continue
        hrc = prediction.section_hrc[:, list(demand.sections)]
        if demand.floor_hrc is not None:
            met &= hrc.min(axis=1) >= demand.floor_hrc
        if demand.ceiling_hrc is not None:
            met &= (hrc.max(axis=1) <= demand.ceiling_hrc) | (redrawn & _has_flame(job))
    return met
