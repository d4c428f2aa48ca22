"""Print where the first choice changes as three parts grow from 4 to 80 mm.

    python tests/benchmarks/diameter_sweep.py [PIN CHISEL SHAFT ...]

A line a change of steel, route, bath or means of tempering: each should be one that a sentence
explains. Parts are invented.
"""

import sys
from typing import Any

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.order import why_not_first
from selector.decision.option import Option
from selector.job.treatment import Treatment
from selector.requirement import requirement_from

SIZES_MM = (4, 5, 6, 8, 10, 12, 14, 16, 18, 20, 22, 25, 28, 32, 36, 40, 45, 50, 56, 63, 71, 80)
TORCH = {
    "heat": [{"source": "oxy-propane"}, {"source": "kitchen-oven", "ceiling": "250 degC"}],
    "bath": [{"medium": "water"}, {"medium": "oil"}],
    "measure": ["eye", "magnet"],
    "light": "dim",
    "turns_part": True,
    "held_by": "lathe",
}


def _two(name: str, size: float, wear: dict[str, Any], impact: str) -> dict[str, Any]:
    """Return a part of two like stretches, the first worked."""
    return {
        "safety_use": "none",
        "part": {
            "name": name,
            "section": [
                {"shape": "round", "size": size, "length": 1.5 * size},
                {"shape": "round", "size": size, "length": 6 * size},
            ],
        },
        "zone": [{"section": [1], **wear}, {"section": [2], "wear": "none"}],
        "load": {"impact": impact, "cycles": "occasional"},
        "workshop": TORCH,
    }


def parts(size: float) -> dict[str, dict[str, Any]]:
    """Return the three parts at a diameter in mm, as data."""
    pin = _two("Pivot pin", size, {"wear": "sliding", "severity": "medium"}, "none")
    chisel = _two(
        "Cold chisel", size, {"wear": "edge-impact", "severity": "medium"}, "hammered"
    )
    shaft = _two("Shaft", size, {"wear": "sliding", "severity": "light"}, "light")
    # As much torque as keeps the same stress in it. [N m]
    shaft["load"] |= {"torque": f"{0.04 * size**3:.3f} N m", "cycles": "fatigue"}
    return {"PIN": pin, "CHISEL": chisel, "SHAFT": shaft}


def way(work: Treatment) -> tuple[str, str, str]:
    """Return steel, route and bath."""
    return work.steel.spoken, work.route.slug, work.medium.slug if work.medium else "-"


def choice(option: Option) -> tuple[str, str, str, str]:
    """Return what counts as a change: steel, route, bath, means of tempering."""
    return *way(option.treatment), option.choice.temper.means


def main(names: list[str]) -> None:
    """Print a line for each change of the first choice."""
    known = load_catalog()
    for name in names or list(parts(10.0)):
        before: tuple[str, str, str, str] | None = None
        for size in SIZES_MM:
            advice = advise(requirement_from(parts(float(size))[name]), known)
            now = choice(advice.options[0]) if advice.options else ("none", "-", "-", "-")
            if now != before:
                sys.stdout.write(f"{name} {size} mm: {', '.join(now)}\n")
                gone = [o for o in advice.options if choice(o) == before]
                if gone:
                    sys.stdout.write(f"    no longer: {why_not_first(advice, gone[0])}\n")
                out = [r for r in advice.rejected if before and way(r.treatment) == before[:3]]
                if out and not gone:
                    sys.stdout.write(f"    no longer: {out[0].gate.text}\n")
            before = now


if __name__ == "__main__":
    main(sys.argv[1:])
