"""Measure how long an advice takes: first ever, cold, warm, help; in seconds and as ratios.

    python tests/benchmarks/advice_time.py [PART.toml]

*First ever*: a fresh copy of the sources, without bytecode and compiled loops. *Cold*: a new
process with both. *Warm*: the same process, other parts. The yardstick is what this machine
takes to import the libraries that an advice needs, so that machines can be compared; `cpu` is
processor time, which a busy machine disturbs less than the clock.
"""

import json
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "catalog" / "examples"
REPEATS = 5

WARM = """
import sys, time
from catalog import load_catalog
from selector import advise
from selector.advice.output import advice_out
from selector.requirement import read_requirement
first, *others = [read_requirement(name) for name in sys.argv[1:]]
known = load_catalog()
advice_out(advise(first, known)).model_dump_json()
for other in others:
    clock, cpu = time.perf_counter(), time.process_time()
    advice_out(advise(other, known)).model_dump_json()
    print(time.perf_counter() - clock, time.process_time() - cpu)
"""
STEELS = "from catalog import load_catalog; print(len(load_catalog().steels))"
LIBRARIES = (
    "import numpy, scipy.stats, scipy.interpolate, skcriteria, numba, pydantic, pint, "
    "typer, rich"
)
RUN = "from selector.commands import main; main()"
Times = tuple[float, float]


def run(code: str, *arguments: str, cwd: Path = ROOT) -> tuple[Times, str]:
    """Return clock and processor seconds of a new Python process, and what it prints."""
    job = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    if cwd != ROOT:
        job["NUMBA_CACHE_DIR"] = str(cwd / "compiled")
    clock, before = time.perf_counter(), os.times()
    done = subprocess.run(  # noqa: S603
        [sys.executable, "-c", code, *arguments], cwd=cwd, check=True, capture_output=True,
        text=True, env={**job, "PYTHONPATH": str(cwd)},
    )  # fmt: skip
    after = os.times()
    cpu = after.children_user + after.children_system
    cpu -= before.children_user + before.children_system
    return (time.perf_counter() - clock, cpu), done.stdout


def middle(found: list[Times]) -> Times:
    """Return the medians of clock and processor time."""
    return statistics.median(t for t, _ in found), statistics.median(c for _, c in found)


def repeated(code: str, *arguments: str) -> Times:
    """Return the middle of several runs, the first of which warms the caches."""
    run(code, *arguments)
    return middle([run(code, *arguments)[0] for _ in range(REPEATS)])


def first_ever(part: Path) -> Times:
    """Return the time of the first run of a fresh copy, no bytecode of ours yet."""
    with tempfile.TemporaryDirectory() as folder:
        for package in ("catalog", "selector", "ui"):
            shutil.copytree(
                ROOT / package,
                Path(folder) / package,
                ignore=shutil.ignore_patterns("__pycache__"),
            )
        return run(RUN, "advise", str(part), cwd=Path(folder))[0]


def warm(part: Path) -> Times:
    """Return the time of another part in the same process, the middle of the examples."""
    others = [str(path) for path in sorted(EXAMPLES.glob("*.toml")) if path != part.resolve()]
    lines = run(WARM, str(part), *others)[1].splitlines()
    return middle([(float(t), float(c)) for t, c in (line.split() for line in lines)])


def main() -> int:
    """Measure and print."""
    part = Path(sys.argv[1]) if len(sys.argv) > 1 else EXAMPLES / "starting-handle-dog.toml"
    yardstick = repeated(LIBRARIES)
    found = {
        "libraries": yardstick,
        "first_ever": first_ever(part),
        "cold": repeated(RUN, "advise", str(part)),
        "warm": warm(part),
        "help": repeated(RUN, "--help"),
    }
    table = {
        name: {
            "clock_s": round(clock, 3),
            "cpu_s": round(cpu, 3),
            "cpu_over_libraries": round(cpu / yardstick[1], 2),
        }
        for name, (clock, cpu) in found.items()
    }
    steels = int(run(STEELS)[1])
    sys.stdout.write(json.dumps({"steels": steels, **table}, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
