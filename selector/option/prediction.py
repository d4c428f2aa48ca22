"""The prediction of one option over the samples: hardness, depth, snap, cracks, movement, cost.

It only assembles: every number comes from a physics function, a catalogue value or the price
list, and the record says which.
"""

import math
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from selector.duty.wear import has_edge
from selector.figure import Figure, Provenance, figure, median
from selector.hardening.as_quenched import AsQuenched
from selector.hardening.bath_response import POSITIONS
from selector.job.demand import Demand
from selector.job.process import TEMPER_ERROR
from selector.job.sold import is_made_for
from selector.job.treatment import Temper, Treatment
from selector.mechanics.toughness import snap_likelihood
from selector.option.cost import Bill, Mishaps, bill, order_of
from selector.option.cracking import CrackSample
from selector.option.layer import LayerRun, layer_run
from selector.option.local_hardness import hard_ends_mm
from selector.option.movement import Movement
from selector.option.preparation import Prepared
from selector.option.skin import Skin, atmosphere, skin
from selector.option.zone import ZoneHardness, working_radius_mm
from selector.option.zone_hardness import zone_hardness

Floats = NDArray[np.float64]
TOUGHNESS = {
    "very low": "low",
    "low": "low",
    "medium": "medium",
    "high": "high",
    "very high": "very-high",
}
# Of a case of 0.8 % carbon tempered low, as of the tool steels of that carbon. Estimate.
CASE_TOUGHNESS = "medium"


# What is sold for such a part is as hard as its makers found right: near its limit and no more.
# Estimate. [HRC]
MADE_FOR_MARGIN_HRC = 2.0


@dataclass(frozen=True, slots=True, eq=False)
class Prediction:
    """One option over the samples. Hardness in HRC, carried on below 20; shape (samples,).

    `fresh` is the surface of the leading section as quenched, None of no quench.
    """

    treatment: Treatment
    temper: Temper
    surface_hrc: Floats
    core_hrc: Floats
    shank_hrc: Floats
    depth_mm: Floats
    section_hrc: Floats
    snapped: Floats
    snap_margin_hrc: Floats
    crack: CrackSample
    movement: Movement
    bill: Bill
    radius_mm: float
    layer: LayerRun | None
    skin: Skin | None
    hard_ends_mm: tuple[float, ...]
    fresh: AsQuenched | None = None
    provenance: dict[str, Provenance] = field(default_factory=dict)

    @property
    def hard_through(self) -> bool:
        """Whether the working zone is hard to its centre, at the middle of the samples."""
        return median(self.depth_mm) >= 0.98 * self.radius_mm

    def figures(self) -> dict[str, Figure]:
        """Return the hardness and depth figures with their provenance."""
        values = {
            "surface": self.surface_hrc,
            "core": self.core_hrc,
            "shank": self.shank_hrc,
            "depth_mm": self.depth_mm,
        }
        return {name: figure(value, self.provenance[name]) for name, value in values.items()}


def predict(
    ready: Prepared, temper: Temper, hardness: ZoneHardness | None = None
) -> Prediction:
    """Return the prediction of one option, from its hardness where that is known already."""
    job = ready.job
    treatment = ready.treatment
    found = zone_hardness(ready, temper) if hardness is None else hardness
    layer = layer_run(job, treatment)
    chance, margin = _snap(ready, temper, found)
    inputs: dict[str, float | str] = {
        "steel": treatment.steel.name,
        "temper": temper.label,
        "target_c": ready.heat.target_c if ready.heat else "none",
    }

    if layer is not None:
        inputs["layer"] = f"{layer.medium}, {layer.words}"

    def told(unit: str) -> Provenance:
        return Provenance(unit, found.relation, found.source, inputs, found.validity)

    return Prediction(
        treatment=treatment,
        temper=temper,
        surface_hrc=found.surface,
        core_hrc=found.core,
        shank_hrc=found.shank,
        depth_mm=found.depth_mm,
        section_hrc=found.sections,
        snapped=chance,
        snap_margin_hrc=margin,
        crack=ready.crack,
        movement=ready.movement,
        bill=bill(
            treatment,
            temper,
            order_of(job),
            mishaps(ready, found.surface, job.leading),
            layer.hours if layer else 0.0,
            wrapped=atmosphere(treatment, job.asked.workshop) == "pack",
        ),
        radius_mm=working_radius_mm(job),
        layer=layer,
        skin=skin(job, ready.alike),
        hard_ends_mm=hard_ends_mm(ready) if treatment.route.extent == "local" else (),
        fresh=ready.fresh and ready.fresh.only([job.lead_section * len(POSITIONS)]),
        provenance={
            "surface": told("HRC"),
            "core": told("HRC"),
            "shank": told("HRC"),
            "depth_mm": told("mm"),
        },
    )


def mishaps(ready: Prepared, surface_hrc: Floats, lead: Demand) -> Mishaps:
    """Return what does not go straight through: cracks, bends, tempers too hard or too soft."""
    move = ready.movement
    low = -np.inf if lead.floor_hrc is None else lead.floor_hrc
    high = np.inf if lead.ceiling_hrc is None else lead.ceiling_hrc
    heated = ready.treatment.route.process != "none"
    return Mishaps(
        crack_rate=ready.crack.rate,
        bent=move.raw_mm > move.permitted_mm,
        too_hard=heated & (surface_hrc > high),
        too_soft=heated & (surface_hrc < low),
    )


def embrittled(treatment: Treatment, temper: Temper) -> bool:
    """Return whether a temper, missed as far as is usual, reaches an embrittlement window."""
    # Bainite has no such window.
    windows = treatment.steel.embrittlement_c
    if not windows or temper.means in {"none", "salt"}:
        return False
    misread = TEMPER_ERROR[temper.means]
    slack = math.hypot(misread.bias_c, misread.scatter_c)
    return any(
        span.low - slack <= temper.temperature_c <= span.high + slack for span in windows
    )


def _snap(ready: Prepared, temper: Temper, found: ZoneHardness) -> tuple[Floats, Floats]:
    """Return whether each sample snaps, and the hardness in hand; NaN where unknown."""
    job = ready.job
    treatment = ready.treatment
    quenched = treatment.hardens
    # A case or a nitrided layer is carried by its core; the core is what snaps. At an edge the
    # case stands alone and chips as a tool steel of its hardness does.
    edge = treatment.route.process == "case" and has_edge(job.leading, job.asked)
    # So is the hard skin of a shaft that is bought ready.
    element = treatment.condition.name == "hard-element"
    shell = quenched or edge or (treatment.route.process == "none" and not element)
    stressed = found.surface if shell else found.core
    drawn_c = temper.temperature_c if temper.means != "none" else float("nan")
    if not quenched:
        drawn_c = 600.0
    notch = float(max(job.notches.bending[i] for i in job.hard))
    load = job.asked.load
    if job.asked.presses and not load.bending and not load.torque:
        # A shoulder or a thread that a press pushes on is in compression.
        notch = 1.0
    answer: Any = snap_likelihood(
        stressed,
        CASE_TOUGHNESS if edge else TOUGHNESS[treatment.steel.toughness],  # type: ignore[arg-type]
        job.asked.load.impact,
        drawn_c,
        min(notch, 2.0),
        embrittled(treatment, temper),
    )
    margin = np.asarray(answer.margin_hrc + answer.sd_margin_hrc * ready.normals["snap"])
    if is_made_for(treatment, job.asked) and job.asked.load.impact != "hammered":
        margin = np.maximum(margin, MADE_FOR_MARGIN_HRC)
    return np.asarray(answer.probability), margin
