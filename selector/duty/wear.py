"""Wear life of a zone against the life asked for."""

import numpy as np
from numpy.typing import NDArray

from selector.hardness_scale import hv_from_hrc
from selector.job.demand import Demand
from selector.job.treatment import Treatment
from selector.mechanics.wear import (
    RelativeLife,
    Wear,
    carbide_life,
    carbon_life,
    relative_life,
)
from selector.requirement import Requirement
from selector.sampling import Normals

Floats = NDArray[np.float64]
# Carbon that a case holds where it wears. Common practice. [wt %]
_CASE_CARBON_WT_PCT = 0.8
# Tool steel of one percent carbon is what an edge is measured by. [wt %]
_TOOL_CARBON_WT_PCT = 1.0
# A window centred at or below the first is that of a tool that strikes or presses, at or above
# the second that of a tool that cuts. In between, the edge counts in part. Estimate. [HRC]
_STRIKES_HRC, _CUTS_HRC = 48.0, 54.0
# This far outside its window a tool does about half the work (range table of the criteria).
HALVES_HRC = 8.0
# The softest part a life is compared with where no hardness is asked: plain bar. [HV]
_PLAIN_BAR_HV = 200.0


def wearing_carbon_wt_pct(treatment: Treatment) -> float:
    """Return the carbon of the steel where it wears, at the middle of its range.

    Parameters
    ----------
    treatment : Treatment
        Steel and route.

    Returns
    -------
    float
        Of the case of a carburised part, else of the bar; where hard carbides are counted apart
        no more than that of tool steel, or they would count twice. [wt %]
    """
    if treatment.route.process == "case":
        return _CASE_CARBON_WT_PCT
    carbon = treatment.steel.composition_wt_pct.get("C")
    middle = carbon.middle if carbon is not None else _TOOL_CARBON_WT_PCT
    return min(middle, _TOOL_CARBON_WT_PCT) if treatment.steel.carbide_vol_pct else middle


def carbide_gain(treatment: Treatment, demand: Demand, asked: Requirement) -> RelativeLife:
    """Return what hard carbides of chromium, molybdenum or vanadium add to a life under grit.

    Parameters
    ----------
    treatment : Treatment
        Steel and route.
    demand : Demand
        Of the zone.
    asked : Requirement
        What is asked.

    Returns
    -------
    RelativeLife
        1 for plain steel, where nothing cuts, and at a struck edge, which chips at them. [-]
    """
    carbides = treatment.steel.carbide_vol_pct
    if asked.zone[demand.zone].wear != "abrasive" or not carbides:
        return RelativeLife(np.ones(()), np.zeros(()))
    return carbide_life({kind: volume.middle for kind, volume in carbides.items()})


def is_cutting(demand: Demand, asked: Requirement) -> bool:
    """Return whether a zone lives by an edge that cuts or is struck, or is under grit."""
    # Claws and pawls bear on their edges without cutting; they are no such zone.
    wear = asked.zone[demand.zone].wear
    edge = any(feature.kind == "edge" for feature in asked.part.feature)
    struck = asked.load.impact == "hammered"
    return wear == "abrasive" or (wear == "edge-impact" and (struck or edge))


def has_edge(demand: Demand, asked: Requirement) -> bool:
    """Return whether a zone ends in an edge, which a hard layer meets alone."""
    # A tooth is carried by its core; its case is what wears.
    edged = any(feature.kind == "edge" for feature in asked.part.feature)
    return edged or asked.zone[demand.zone].wear == "edge-impact"


def _steel_gain(
    treatment: Treatment, demand: Demand, asked: Requirement, normals: Normals
) -> Floats:
    """Return the life by carbon and carbides over that of a tool steel as hard. [-]."""
    normal = normals["wear_family"]
    if not is_cutting(demand, asked):
        return np.ones_like(normal)
    struck = asked.zone[demand.zone].wear == "edge-impact"
    carbon = wearing_carbon_wt_pct(treatment)
    by_carbon = carbon_life(carbon, _TOOL_CARBON_WT_PCT, struck=struck).sampled(normal)
    return by_carbon * carbide_gain(treatment, demand, asked).sampled(normal)


def edge_loss_hrc(
    treatment: Treatment, demand: Demand, asked: Requirement, normals: Normals
) -> Floats:
    """Return what a steel poor in carbon loses at an edge, as hardness off its window.

    Parameters
    ----------
    treatment : Treatment
        Steel and route.
    demand : Demand
        Of the zone.
    asked : Requirement
        What is asked.
    normals : mapping of str to ndarray
        The sample that all steels share.

    Returns
    -------
    ndarray
        0 for a tool steel of one percent carbon, and where nothing cuts or is cut; shape
        (samples,). [HRC]
    """
    gain = _steel_gain(treatment, demand, asked, normals)
    return np.asarray(np.maximum(-HALVES_HRC * np.log2(gain), 0.0) * _cuts_share(demand))


def _cuts_share(demand: Demand) -> float:
    """Return how far a zone is an edge that cuts, by the middle of its window. [-]."""
    if demand.low_hrc is None or demand.high_hrc is None:
        return 0.0 if demand.low_hrc is None else 1.0
    middle = 0.5 * (demand.low_hrc + demand.high_hrc)
    return float(np.clip((middle - _STRIKES_HRC) / (_CUTS_HRC - _STRIKES_HRC), 0, 1))


def life(
    treatment: Treatment, hrc: Floats, demand: Demand, asked: Requirement, normals: Normals
) -> Floats:
    """Return the wear life over that of the softest part that would do.

    Parameters
    ----------
    treatment : Treatment
        Steel and route.
    hrc : ndarray
        Its surface, after check and second temper. [HRC]
    demand : Demand
        Of the zone.
    asked : Requirement
        What is asked.
    normals : mapping of str to ndarray
        The sample that all steels share.

    Returns
    -------
    ndarray
        Ratio of lives, carbon counted at edges and under grit, hard carbides under grit; the
        error of these relations is sampled. [-]
    """
    wear: Wear = "abrasive" if is_cutting(demand, asked) else "sliding"
    softest = _PLAIN_BAR_HV
    if demand.floor_hrc is not None:
        softest = float(hv_from_hrc(demand.floor_hrc, outside="extend"))
    hv = np.maximum(np.asarray(hv_from_hrc(hrc, outside="extend")), 90.0)
    by_hardness = relative_life(hv, softest, wear).sampled(normals["wear_family"])
    return np.asarray(_steel_gain(treatment, demand, asked, normals) * by_hardness)
