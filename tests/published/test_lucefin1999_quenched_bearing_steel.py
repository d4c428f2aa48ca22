"""Lucefin Group, technical cards 100Cr6 (EN ISO 683-17:1999) and 102Cr6 (UNI EN ISO 4957:2002),
read: hardness from surface to core of rounds quenched in oil from 850 °C.

Nothing was fitted to these bars: how steeply hardness falls off was set on bars of 1080 and
1095, and how that changes with depth on hardenability bands of leaner steels. The catalogue's
section limit lies between two of the diameters; its share of martensite is that of all steel
for oil.
"""

import numpy as np
import pytest

from selector.hardening.quenched_bar import quenched_bar
from tests.rounds import PLACES, hrc_across

# The middle of the card's limits. [wt %]
CARD_WT_PCT = {"C": 0.99, "Si": 0.25, "Mn": 0.35, "Cr": 1.475}
# Distance from the axis and hardness; 102Cr6 repeats 30 and 40 mm, and adds 10 mm.
CARD = {
    10.0: ((5.0, 65), (0.0, 64)),
    20.0: ((10.0, 65), (5.0, 64), (0.0, 64)),
    30.0: ((15.0, 64), (10.0, 62), (5.0, 59), (0.0, 58)),
    40.0: ((20.0, 62), (15.0, 57), (10.0, 52), (5.0, 50.5), (0.0, 50)),
}
HEAT_C = 850.0


def by_composition(diameter_mm):
    """Return hardness and its stated error at each printed place."""
    radius = [r for r, _ in CARD[diameter_mm]]
    bar = quenched_bar(CARD_WT_PCT, diameter_mm, "oil", HEAT_C)
    return np.interp(radius, bar.radius_mm, bar.hrc), np.interp(
        radius, bar.radius_mm, bar.sd_hrc
    )


def by_catalogue(diameter_mm):
    """Return the hardness of the catalogue's steel, as the advice has it."""
    hrc = hrc_across("100cr6", "oil", diameter_mm, HEAT_C)
    radius = [2.0 * r / diameter_mm for r, _ in CARD[diameter_mm]]
    return np.interp(radius, PLACES[::-1], hrc[::-1])


def printed(diameter_mm):
    return np.array([hrc for _, hrc in CARD[diameter_mm]])


@pytest.mark.parametrize("diameter_mm", CARD)
def test_the_card_lies_within_the_interval(diameter_mm):
    hrc, sd = by_composition(diameter_mm)
    assert (np.abs(hrc - printed(diameter_mm)) < 1.645 * sd).all()


def test_bars_are_within_2_7_hrc_on_average():
    off = np.concatenate([by_composition(d)[0] - printed(d) for d in CARD])
    assert np.abs(off).mean() < 2.7


def test_the_advice_is_within_2_7_hrc_on_average():
    off = np.concatenate([by_catalogue(d) - printed(d) for d in CARD])
    assert np.abs(off).mean() < 2.7
