"""Print where the first choice changes as three parts grow from 4 to 80 mm.

    python tests/benchmarks/diameter_sweep.py [PIN CHISEL SHAFT ...]

A line a change of steel, route, bath or means of tempering: each should be one that a sentence
explains. Parts are invented.
"""

import sys
from collections.abc import Iterator
from typing import Any

from catalog import load_catalog
from selector.advice.advise import Advice, advise
from selector.advice.order import why_not_first
from selector.decision.option import Option
from selector.decision.preference import HANDICAP
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


def reasons(before: Advice, after: Advice) -> Iterator[str]:
    """Yield why the old first choice is no longer first, and why the new one was not before."""
    if not after.options:
        tried = [r for r in after.rejected if r.gate.share is not None]
        near = max(tried, key=lambda item: (item.share, item.gate.name == "heating"))
        yield f"nothing serves: {near.treatment.steel.spoken}: {near.gate.text}"
    if not before.options or not after.options:
        return
    old, new = before.options[0], after.options[0]
    yield f"no longer: {_why_not(after, old)}"
    yield f"not before: {_why_not(before, new)}"


def _why_not(advice: Advice, other: Option) -> str:
    """Return why an advice does not begin with what begins another."""
    first, made = advice.options[0], way(other.treatment)
    exact = [o for o in advice.options if choice(o) == choice(other)]
    alike = [o for o in advice.options if way(o.treatment)[:2] == made[:2]]
    refused = [r.gate.text for r in advice.rejected if way(r.treatment) == made]
    left = next(iter(exact or alike), None)
    if left is first and way(first.treatment) == made:
        here, there = first.choice.temper, other.choice.temper
        return (
            f"tempered by {here.means} at {here.temperature_c:.0f} °C, not by {there.means}: a "
            f"{there.means} must gain {HANDICAP[there.means]:g} in score, a {here.means} "
            f"{HANDICAP[here.means]:g}"
        )
    if refused and not exact:
        return refused[0]
    if left is None or left is first:
        return f"{first.treatment.steel.spoken} stands in its place"
    return why_not_first(advice, left)


def main(names: list[str]) -> None:
    """Print a line for each change of the first choice, and why."""
    known = load_catalog()
    for name in names or list(parts(10.0)):
        before: Advice | None = None
        for size in SIZES_MM:
            advice = advise(requirement_from(parts(float(size))[name]), known)
            now = choice(advice.options[0]) if advice.options else ("none", "-", "-", "-")
            was = choice(before.options[0]) if before and before.options else None
            if now != was:
                sys.stdout.write(f"{name} {size} mm: {', '.join(now)}\n")
                for text in reasons(before, advice) if before else ():
                    sys.stdout.write(f"    {text}\n")
            sys.stdout.flush()
            before = advice


if __name__ == "__main__":
    main(sys.argv[1:])
