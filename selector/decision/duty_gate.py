"""Gates of duty beside plain strength: contact, blow, pair, skin, cold, end of hardness."""

from bisect import bisect_left
from collections.abc import Iterator
from itertools import accumulate, pairwise

import numpy as np
from numpy.typing import NDArray

from selector.decision.standard import Standard
from selector.duty.cold import cold_gate
from selector.duty.contact import blow_force_n
from selector.duty.pair import galling_gate, pair_gate
from selector.duty.strength import LOAD_LOG_SD
from selector.figure import median
from selector.gate import Gate, judged
from selector.hardness_scale import hv_from_hrc
from selector.job.demand import Demand
from selector.job.geometry import area_mm2
from selector.job.hard_section import hard_sections
from selector.mechanics.strength import strength
from selector.option.prediction import Prediction
from selector.option.skin import ground_mm
from selector.requirement import Requirement
from selector.requirement.part import Part
from selector.wording import shown

Floats = NDArray[np.float64]
# Notches that a hard zone must not end at, and how far away it should end, as a share of the
# section. Common practice.
_NOTCHES = frozenset({"groove", "keyway", "thread", "cross-hole", "slot"})
_AWAY_SHARE = 0.25
# A case to 550 HV that is deeper than this share of a tooth or wall is too deep: 0.4 of the
# module (ISO 6336-5, from memory), whose tooth is 1.57 modules thick. From a third on the cases
# of both sides meet, as carbon reaches half as far again as 550 HV (Harris 1943). [-]
CASE_SHARE, THROUGH_SHARE = 0.25, 1.0 / 3.0
# A thinner soft skin wears or laps off unnoticed. Common practice. [mm]
_SKIN_MM = 0.05


def duty_gates(prediction: Prediction, hrc: Floats, standard: Standard) -> list[Gate]:
    """Return the gates of duty of one option that apply."""
    work, asked, lead = prediction.treatment, standard.asked, standard.lead
    hardest_hrc = max(median(prediction.surface_hrc), median(prediction.core_hrc))
    gates = (
        _contact_gate(prediction, hrc, standard),
        _blow_gate(prediction, asked),
        pair_gate(hrc, lead, asked),
        galling_gate(hrc, lead, asked),
        _end_gate(prediction, standard),
        _through_gate(prediction, asked),
        _skin_gate(prediction, lead, asked),
        cold_gate(work, hardest_hrc, asked),
    )
    return [gate for gate in gates if gate is not None]


def contact_factor(hrc: Floats, standard: Standard) -> Floats:
    """Return the pressure the leading zone bears over the one it gets; else infinite. [-]."""
    pressing = standard.pressing
    if pressing is None:
        return np.full(len(hrc), np.inf)
    # Pressure follows the root of the load on a line.
    over = np.exp(0.5 * LOAD_LOG_SD * standard.normals["load"])
    hv = np.asarray(hv_from_hrc(hrc, outside="extend"))
    return np.asarray(pressing.bears_mpa(np.maximum(hv, 90.0)) / (pressing.pressure_mpa * over))


def _contact_gate(prediction: Prediction, hrc: Floats, standard: Standard) -> Gate | None:
    """Judge the contact: the surface bears the pressure, and the layer is deep enough."""
    pressing = standard.pressing
    if pressing is None:
        return None
    core_hrc = median(prediction.core_hrc)
    core_hv = max(float(hv_from_hrc(core_hrc, outside="extend")), 90.0)
    needed = pressing.depth_mm(core_hv)
    deep = (prediction.depth_mm >= needed) | prediction.hard_through
    text = (
        f"{pressing.pressure_mpa:.0f} MPa of contact pressure on {shown(median(hrc))}; needs "
        f"{needed:.2f} mm hard over {shown(core_hrc)}, predicted "
        f"{median(prediction.depth_mm):.1f} mm"
    )
    return judged("contact", (contact_factor(hrc, standard) >= 1.0) & deep, text)


