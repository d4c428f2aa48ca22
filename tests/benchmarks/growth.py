"""Measure advice and flame verdict as the catalogue grows: processor seconds and memory.

    python tests/benchmarks/growth.py [PART.toml] [STEELS ...]

Steels beyond the shipped ones are copies with each limit of the analysis moved by up to a
twentieth, the same for each number. Every size runs in a process of its own, which has advised
on another part before: *warm*, but for what the part itself needs. The growth is the exponent
between one size and the next; the yardstick is one pass over a million numbers.
"""

import json
import os
import resource
import subprocess
import sys
import time
from collections.abc import Iterable, Iterator
from dataclasses import replace
from itertools import pairwise
from math import log
from pathlib import Path
from random import Random
from types import MappingProxyType

import numpy as np

from catalog import Catalog, load_catalog
from catalog.steel import Steel

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "catalog" / "examples"
STEELS = (200, 400)


def jittered(steel: Steel, number: int) -> Steel:
    """Return a copy of a steel under another name, its analysis moved a little."""
    dice = Random(f"{steel.slug} {number}")  # noqa: S311 - nothing here is secret
    analysis = {}
    for element, span in steel.composition_wt_pct.items():
        share = 1.0 + 0.05 * dice.uniform(-1.0, 1.0)
        ends = {end: getattr(span, end) for end in ("min", "max")}
        moved = {end: None if v is None else share * v for end, v in ends.items()}
        analysis[element] = span.model_copy(update=moved)
    name = {"slug": f"{steel.slug}-copy-{number}", "name": f"{steel.name} copy {number}"}
    return steel.model_copy(update={**name, "composition_wt_pct": analysis})


def grown(known: Catalog, count: int) -> Catalog:
    """Return the catalogue with so many steels; no more is bought of what nobody names."""
    sold = [steel for steel in known.steels.values() if steel.kind != "unknown"]
    steels = dict(known.steels)
    for place in range(max(count - len(steels), 0)):
        copy = jittered(sold[place % len(sold)], place // len(sold))
        steels[copy.slug] = copy
    return replace(known, steels=MappingProxyType(steels))


def one_size(part: Path, count: int) -> dict[str, float]:
    """Return the times and the memory of one size, in this process."""
    from selector import advise  # noqa: PLC0415 - measured by itself elsewhere
    from selector.advice.output import advice_out  # noqa: PLC0415
    from selector.flame.answer import flame_answer  # noqa: PLC0415
    from selector.requirement import read_requirement  # noqa: PLC0415
    from selector.versus.versus import versus  # noqa: PLC0415

    other = next(path for path in sorted(EXAMPLES.glob("*.toml")) if path != part)
    known, asked = grown(load_catalog(), count), read_requirement(part)
    advise(read_requirement(other), known)
    times = [time.process_time()]
    advice = advise(asked, known)
    times.append(time.process_time())
    size = len(advice_out(advice).model_dump_json())
    times.append(time.process_time())
    flame_answer(asked, known)
    times.append(time.process_time())
    versus(asked, *(option.id for option in advice.options[:2]), known)
    times.append(time.process_time())
    spent = [after - before for before, after in pairwise(times)]
    numbers, start = np.linspace(0.0, 1.0, 1_000_000), time.process_time()
    np.log(np.exp(numbers))
    return {
        "steels": len(known.steels),
        "advise_s": round(spent[0], 3),
        "record_s": round(spent[1], 3),
        "flame_s": round(spent[2], 3),
        "versus_s": round(spent[3], 3),
        "advise_over_pass": round(spent[0] / (time.process_time() - start), 1),
        "record_mb": round(size / 1e6, 2),
        "peak_mb": round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024),
    }


def each_size(part: Path, counts: Iterable[int]) -> Iterator[dict[str, float]]:
    """Yield what `one_size` measures of each size, in a process of its own."""
    for count in counts:
        done = subprocess.run(  # noqa: S603
            [sys.executable, __file__, str(part), str(count)], check=True, text=True,
            stdout=subprocess.PIPE, cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT), "GROWTH_ONE": "1"},
        )  # fmt: skip
        yield json.loads(done.stdout)


def powers(found: list[dict[str, float]], name: str) -> list[float]:
    """Return the exponent by which a figure grows from one size to the next."""
    return [
        round(log(b[name] / a[name]) / log(b["steels"] / a["steels"]), 2)
        for a, b in pairwise(found)
    ]


def main() -> int:
    """Measure each size and print them with their growth."""
    files = [text for text in sys.argv[1:] if not text.isdigit()]
    counts = [int(text) for text in sys.argv[1:] if text.isdigit()] or STEELS
    part = (Path(files[0]) if files else EXAMPLES / "starting-handle-dog.toml").resolve()
    if os.environ.get("GROWTH_ONE"):
        sys.stdout.write(json.dumps(one_size(part, counts[0])))
        return 0
    found = []
    for size in each_size(part, counts):
        found.append(size)
        sys.stdout.write(f"{size}\n")
    for name in ("advise_s", "flame_s"):
        sys.stdout.write(f"{name}: grows with the power {powers(found, name)}\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
