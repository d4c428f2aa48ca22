"""The flame verdict as plain data, for JSON and for the page."""

import math
from typing import Any

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from selector.errors import OutOfRangeError
from selector.flame.answer import FlameAnswer, FlameVerdict
from selector.flame.case import target_c
from selector.flame.check import asked_words, most_words
from selector.flame.outcome import Outcome
from selector.hazards.cracking import CrackRisk
from selector.heat.colour import heat_colour, temper_colour
from selector.heat.end_quench import end_quench_rate_c_per_s
from selector.heat.operator import READING_C
from selector.job.process import reading_error
from selector.job.treatment import Temper, Treatment
from selector.option.cracking import crack_words
from selector.requirement.workshop import Workshop

Floats = NDArray[np.float64]
# Cautions come in the order of the work.
STEPS = ("before work", "heating", "quenching", "tempering", "finishing", "in service")


def flame_out(answer: FlameAnswer, catalog: Catalog) -> dict[str, Any]:
    """Return the answer as plain data: the word first, then each family, best first.

    Parameters
    ----------
    answer : FlameAnswer
        The answer.
    catalog : Catalog
        For names and cautions.

    Returns
    -------
    dict
        Numbers carry their unit in the key; what is unknown is None. The map is that of the
        best family alone.
    """
    best, shop = answer.best, answer.asked.workshop
    families = [_family(verdict, shop) for verdict in answer.verdicts]
    return {
        "part": answer.asked.part.name,
        "verdict": answer.word,
        "why": answer.why,
        "asked": {
            "low_hrc": answer.demand.low_hrc,
            "high_hrc": answer.demand.high_hrc,
            "floor_hrc": answer.demand.floor_hrc,
            "ceiling_hrc": answer.demand.ceiling_hrc,
            "text": asked_words(answer.demand),
            "most": most_words(answer.demand),
            "depth_mm": answer.demand.depth_mm,
            "reason": answer.demand.reason,
        },
        "families": families,
        "residual_heat": None if answer.residual is None else _family(answer.residual, shop),
        "map": _map(best.outcome) if best is not None and best.outcome is not None else None,
        "assumptions": list(answer.assumed),
        "cautions": _cautions(best, catalog) if best is not None else [],
    }


def _family(verdict: FlameVerdict, shop: Workshop) -> dict[str, Any]:
    """Return one verdict as plain data."""
    work, change = verdict.treatment, verdict.change
    seen = _seen(work, shop)
    return {
        "family": work.steel.family,
        "steel": work.steel.name,
        "steel_slug": work.steel.slug,
        "condition": work.condition.name,
        "medium": work.medium.slug if work.medium else None,
        "source": work.source.slug if work.source else None,
        "verdict": verdict.word,
        "why": verdict.why,
        "if": list(verdict.odds),
        "change": None
        if change is None
        else {
            "text": change.text,
            "at_hand": change.at_hand,
            "figures": _figures(change.outcome, seen),
        },
        "figures": None if verdict.outcome is None else _figures(verdict.outcome, seen),
    }


def _seen(work: Treatment, shop: Workshop) -> dict[str, Any]:
    """Return how the heat is read in this workshop, and the colour it shows in its light."""
    misread = reading_error(work, shop)
    found: dict[str, Any] = {
        "light": shop.light,
        "read_by": next((name for name in READING_C if name in shop.measure), "eye"),
        "error_c": round(math.hypot(misread.bias_c, misread.scatter_c), 1),
        "looks_duller_by_c": misread.shift_c,
    }
    try:
        colour = heat_colour(target_c(work) - misread.shift_c)
    except OutOfRangeError:
        return {**found, "colour": None, "tables_c": None}
    tables = [round(colour.low_c, 1), round(colour.high_c, 1)]
    return {**found, "colour": colour.name, "tables_c": tables}


def _temper_colour(temper: Temper) -> str | None:
    """Return the colour a polished place shows at a temper, None where the tables end."""
    try:
        return temper_colour(temper.temperature_c, temper.time_s).name
    except OutOfRangeError:
        return None


