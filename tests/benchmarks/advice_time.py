"""Measure how long an advice takes: first ever, cold, warm, help; as seconds and as ratios.

    python tests/benchmarks/advice_time.py [PART.toml]

*First ever*: a fresh copy of the sources without bytecode. *Cold*: a new process with bytecode.
*Warm*: the same process, another part. The yardstick is the time this machine takes to import
the libraries alone, so that runs on different machines can be compared.
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
from pathlib import Path
from catalog import load_catalog
from selector import advise
from selector.output import advice_out
from selector.requirement import read_requirement
first, *others = [read_requirement(name) for name in sys.argv[1:]]
known = load_catalog()
advise(first, known)
for other in others:
    start = time.perf_counter()
    advice_out(advise(other, known)).model_dump_json()
    print(time.perf_counter() - start)
"""
LIBRARIES = "import skcriteria, scipy.stats, pydantic, pint, typer, rich"
RUN = "from selector.commands import main; main()"


def seconds(code: str, *arguments: str, cwd: Path = ROOT) -> float:
    """Return how long a new Python process takes to run a line of code."""
    start = time.perf_counter()
    subprocess.run(  # noqa: S603
        [sys.executable, "-c", code, *arguments], cwd=cwd, check=True, capture_output=True,
        env={**os.environ, "PYTHONPATH": str(cwd)},
    )  # fmt: skip
    return time.perf_counter() - start


def first_ever(part: Path) -> float:
    """Return the time of the first run of a fresh copy, no bytecode of ours yet."""
    with tempfile.TemporaryDirectory() as folder:
        for package in ("catalog", "selector", "ui"):
            shutil.copytree(
                ROOT / package,
                Path(folder) / package,
                ignore=shutil.ignore_patterns("__pycache__"),
            )
        return seconds(RUN, "advise", str(part), cwd=Path(folder))


def main() -> int:
    """Measure and print."""
    part = Path(sys.argv[1]) if len(sys.argv) > 1 else EXAMPLES / "starting-handle-dog.toml"
    parts = [str(part), *(str(path) for path in sorted(EXAMPLES.glob("*.toml")))]
    warm = subprocess.run(  # noqa: S603
        [sys.executable, "-c", WARM, *parts],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
    )
    libraries = statistics.median(seconds(LIBRARIES) for _ in range(REPEATS))
    cold = statistics.median(seconds(RUN, "advise", str(part)) for _ in range(REPEATS))
    found = {
        "libraries_alone_s": libraries,
        "first_ever_s": first_ever(part),
        "cold_s": cold,
        "warm_s": statistics.median(float(line) for line in warm.stdout.split()),
        "help_s": statistics.median(seconds(RUN, "--help") for _ in range(REPEATS)),
        "cold_over_libraries": cold / libraries,
    }
    sys.stdout.write(json.dumps({k: round(v, 3) for k, v in found.items()}, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
