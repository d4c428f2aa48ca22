"""G. Roberts, G. Krauss and R. Kennedy, Tool Steels, 5th ed., ASM, 1998, Table 7-3: critical
diameter of W-type heats in brine (H = 5).

The diameters are compared in order only: how a bar cools in brine belongs to another package.
"""

from selector.metallurgy.hardenability import critical_cooling_time

# Carbon, manganese, chromium; critical diameter in mm.
HEATS = [
    (1.02, 0.09, 0.05, 3.8),
    (1.07, 0.15, 0.05, 5.1),
    (1.03, 0.28, 0.04, 8.9),
    (1.00, 0.24, 0.09, 11.4),
    (1.07, 0.34, 0.10, 11.4),
    (1.04, 0.29, 0.15, 12.7),
    (1.00, 0.31, 0.13, 15.2),
    (0.97, 0.46, 0.17, 20.3),
    (0.98, 0.50, 0.23, 22.9),
    (0.94, 0.45, 0.21, 25.4),
]


def test_critical_time_ranks_the_heats():
    times = [
        float(critical_cooling_time({"C": 0.88, "Mn": m, "Cr": r})) for _, m, r, _ in HEATS
    ]
    diameters = [d for *_, d in HEATS]
    pairs = [(i, j) for i in range(len(HEATS)) for j in range(i) if diameters[i] > diameters[j]]
    in_order = sum(times[i] > times[j] for i, j in pairs)
    assert in_order >= 0.9 * len(pairs)


def test_critical_time_grows_over_the_table():
    """A 6.7 times larger diameter in brine stands for a several times longer critical time."""
    first, last = HEATS[0], HEATS[-1]
    ratio = critical_cooling_time(
        {"C": 0.88, "Mn": last[1], "Cr": last[2]}
    ) / critical_cooling_time({"C": 0.88, "Mn": first[1], "Cr": first[2]})
    assert 4.0 < float(ratio) < 6.7**2
