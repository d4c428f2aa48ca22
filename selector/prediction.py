"""The prediction of one option over the draws: hardness, depth, snap, cracks, movement, cost.

It only assembles: every number comes from a physics function, a catalogue value or the price
list, and the record says which.
"""

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from selector import hardness_map
from selector.composition import Composition, drawn, middle
from selector.cost import Bill, bill
from selector.draws import Normals
from selector.figure import Figure, Provenance, figure
from selector.geometry import POSITIONS, as_cooled
from selector.hardness_scale import hrc_from_hv, hv_from_hb, hv_from_hrc
from selector.heat.ruling_section import round_equivalent_mm
from selector.mechanics.toughness import snap_likelihood
from selector.movement import Movement, movement
from selector.process import Heat, Quench, hardening_heat, quench, temper_peak_c
from selector.quench_crack import CrackDraws, crack_draws
from selector.surroundings import Surroundings
from selector.torch_depth import hardened_depth_mm
from selector.treatment import Temper, Treatment

Floats = NDArray[np.float64]
TOUGHNESS = {
    "very low": "low",
    "low": "low",
    "medium": "medium",
    "high": "high",
    "very high": "very-high",
}
# Depth of a flame- or induction-hardened layer: to 0.8 of the required surface hardness in HV
# (ISO 18203); of a carburised case: to 550 HV.
FLAME_LIMIT, CASE_LIMIT_HV = 0.8, 550.0


@dataclass(frozen=True, slots=True, eq=False)
class Prediction:
    """One option over the draws. Hardness in HRC, carried on below 20; shape (draws,)."""

    treatment: Treatment
    temper: Temper
    surface_hrc: Floats
    core_hrc: Floats
    shank_hrc: Floats
    depth_mm: Floats
    section_hrc: Floats
    as_quenched_hrc: Floats
    snapped: Floats
    snap_margin_hrc: Floats
    crack: CrackDraws
    movement: Movement
    bill: Bill
    told: dict[str, Provenance] = field(default_factory=dict)

    def figures(self) -> dict[str, Figure]:
        """Return the hardness and depth figures with their provenance."""
        values = {
            "surface": self.surface_hrc,
            "core": self.core_hrc,
            "shank": self.shank_hrc,
            "depth_mm": self.depth_mm,
        }
        return {name: figure(value, self.told[name]) for name, value in values.items()}


@dataclass(frozen=True, slots=True, eq=False)
class Prepared:
    """A treatment with its quench computed once, ready for any temper."""

    treatment: Treatment
    composition: Composition
    heat: Heat | None
    fresh: hardness_map.AsQuenched | None
    supply_hrc: Floats
    normals: dict[str, Floats]
    crack: CrackDraws
    movement: Movement


def supply_hrc(treatment: Treatment, normals: Normals) -> Floats:
    """Return the hardness of the bar as sold, over the draws. [HRC].

    Parameters
    ----------
    treatment : Treatment
        Steel and supply condition.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    ndarray
        Shape (draws,); carried on below 20 HRC.
    """
    condition = treatment.condition
    spread = normals["supply_hardness"]
    if condition.hardness_hrc is not None:
        span = condition.hardness_hrc
        return np.asarray(span.middle + 0.25 * (span.high - span.low) * spread)
    if condition.hardness_hb is not None:
        span = condition.hardness_hb
        # A maximum alone: bar usually comes a good tenth softer than its limit.
        low = span.min if span.min is not None else 0.8 * span.high
        high = span.max if span.max is not None else 1.2 * low
        brinell = 0.5 * (low + high) + 0.25 * (high - low) * spread
        vickers = hv_from_hb(np.maximum(brinell, 80.0), outside="extend")
        return np.asarray(hrc_from_hv(vickers, outside="extend"))
    return np.full(spread.shape, np.nan)


def _points(around: Surroundings, bath: Quench) -> hardness_map.Points:
    """Return the points of the part, sections × positions."""
    sections = as_cooled(around.asked.part)
    severity = float(np.median(bath.severity))
    sizes = [
        float(round_equivalent_mm(s.shape, s.size, severity, s.width, s.bore)) for s in sections
    ]
    flat_sizes = np.repeat(np.array(sizes), len(POSITIONS))
    positions = np.tile(np.array(POSITIONS), len(sections))
    return hardness_map.points_of(flat_sizes, positions, bath)


