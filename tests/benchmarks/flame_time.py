"""Measure the flame verdict and the quenched bar, as seconds and as ratios to one history.

    python tests/benchmarks/flame_time.py

The yardstick is one quench history of a 25 mm bar, so that machines can be compared.
"""

import json
import sys
import time
from collections.abc import Callable
from pathlib import Path

from catalog import load_catalog
from selector.flame.answer import flame_answer
from selector.hardening.bar_cooling import bar_cooling
from selector.hardening.quenched_bar import quenched_bar
from selector.heat.boiling import Bath
from selector.requirement import read_requirement

PART = Path(__file__).parents[2] / "catalog" / "examples" / "starting-handle-dog.toml"
C45 = {"C": 0.46, "Si": 0.25, "Mn": 0.65}


def shortest_s(work: Callable[[], object], repeats: int = 5) -> float:
    """Return the shortest of a few runs, the first of which compiles and is dropped."""
    work()
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def main() -> int:
    """Measure and print."""
    asked, known = read_requirement(PART), load_catalog()
    history = shortest_s(lambda: bar_cooling(25.0, Bath("oil"), 850.0))
    bar = shortest_s(lambda: quenched_bar(C45, 25.0, "oil", 840.0))
    family = shortest_s(lambda: flame_answer(asked, known, "42CrMo4"))
    found = {
        "history_s": history,
        "quenched_bar_s": bar,
        "one_family_s": family,
        "quenched_bar_over_history": bar / history,
        "one_family_over_history": family / history,
    }
    sys.stdout.write(json.dumps({k: round(v, 4) for k, v in found.items()}, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
