"""What the catalogue has a steel reach, hardened and tempered, beside another table."""

from functools import cache

import numpy as np

from catalog import load_catalog
from selector.hardening.tempered import hardened_from, whole_curve
from selector.metallurgy.published_curve import tempered_from_curve

# How near two sources are asked to come, on the average over one steel. [HRC]
AIM_HRC = 1.5
AS_QUENCHED = "as quenched"


@cache
def _steel(slug):
    """Return a steel of the shipped catalogue."""
    return load_catalog().steels[slug]


def catalogued_hrc(slug, temper_c, time_h, heat_c=None):
    """Return the catalogued hardness after a temper, or as quenched."""
    steel = _steel(slug)
    if heat_c is not None:
        steel = hardened_from(steel, heat_c)
    if temper_c == AS_QUENCHED:
        return steel.hardened.as_quenched_hrc.middle
    curve = steel.tempered
    temperatures_c, hrc = whole_curve(steel).T
    held_s = curve.time_h.value * 3600.0
    return float(tempered_from_curve(temperatures_c, hrc, held_s, temper_c, time_h * 3600.0))


def mean_miss_hrc(slug, table, time_h, heat_c=None):
    """Return the mean distance of the catalogue from a table of printed hardness."""
    misses = [
        abs(catalogued_hrc(slug, temper_c, time_h, heat_c) - float(printed))
        for temper_c, printed in table.items()
    ]
    return float(np.mean(misses))