def _figures(out: Outcome, seen: dict[str, Any]) -> dict[str, Any]:
    """Return the figures of an outcome."""
    heat, ring, temper = out.heated, out.ring, out.temper
    reached = out.hardness is not None
    drawn = temper.means != "none"
    found: dict[str, Any] = {
        "reached": reached,
        "target_c": out.target_c,
        "seen": seen,
        "from_the_other_end": out.part.turned_round,
        "ceiling_c": None if reached else round(heat.ceiling_c, 1),
        "heated_past_mm": out.setup.past_mm,
        "heat_s": round(heat.heat_s, 1) if reached else None,
        "hold_s": out.setup.hold_s,
        "flame_share": round(heat.level, 2),
        "gas_l": round(heat.gas_l, 1),
        "efficiency": round(heat.efficiency_fraction, 3),
        "hottest_c": _number(out.corner_c),
        "corner_margin_c": _number(out.overheated_c - out.corner_c),
        "side_to_side_k": round(heat.uneven_k, 1),
        "checks": [
            {"name": c.name, "met": c.met, "text": c.text, "margin": _number(c.margin)}
            for c in out.checks
        ],
        "margin": _number(out.margin),
        "cracking": None if out.crack is None else _cracking(out.crack),
    }
    if reached and ring is not None:
        found |= {
            "surface_hrc": _number(out.surface_hrc),
            "as_quenched_hrc": _number(out.fresh_hrc),
            "core_hrc": _number(out.core_hrc),
            "corner_as_quenched_hrc": _number(out.corner_hrc),
            "cooling": [
                {
                    "at": at,
                    "jominy_mm": _number(distance_mm),
                    "rate_704_c_k_per_s": _number(_rate_704(distance_mm)),
                }
                for at, distance_mm in zip(("surface", "core"), out.jominy_mm, strict=True)
            ],
            "hard_from_mm": _number(out.hard_mm[0]),
            "hard_to_mm": _number(out.hard_mm[1]),
            "depth_mm": _number(out.depth_mm),
            "hard_through": out.through,
            "through_mm": _number(out.wall_mm),
            "ground_off_mm": out.removed_mm,
            "soft_skin_mm": round(out.skin_mm, 3),
            "soft_ring": {
                "at_mm": _number(ring.at_mm),
                "width_mm": _number(ring.width_mm),
                "hrc": _number(ring.hrc),
                "torque_nm": _number(ring.torque_nm),
                "weakest": ring.weakest,
            },
            "temper": {
                "means": temper.means,
                "temperature_c": temper.temperature_c if drawn else None,
                "time_min": temper.time_s / 60 if drawn else None,
                "cycles": temper.cycles,
                "colour": _temper_colour(temper) if drawn else None,
            },
            "bow_p50_mm": round(out.bow_mm[0], 3),
            "bow_p90_mm": round(out.bow_mm[1], 3),
        }
    return found


def _rate_704(jominy_mm: float) -> float:
    """Return the rate at 704 °C that an end-quench distance stands for. [K/s]."""
    return float(end_quench_rate_c_per_s(jominy_mm)) if jominy_mm > 0.0 else float("nan")


def _cracking(risk: CrackRisk) -> dict[str, Any]:
    """Return a crack risk: class, band, reasons and what helps."""
    return {
        "class": risk.crack_class,
        "low_fraction": risk.low_fraction,
        "high_fraction": risk.high_fraction,
        "basis": risk.basis,
        "text": crack_words(risk),
        "reasons": [{"name": r.name, "remedy": r.remedy} for r in risk.reasons],
    }


def _map(out: Outcome) -> dict[str, Any] | None:
    """Return hardness along the axis, and across the middle of the zone."""
    found = out.hardness
    if found is None:
        return None
    middle_mm = 0.5 * sum(out.part.zone_mm)
    across = found.column(middle_mm)
    kept = np.isfinite(across)
    return {
        "from_the_other_end": out.part.turned_round,
        "zone_mm": list(out.part.zone_mm),
        "along_mm": _list(found.along_mm),
        "surface_hrc": _list(found.surface()),
        "core_hrc": _list(found.core()),
        "as_quenched_hrc": _list(found.surface(found.quenched_hrc)),
        "peak_c": _list(found.surface(found.peak_c)),
        "across": {
            "at_mm": middle_mm,
            "radius_mm": _list(found.across_mm[kept]),
            "hrc": _list(across[kept]),
        },
    }


def _cautions(best: FlameVerdict, catalog: Catalog) -> list[dict[str, str]]:
    """Return the cautions of route, bath and flame in the order of work; none of no work."""
    if best.word in {"no", "not_needed"} and best.change is None:
        return []
    work = best.treatment
    ids = [*work.route.cautions]
    ids += work.medium.cautions if work.medium else ()
    ids += work.source.cautions if work.source else ()
    found = [(i, catalog.cautions[i]) for i in dict.fromkeys(ids)]
    found.sort(key=lambda pair: STEPS.index(pair[1].step))
    return [{"id": i, "step": c.step, "text": c.fact.text} for i, c in found]


def _number(value: float) -> float | None:
    """Return a number to a decimal, None where there is none."""
    return round(value, 1) if math.isfinite(value) else None


def _list(values: Floats) -> list[float | None]:
    """Return an array as numbers to a decimal."""
    return [_number(float(v)) for v in values]
