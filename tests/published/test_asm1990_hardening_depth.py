"""ASM Handbook, Volume 1, 1990, tool steels, table of relative properties (from memory): depth
of hardening of the types, shallow, medium or deep.

None of it was used in a fit, but O6's class is named in the catalogue beside its section limit.
Steels of one class are compared with the next at the critical time of each in its own bath.
"""

import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.critical_time import critical_s
from selector.hardening.quenched_bar import FURNACE_C_PER_S, SOAK_S
from selector.metallurgy.austenite import austenite

SHALLOW = ("c105u", "c80u", "100v1")
MEDIUM = ("s1", "s2", "s5", "100mncrw4", "90mncrv8", "o6", "l6", "p20")
DEEP = ("50crmov13-15", "x100crmov5", "a6", "x153crmov12", "x37crmov5-1", "x40crmov5-1")
# A class is no matter of a few per cent: it is several times as long.
SEVERAL = 3.0
STEELS = load_catalog().steels


def critical(slug):
    """Return the critical time of a steel in its own bath. [s]."""
    steel = STEELS[slug]
    heat_c = steel.hardened.temperature_c.middle
    state = austenite(middle(steel), heat_c, SOAK_S, FURNACE_C_PER_S, "spheroidised")
    return float(np.ravel(critical_s(steel, state, steel.hardened.quench)[0])[0])


@pytest.mark.parametrize("slug", MEDIUM)
def test_medium_is_several_times_deeper_than_shallow(slug):
    assert critical(slug) > SEVERAL * max(critical(other) for other in SHALLOW)


@pytest.mark.parametrize("slug", DEEP)
def test_deep_is_several_times_deeper_than_medium(slug):
    medium = np.median([critical(other) for other in MEDIUM])
    assert critical(slug) > SEVERAL * medium
