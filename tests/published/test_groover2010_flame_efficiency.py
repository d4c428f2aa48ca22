"""M. P. Groover, Fundamentals of Modern Manufacturing, 4th ed., 2010, chapter 31, problems of
oxyfuel welding: heat transfer factor 0.20 to 0.30 (from memory; the problem with 0.3 read as a
tutoring site quotes it). That is for a spot on wide plate; a bar narrower than the flame
catches less.
"""

import pytest

from selector.heat.conduction import Plan, conduct
from selector.heat.grid import Section, bar_grid
from selector.heat.steel_property import heating_steel
from selector.heat.torch import flame_boundary, torch

UPPER = 0.30


@pytest.mark.parametrize(
    ("name", "diameter_mm"),
    [
        ("oxy-acetylene", 15.0),
        ("oxy-acetylene", 30.0),
        ("oxy-propane", 15.0),
        ("oxy-propane", 30.0),
    ],
    ids=[
        "oxy-acetylene 15 mm",
        "oxy-acetylene 30 mm",
        "oxy-propane 15 mm",
        "oxy-propane 30 mm",
    ],
)
def test_share_of_the_heat_of_the_gas_that_cold_steel_takes(name, diameter_mm):
    flame = torch(name)
    bar = bar_grid([Section(diameter_mm, 150.0)])
    length = 2.0 * flame.width_mm
    job = flame_boundary(bar, flame, (0.0, length))
    taken = conduct(bar, heating_steel(), job, 20.0, Plan(3.0)).stored_j
    share = taken / (3.0 * flame.power_w)
    assert 0.05 <= share <= UPPER
