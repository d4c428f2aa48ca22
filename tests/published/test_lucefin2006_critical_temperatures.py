"""Lucefin Group, technical cards of C45E (EN 10083-2:2006), 42CrMo4 (2006 edition, revised
2024) and 16MnCr5: critical temperatures.

Cards and the ASM table differ by 15 °C in Ac1 for 42CrMo4 and 4140 (745 and 730). Held to two
of the model's stated errors, the cards together to a mean absolute error.
"""

import numpy as np
import pytest

from selector.metallurgy.transformation import critical_temperatures
from tests.printed import agrees

C45E = {"C": 0.46, "Mn": 0.65, "Si": 0.25}
CHROMOLY_42 = {"C": 0.415, "Mn": 0.75, "Si": 0.25, "Cr": 1.05, "Mo": 0.22}
CASE_16 = {"C": 0.165, "Mn": 1.15, "Si": 0.25, "Cr": 0.95}
CARDS = {
    "C45E Ac1": (C45E, "ac1_c", "735"),
    "C45E Ac3": (C45E, "ac3_c", "780"),
    "C45E Ms": (C45E, "ms_c", "350"),
    "C45E Mf": (C45E, "mf_c", "120"),
    "42CrMo4 Ac1": (CHROMOLY_42, "ac1_c", "745"),
    "42CrMo4 Ac3": (CHROMOLY_42, "ac3_c", "790"),
    "42CrMo4 Ms": (CHROMOLY_42, "ms_c", "335"),
    "42CrMo4 Mf, 2006": (CHROMOLY_42, "mf_c", "120"),
    "42CrMo4 Mf, 2024": (CHROMOLY_42, "mf_c", "80"),
    "16MnCr5 core Ac1": (CASE_16, "ac1_c", "740"),
    "16MnCr5 core Ac3": (CASE_16, "ac3_c", "840"),
    "16MnCr5 core Ms": (CASE_16, "ms_c", "400"),
}


@pytest.mark.parametrize(("steel", "line", "printed"), CARDS.values(), ids=CARDS)
def test_card(steel, line, printed):
    lines = critical_temperatures(steel)
    error = float(getattr(lines, f"sd_{line}"))
    assert agrees(float(getattr(lines, line)), printed, scatter=2.0 * error)


@pytest.mark.parametrize(("line", "goal"), [("ac1_c", 10.0), ("ac3_c", 12.0), ("ms_c", 15.0)])
def test_mean_error_of_the_cards(line, goal):
    misses = [
        abs(float(getattr(critical_temperatures(steel), line)) - float(printed))
        for steel, which, printed in CARDS.values()
        if which == line
    ]
    assert np.mean(misses) <= goal
