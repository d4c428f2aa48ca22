"""A round of known analysis, quenched as the advice quenches one, beside measured bars."""

from functools import cache

import numpy as np

from catalog import load_catalog
from selector.hardening.bath_response import POSITIONS
from selector.requirement.part import Section
from selector.specimen.specimen import specimen

# A low-alloy steel of no section limit, of which all but the analysis is kept.
LIKE = "42crmo4"


@cache
def known():
    """Return the catalogue as shipped."""
    return load_catalog()


def of_analysis(composition_wt_pct):
    """Return a steel that is every time of one analysis."""
    like = known().steels[LIKE]
    span = like.composition_wt_pct["C"]
    exact = {
        element: span.model_copy(update={"min": content, "max": content})
        for element, content in composition_wt_pct.items()
    }
    return like.model_copy(update={"composition_wt_pct": exact})


def quenched_hrc(composition_wt_pct, diameter_mm, medium, heat_c, shares):
    """Return the hardness over the samples at shares of the radius; shape (samples, shares)."""
    size = Section(shape="round", size=diameter_mm, length=10.0 * diameter_mm)
    steel, bath = of_analysis(composition_wt_pct), known().media[medium]
    fresh = specimen(known(), steel, size, bath, heat_c).fresh
    places = np.array(POSITIONS)[::-1]
    return np.array([np.interp(shares, places, row[::-1]) for row in fresh.hrc])