def _blow_gate(prediction: Prediction, asked: Requirement) -> Gate | None:
    """Judge a stated blow: beyond yield the part upsets, unless the work gives way."""
    force = blow_force_n(asked)
    if force is None:
        return None
    areas = np.array([area_mm2(s) for s in asked.part.section])
    hv = np.asarray(hv_from_hrc(prediction.section_hrc, outside="extend"))
    bears = (strength(np.maximum(hv, 90.0)).yield_mpa * areas).min(axis=1)
    energy = asked.load.impact_energy
    text = f"a blow of {energy:g} J: {force / 1e3:.0f} kN if the part alone takes it"
    gate = judged("blow", bears >= force, f"{text}; bears {median(bears) / 1e3:.0f} kN")
    if gate.verdict == "fail":
        # Work and hand take part of every blow, so this warns and does not refuse.
        return Gate("blow", "marginal", gate.text, gate.share)
    return gate


def _end_gate(prediction: Prediction, standard: Standard) -> Gate | None:
    """Judge where the hardness of a local route ends: away from every notch that bears load."""
    if not standard.bears.is_known and standard.asked.load.impact == "none":
        return None
    for at, size, name in _notches(standard.asked.part):
        for end in prediction.hard_ends_mm:
            if abs(end - at) <= _AWAY_SHARE * size:
                text = (
                    f"the hardness ends {end:.0f} mm from the end, beside {name}: stop a "
                    "quarter of the diameter short of it, or carry it past"
                )
                return Gate("hard_end", "marginal", text)
    return None


def _through_gate(prediction: Prediction, asked: Requirement) -> Gate | None:
    """Judge whether the cases of both sides of a thin section or tooth leave a core."""
    run = prediction.layer
    if run is None or prediction.treatment.route.process != "case":
        return None
    thin, name = _thinnest(asked)
    grown = median(prediction.depth_mm) + run.removed_mm
    if grown <= CASE_SHARE * thin:
        return None
    through = grown > THROUGH_SHARE * thin
    what = "through-cased" if through else "nearly through-cased"
    text = (
        f"{what}: {grown:.2f} mm of case from both sides on {thin:.1f} mm {name}, brittle "
        f"right through; keep to {CASE_SHARE * thin:.1f} mm there"
    )
    return Gate("core", "fail" if through else "marginal", text)


def _thinnest(asked: Requirement) -> tuple[float, str]:
    """Return the thinnest wall or tooth that is cased, and what it is. [mm]."""
    hard = [asked.part.section[i] for i in hard_sections(asked)]
    walls = [(2.0 * section.most_depth_mm, "of section") for section in hard]
    teeth = [
        (feature.size, "of tooth")
        for feature in asked.part.feature
        if feature.kind == "teeth" and feature.size is not None
    ]
    return min(walls + teeth)


def _notches(part: Part) -> Iterator[tuple[float, float, str]]:
    """Yield where each notch lies, the section there and what it is called. [mm]."""
    edges = [0.0, *accumulate(section.length for section in part.section)]
    for at, (left, right) in zip(edges[1:], pairwise(part.section), strict=False):
        if left.size != right.size:
            yield at, min(left.size, right.size), f"the shoulder at {at:g} mm"
    for feature in part.feature:
        if feature.at is not None and feature.kind in _NOTCHES:
            section = part.section[min(bisect_left(edges[1:], feature.at), len(edges) - 2)]
            yield (
                feature.at,
                section.size,
                f"the {feature.kind.replace('-', ' ')} at {feature.at:g} mm",
            )


def _skin_gate(prediction: Prediction, lead: Demand, asked: Requirement) -> Gate | None:
    """Judge the soft skin on a face that is to wear, when it is not ground off."""
    skin = prediction.skin
    if asked.zone[lead.zone].wear == "none" or lead.floor_hrc is None or skin is None:
        return None
    if any(feature.kind == "edge" for feature in asked.part.feature):
        # An edge is left blunt for the heat and ground to form when hard, skin and all.
        return None
    if skin.bare_mm > ground_mm(asked.part):
        text = (
            "counted as wrapped in foil or coated: bare, the heat leaves a soft skin of about "
            f"{skin.bare_mm:.2f} mm"
        )
        return Gate("skin", "marginal", text)
    if skin.left_mm < _SKIN_MM:
        return None
    bites = median(prediction.surface_hrc) + skin.loss_hrc - skin.file_loss_hrc
    text = (
        f"the heat leaves a soft skin of about {skin.soft_mm:.2f} mm and {skin.left_mm:.2f} mm "
        f"stays on, {shown(bites)} under a file: "
        f"{skin.remedy}grind that off"
    )
    return Gate("skin", "marginal", text)
