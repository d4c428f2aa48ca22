"""Whether what works hard owes its hardness to a quench that took, not to one that failed."""

import numpy as np
from numpy.typing import NDArray

from selector.duty.strength import has_load
from selector.figure import median
from selector.gate import Gate, judged
from selector.hardening.hard_depth import half_martensite_hrc
from selector.option.prediction import Prediction
from selector.requirement import Requirement
from selector.wording import shown

Bools = NDArray[np.bool_]
# Softer than this bar comes normalised or patented too, and a slack quench does it no harm.
# Common practice, no source. [HRC]
_HARD_HRC = 35.0
# What air leaves harder than this it has hardened, and nothing tempers it after. Common
# practice, no source. [HRC]
_AIR_HARD_HRC = 40.0


def slack_gate(prediction: Prediction, asked: Requirement) -> Gate | None:
    """Judge whether the rim of what bears load, springs or is struck is half martensite."""
    taken = took(prediction, asked)
    if taken is None:
        return None
    if prediction.treatment.route.process == "normalise":
        return judged(
            "slack", taken, "air hardens it as it is normalised, and it wants a temper"
        )
    if prediction.layer is not None or prediction.fresh is None:
        return judged("slack", taken, "no case at 550 HV in this quench: slack, not tempered")
    text = (
        f"{shown(median(prediction.fresh.hrc[:, 0]))} as quenched, where half martensite has "
        f"{shown(_half_hrc(prediction))}: a slack quench is no temper"
    )
    return judged("slack", taken, text)


def took(prediction: Prediction, asked: Requirement) -> Bools | None:
    """Return in which samples a quench took where hardness bears, None where it need not."""
    work, fresh = prediction.treatment, prediction.fresh
    if work.route.process == "normalise":
        return np.asarray(prediction.surface_hrc <= _AIR_HARD_HRC)
    if not _works(asked):
        return None
    soft = prediction.surface_hrc < _HARD_HRC
    if work.route.process == "case":
        return np.asarray(soft | (prediction.depth_mm > 0.0))
    # Bainite of a salt bath is hard by itself.
    if fresh is None or not work.hardens or prediction.temper.means == "salt":
        return None
    return np.asarray(soft | (fresh.hrc[:, 0] >= _half_hrc(prediction)))


def _works(asked: Requirement) -> bool:
    """Return whether a part bears load, springs, is struck or tires; wear alone asks less."""
    load = asked.load
    tires = load.cycles == "fatigue" or load.impact != "none"
    return tires or asked.is_spring or has_load(load)


def _half_hrc(prediction: Prediction) -> float:
    """Return the hardness of half martensite of the steel. [HRC]."""
    carbon = prediction.treatment.steel.composition_wt_pct.get("C")
    return half_martensite_hrc(carbon.middle if carbon else 0.0)
