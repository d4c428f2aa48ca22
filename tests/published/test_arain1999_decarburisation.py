"""A. A. Arain, Heat Treatment and Toughness Behavior of Tool Steels (D2 and H13) for Cutting
Blades, thesis, University of Toronto, 1999, abstract (read): heat treatment in an open furnace
gave a decarburised layer of up to 0.018 in; steels hardened from 1025 to 1065 °C. Time at heat
is not in the abstract; sheets of both steels ask for half an hour to an hour, of which the
middle is taken.

Nothing was fitted to it: the share of free diffusion was set at 815 °C, so this checks how the
depth grows with heat.
"""

from selector.hazards.decarburisation import soft_skin

DEEPEST_MM, HOTTEST_C, HOURS = 0.018 * 25.4, 1065.0, 0.75
# How near a depth is asked to come. [-]
FACTOR = 1.3


def test_an_open_furnace_takes_as_deep_a_skin_as_measured():
    depth = float(soft_skin(HOTTEST_C, 3600.0 * HOURS).soft_mm)
    assert DEEPEST_MM / FACTOR <= depth <= DEEPEST_MM * FACTOR


def test_the_coldest_of_the_heats_takes_less():
    assert float(soft_skin(1025.0, 1800.0).soft_mm) < DEEPEST_MM
