import math

import pytest

from selector.option.spring_energy import maims, stored_j
from tests.dog import asked

E_MPA, G_MPA = 206_000.0, 81_500.0


def strip(thick, wide, long):
    return asked(
        {
            "part.section.0": {"shape": "flat", "size": thick, "width": wide, "length": long},
            "part.section.1": {"shape": "flat", "size": thick, "width": wide, "length": 1},
            "part.feature": [],
        }
    )


def test_a_coil_stores_what_its_rate_and_load_come_to():
    # Rate G d^4 / 8 D^3 n and stress 8 F D / pi d^3 of a closely wound coil.
    wire, coil, turns, shear_mpa = 4.0, 40.0, 9.0, 1000.0
    rate = G_MPA * wire**4 / (8.0 * coil**3 * turns)
    load = shear_mpa * math.pi * wire**3 / (8.0 * coil)
    volume = math.pi**2 * wire**2 * coil * turns / 4.0
    assert stored_j(volume, wound=True) == pytest.approx(load**2 / (2.0 * rate) / 1000.0)


def test_a_strip_bent_by_one_moment_stores_what_the_moment_does():
    thick, wide, long, bending_mpa = 2.0, 20.0, 150.0, 1500.0
    moment = bending_mpa * wide * thick**2 / 6.0
    work_j = moment**2 * long / (2.0 * E_MPA * wide * thick**3 / 12.0) / 1000.0
    assert stored_j(thick * wide * long, wound=False) == pytest.approx(work_j)


def test_a_lock_lever_does_not_maim_and_a_leaf_spring_does():
    assert not maims(strip("0.8 mm", "6 mm", "45 mm"))
    assert maims(strip("6 mm", "50 mm", "600 mm"))
