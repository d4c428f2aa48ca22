"""G. Roberts, G. Krauss and R. Kennedy, Tool Steels, 5th ed., ASM, 1998, Table 7-3, read:
critical diameter, as observed, of heats of W-type steel in brine (H = 5), half martensite at
the centre.

None of it was used in a fit. A forecast agrees whose 90 % interval, that of the critical time,
holds the diameter; nickel and molybdenum of a few hundredths are left out.
"""

import numpy as np
import pytest

from selector.hardening.quenched_bar import CRITICAL_LOG_SD, quenched_bar
from selector.metallurgy.hardenability import critical_cooling_time

# Carbon, manganese, silicon, chromium; critical diameter in mm.
HEATS = [
    (1.02, 0.09, 0.03, 0.05, 3.8),
    (1.07, 0.15, 0.09, 0.05, 5.1),
    (1.03, 0.28, 0.15, 0.04, 8.9),
    (1.00, 0.24, 0.17, 0.09, 11.4),
    (1.07, 0.34, 0.22, 0.10, 11.4),
    (1.09, 0.26, 0.26, 0.17, 11.4),
    (1.04, 0.29, 0.16, 0.15, 12.7),
    (1.00, 0.31, 0.28, 0.13, 15.2),
    (0.97, 0.46, 0.29, 0.17, 20.3),
    (0.99, 0.36, 0.31, 0.15, 19.1),
    (0.98, 0.50, 0.37, 0.23, 22.9),
    (0.94, 0.45, 0.36, 0.21, 25.4),
]
LEAN = "Nearly pure iron and carbon: what copper and nickel bar usually holds is presumed."
HEAT_C, HALF_HRC = 790.0, 54.0
TRIED_MM = np.geomspace(3.0, 60.0, 16)
# The diameter goes about with this power of the critical time. [-]
DIAMETER_POWER = 0.6


def test_critical_time_ranks_the_heats():
    times = [
        float(critical_cooling_time({"C": 0.88, "Mn": m, "Cr": r})) for _, m, _, r, _ in HEATS
    ]
    diameters = [d for *_, d in HEATS]
    pairs = [(i, j) for i in range(len(HEATS)) for j in range(i) if diameters[i] > diameters[j]]
    in_order = sum(times[i] > times[j] for i, j in pairs)
    assert in_order >= 0.9 * len(pairs)


def test_critical_time_grows_over_the_table():
    """A 6.7 times larger diameter in brine stands for a several times longer critical time."""
    first, last = HEATS[0], HEATS[-1]
    ratio = critical_cooling_time(
        {"C": 0.88, "Mn": last[1], "Cr": last[3]}
    ) / critical_cooling_time({"C": 0.88, "Mn": first[1], "Cr": first[3]})
    assert 4.0 < float(ratio) < 6.7**2


@pytest.mark.parametrize(
    "heat",
    [
        pytest.param(
            heat,
            id=f"{heat[4]} mm, {heat[0]} C {heat[1]} Mn",
            marks=pytest.mark.xfail(strict=True, reason=LEAN) if heat[1] < 0.2 else (),
        )
        for heat in HEATS
    ],
)
def test_a_bar_is_half_hard_at_its_centre(heat):
    carbon, manganese, silicon, chromium, printed_mm = heat
    steel = {"C": carbon, "Mn": manganese, "Si": silicon, "Cr": chromium}
    bars = [quenched_bar(steel, d, "brine", HEAT_C, agitation="violent") for d in TRIED_MM]
    centre_hrc = np.array([bar.hrc[0] for bar in bars])
    half_mm = np.exp(np.interp(-HALF_HRC, -centre_hrc, np.log(TRIED_MM)))
    reach = np.exp(1.645 * DIAMETER_POWER * CRITICAL_LOG_SD)
    assert half_mm / reach <= printed_mm <= half_mm * reach