def cooled_points(treatment: Treatment, around: Surroundings) -> hardness_map.Points | None:
    """Return the points of the part as they cool in a treatment's bath.

    Parameters
    ----------
    treatment : Treatment
        What is quenched in what.
    around : Surroundings
        Part, workshop, draws.

    Returns
    -------
    Points or None
        Sections × positions; None where nothing is quenched.
    """
    shared = around.shared()
    bath = quench(treatment, around.asked.workshop, shared, around.mass_kg)
    return None if bath is None else _points(around, bath)


def prepare(treatment: Treatment, around: Surroundings) -> Prepared:
    """Return a treatment heated and quenched, over the draws.

    Parameters
    ----------
    treatment : Treatment
        What is done.
    around : Surroundings
        To what part, where.

    Returns
    -------
    Prepared
        Ready for any temper.
    """
    steel = treatment.steel
    normals = around.of_steel(steel.slug)
    composition = middle(steel) if around.count == 1 else drawn(steel, normals)
    shop = around.asked.workshop
    heat = hardening_heat(treatment, shop, normals)
    bath = quench(treatment, shop, normals, around.mass_kg)
    fresh = None
    if heat is not None and bath is not None:
        fresh = hardness_map.as_quenched(
            steel, composition, heat, _points(around, bath), normals
        )
    return Prepared(
        treatment,
        composition,
        heat,
        fresh,
        supply_hrc(treatment, normals),
        normals,
        crack_draws(treatment, around, composition, normals),
        movement(treatment, around, normals),
    )


