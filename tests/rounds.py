"""Rounds of catalogue steel, quenched evenly hot at the middle of every uncertainty."""

import numpy as np

from catalog import load_catalog
from selector.hardening.as_quenched import as_quenched
from selector.hardening.bath_response import POSITIONS, cooled
from selector.hardening.composition import middle
from selector.hardening.kind import start
from selector.heat.boiling import Bath, Quench
from selector.metallurgy.hardening_heat import Heat, structure_of
from selector.sampling import SHARED, STEEL

FURNACE = (1800.0, 0.2)
# From rim to axis, as share of the radius.
PLACES = POSITIONS


def hrc_across(slug, medium, diameter_mm, heat_c, hold=FURNACE):
    """Return the hardness at `PLACES` of a soft bar after a hold in s and a rate in °C/s."""
    steel, normals = load_catalog().steels[slug], {n: np.zeros(1) for n in SHARED + STEEL}
    quench = Quench(Bath(medium), 1.0, 0.2, 1.0)
    points = cooled(np.array([diameter_mm]), quench, start(steel), normals)
    met = structure_of("annealed", steel.composition_wt_pct["C"].middle)
    heat = Heat(heat_c, np.full((1, 1), heat_c), *hold, met, medium)
    return as_quenched(steel, middle(steel), heat, points, normals).hrc[0]
