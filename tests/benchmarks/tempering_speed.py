"""How long tempering takes: 120 steels, 40 temperatures, 512 draws, beside a plain loop.

Run by hand: `python tests/benchmarks/tempering_speed.py`. The loop is timed on a part of the
work and scaled up.
"""

import sys
from time import perf_counter

import numpy as np

from selector.metallurgy.tempering import tempered_hardness

STEELS, TEMPERATURES, DRAWS = 120, 40, 512
LOOPED = 2000
BUDGET_S = 0.3
HOUR_S = 3600.0


def compositions():
    """Return drawn compositions, each element of shape (steels, draws, 1)."""
    rng = np.random.default_rng(1)
    low_high = {"C": (0.2, 1.1), "Mn": (0.4, 1.4), "Si": (0.1, 0.4), "Cr": (0.0, 1.5)}
    low_high |= {"Ni": (0.0, 2.0), "Mo": (0.0, 0.3), "V": (0.0, 0.2)}
    shape = (STEELS, DRAWS, 1)
    return {element: rng.uniform(*ends, shape) for element, ends in low_high.items()}


def best_of(count, work):
    """Return the least time of some runs. [s]"""
    times = []
    for _ in range(count):
        start = perf_counter()
        work()
        times.append(perf_counter() - start)
    return min(times)


def measured():
    """Return the times of all readings by three ways. [s]"""
    steel = compositions()
    temperature_c = np.linspace(150.0, 650.0, TEMPERATURES)
    readings = STEELS * DRAWS * TEMPERATURES

    def by_steel():
        for k in range(STEELS):
            tempered_hardness({e: v[k] for e, v in steel.items()}, temperature_c, HOUR_S)

    def one_by_one():
        flat = {element: values.ravel() for element, values in steel.items()}
        for k in range(LOOPED):
            one = {element: float(values[k]) for element, values in flat.items()}
            tempered_hardness(one, float(temperature_c[k % TEMPERATURES]), HOUR_S)

    arrays_s = best_of(5, by_steel)
    whole_s = best_of(3, lambda: tempered_hardness(steel, temperature_c, HOUR_S))
    loop_s = best_of(1, one_by_one) * readings / LOOPED
    return {"steel by steel": arrays_s, "all at once": whole_s, "reading by reading": loop_s}


def main():
    arrays_s, whole_s, loop_s = measured().values()
    readings = STEELS * DRAWS * TEMPERATURES
    out = sys.stdout.write
    out(f"{readings / 1e6:.2f} million readings\n")
    out(f"steel by steel {arrays_s:.2f} s, all at once {whole_s:.2f} s, budget {BUDGET_S} s\n")
    out(f"reading by reading {loop_s:.0f} s, {loop_s / min(arrays_s, whole_s):.0f} times\n")


if __name__ == "__main__":
    main()