def _tempered_points(ready: Prepared, temper: Temper, around: Surroundings) -> Floats:
    """Return hardness at sections × positions; shape (draws, points). [HRC]."""
    if ready.fresh is None:
        msg = f"{ready.treatment.label} has no quench"
        raise ValueError(msg)
    if temper.means == "none":
        return ready.fresh.hrc
    reached = temper_peak_c(temper, around.asked.workshop, ready.normals)
    return hardness_map.tempered(
        ready.treatment.steel,
        ready.composition,
        ready.fresh,
        reached,
        temper.time_s * temper.cycles,
        ready.normals,
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Hardness:
    """Hardness of the working zone, its core, the shank and every section. [HRC]."""

    surface: Floats
    core: Floats
    shank: Floats
    depth_mm: Floats
    sections: Floats
    relation: str
    source: str
    validity: tuple[str, ...] = ()


def _as_supplied(ready: Prepared, around: Surroundings) -> _Hardness:
    """Return the hardness of a part that no heat changes."""
    supply = ready.supply_hrc
    condition = ready.treatment.condition
    radius = 0.5 * min(around.asked.part.section[i].size for i in around.hard)
    depth = condition.depth_mm.value if condition.depth_mm else radius
    span = condition.hardness_hrc or condition.hardness_hb
    source = span.source if span else "none"
    core = supply if condition.depth_mm is None else np.full(supply.shape, 20.0)
    return _Hardness(
        supply,
        core,
        core,
        np.full(supply.shape, depth),
        np.repeat(core[:, None], len(around.asked.part.section), axis=1),
        "hardness of the bar as sold",
        source,
    )


def _quenched(ready: Prepared, temper: Temper, around: Surroundings) -> _Hardness:
    """Return the hardness of a part that is quenched, whole or in its zone."""
    points = _tempered_points(ready, temper, around)
    sections = around.asked.part.section
    grid = points.reshape(len(points), len(sections), len(POSITIONS))
    lead = around.leading
    # The zone that leads decides; the weakest of its sections is looked at.
    index = max(lead.sections, key=lambda i: sections[i].size)
    local = ready.treatment.route.extent == "local"
    radius = 0.5 * sections[index].size
    zone = grid[:, index, :]
    depth = _depth_mm(zone, radius, lead.floor_hrc)
    surface, core = zone[:, 0], zone[:, -1]
    if local:
        limit = hardened_depth_mm(ready.treatment, around, ready.normals)
        depth = np.minimum(depth, limit)
        core = np.where(limit >= 0.95 * radius, core, ready.supply_hrc)
    # Torsion and bending live on the outer fibres; a mean over the section is close to them.
    outer = grid[:, :, :3].mean(axis=2)
    if local:
        hard = np.isin(np.arange(len(sections)), around.hard)
        outer = np.where(hard[None, :], outer, ready.supply_hrc[:, None])
    shanks = [i for i in range(len(sections)) if i not in around.hard]
    shank = outer[:, shanks].min(axis=1) if shanks else core
    fresh = ready.fresh
    return _Hardness(
        surface,
        core,
        shank,
        depth,
        outer,
        f"{fresh.relation if fresh else ''}; then tempered {temper.label}",
        fresh.source if fresh else "",
        fresh.validity if fresh else (),
    )


def _depth_mm(zone_hrc: Floats, radius_mm: float, floor_hrc: float | None) -> Floats:
    """Return how deep the zone stays above 0.8 of the asked hardness in HV. [mm]."""
    surface = hv_from_hrc(zone_hrc[:, 0], outside="extend")
    asked = (
        surface
        if floor_hrc is None
        else np.full(len(surface), float(hv_from_hrc(floor_hrc, outside="extend")))
    )
    limit = FLAME_LIMIT * asked
    hv = hv_from_hrc(zone_hrc, outside="extend")
    depths = radius_mm * (1 - np.array(POSITIONS))
    depths[0] = 0.0
    hard = hv >= limit[:, None]
    # First position that is too soft; the crossing lies between it and the one before.
    soft_at = np.where(hard.all(axis=1), len(POSITIONS), np.argmin(hard, axis=1))
    last = np.clip(soft_at - 1, 0, len(POSITIONS) - 1)
    nxt = np.clip(soft_at, 0, len(POSITIONS) - 1)
    rows = np.arange(len(hv))
    drop = hv[rows, last] - hv[rows, nxt]
    part = np.where(drop > 0, (hv[rows, last] - limit) / np.where(drop > 0, drop, 1.0), 0.0)
    between = depths[last] + np.clip(part, 0, 1) * (depths[nxt] - depths[last])
    found = np.where(soft_at >= len(POSITIONS), radius_mm, between)
    return np.asarray(np.where(soft_at == 0, 0.0, found))


def _cased(ready: Prepared, temper: Temper, around: Surroundings) -> _Hardness:
    """Return the hardness of a case-hardened part: hard case, core of its own hardenability."""
    route = ready.treatment.route
    normals = ready.normals
    span, depth_span = route.surface_hrc, route.depth_mm
    if span is None or depth_span is None:
        msg = f"{route.slug} needs surface_hrc and depth_mm"
        raise ValueError(msg)
    hard = span.middle + 0.25 * (span.high - span.low) * normals["as_quenched"]
    softened = np.maximum(0.0, (temper.temperature_c - 150.0) * 0.035)
    surface = np.clip(hard, span.low - 2, span.high + 2) - softened
    ratio = np.sqrt(depth_span.high / max(depth_span.low, 0.02))
    middle_mm = depth_span.low * ratio
    depth = middle_mm * np.exp(0.5 * np.log(ratio) * np.clip(normals["depth"], -2, 2))
    core = _core_hrc(ready, around)
    return _Hardness(
        surface,
        core,
        core,
        depth,
        np.repeat(core[:, None], len(around.asked.part.section), axis=1),
        "published surface hardness and depth of the route; core by the end-quench curve",
        span.source,
    )


def _core_hrc(ready: Prepared, around: Surroundings) -> Floats:
    """Return the core hardness of a carburised steel after its quench. [HRC]."""
    from selector.metallurgy.hardenability import jominy_curve  # noqa: PLC0415

    thick = max(around.asked.part.section[i].size for i in around.hard)
    medium = ready.treatment.medium
    water = medium is not None and medium.severity_class == "water"
    bath = Quench(np.full((1, 1), 1.0 if water else 0.4), 40.0)
    distance = hardness_map.points_of(np.array([thick]), np.array([0.0]), bath).distance_mm
    curve = jominy_curve(ready.composition, distance)
    core = curve.hrc[:, 0] + (curve.sd_hrc * ready.normals["core"][:, None])[:, 0]
    return np.asarray(np.maximum(core, ready.supply_hrc))


def _nitrided(ready: Prepared, around: Surroundings) -> _Hardness:
    """Return the hardness of a nitrided part: hard layer on the core as it was."""
    layer = ready.treatment.steel.nitrided
    if layer is None:
        msg = f"{ready.treatment.steel.slug} has no nitrided table"
        raise ValueError(msg)
    normals = ready.normals
    vickers = layer.surface_hv.middle + 0.25 * (
        layer.surface_hv.high - layer.surface_hv.low
    ) * np.clip(normals["as_quenched"], -2, 2)
    span = layer.depth_mm
    depth = span.middle + 0.25 * (span.high - span.low) * np.clip(normals["depth"], -2, 2)
    core = ready.supply_hrc
    return _Hardness(
        np.asarray(hrc_from_hv(vickers, outside="extend")),
        core,
        core,
        np.asarray(depth),
        np.repeat(core[:, None], len(around.asked.part.section), axis=1),
        "published hardness and depth of the nitrided layer; core as sold",
        layer.surface_hv.source,
    )


def _aged(ready: Prepared, temper: Temper, around: Surroundings) -> _Hardness:
    """Return the hardness of an age-hardened part, even through its section."""
    aged = ready.treatment.steel.aged
    if aged is None:
        msg = f"{ready.treatment.steel.slug} has no aged table"
        raise ValueError(msg)
    points = np.array(aged.curve_hrc.points)
    reached = temper_peak_c(temper, around.asked.workshop, ready.normals)[:, 0]
    hrc = np.interp(reached, points[:, 0], points[:, 1]) + 0.8 * ready.normals["tempering"]
    radius = 0.5 * min(around.asked.part.section[i].size for i in around.hard)
    return _Hardness(
        np.asarray(hrc),
        np.asarray(hrc),
        np.asarray(hrc),
        np.full(hrc.shape, radius),
        np.repeat(np.asarray(hrc)[:, None], len(around.asked.part.section), axis=1),
        "published ageing curve of the steel",
        aged.curve_hrc.source,
    )


def _hardness(ready: Prepared, temper: Temper, around: Surroundings) -> _Hardness:
    """Return the hardness by what the route does."""
    process = ready.treatment.route.process
    if process == "case":
        return _cased(ready, temper, around)
    if process == "nitride":
        return _nitrided(ready, around)
    if process == "age":
        return _aged(ready, temper, around)
    if ready.fresh is not None:
        return _quenched(ready, temper, around)
    return _as_supplied(ready, around)


def predict(ready: Prepared, temper: Temper, around: Surroundings) -> Prediction:
    """Return the prediction of one option.

    Parameters
    ----------
    ready : Prepared
        The treatment, heated and quenched.
    temper : Temper
        How it is drawn.
    around : Surroundings
        Part, workshop, draws.

    Returns
    -------
    Prediction
        All quantities over the draws.
    """
    treatment = ready.treatment
    found = _hardness(ready, temper, around)
    chance, margin = _snap(ready, temper, found, around)
    inputs: dict[str, float | str] = {
        "steel": treatment.steel.name,
        "temper": temper.label,
        "target_c": ready.heat.target_c if ready.heat else "none",
    }

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
        as_quenched_hrc=ready.fresh.hrc[:, 0] if ready.fresh else found.surface,
        snapped=chance,
        snap_margin_hrc=margin,
        crack=ready.crack,
        movement=ready.movement,
        bill=bill(treatment, temper, around, ready.crack.rate),
        told={
            "surface": told("HRC"),
            "core": told("HRC"),
            "shank": told("HRC"),
            "depth_mm": told("mm"),
        },
    )


def embrittled(treatment: Treatment, temper: Temper) -> bool:
    """Return whether a temper lies in the steel's own embrittlement window.

    Parameters
    ----------
    treatment : Treatment
        Steel.
    temper : Temper
        Temper.

    Returns
    -------
    bool
        False where none is catalogued.
    """
    return temper.means != "none" and any(
        span.low <= temper.temperature_c <= span.high
        for span in treatment.steel.embrittlement_c
    )


def _snap(
    ready: Prepared, temper: Temper, found: _Hardness, around: Surroundings
) -> tuple[Floats, Floats]:
    """Return whether each draw snaps, and the hardness in hand; NaN where unknown."""
    treatment = ready.treatment
    quenched = treatment.hardens
    # A case or a nitrided layer is carried by its core; the core is what snaps.
    stressed = found.surface if quenched or treatment.route.process == "none" else found.core
    drawn_c = temper.temperature_c if temper.means != "none" else float("nan")
    if not quenched:
        drawn_c = 600.0
    notch = float(max(around.notches.bending[i] for i in around.hard))
    answer: Any = snap_likelihood(
        stressed,
        TOUGHNESS[treatment.steel.toughness],  # type: ignore[arg-type]
        around.asked.load.impact,
        drawn_c,
        min(notch, 2.0),
        embrittled(treatment, temper),
    )
    spread = answer.sd_margin_hrc * ready.normals["snap"]
    return np.asarray(answer.probability), np.asarray(answer.margin_hrc + spread)
