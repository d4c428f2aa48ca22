"""Measure all that somebody waits for, in one run: one table, and the same as JSON.

    python -m tests.benchmarks.speed [--steels 70 150 1000] [--parts 12] [--solvers]

Commands are started anew: *first ever* from a fresh copy of the sources, the rest with what the
runs before have kept. Growth is measured on copies of the shipped steels, as `growth.py` makes
them, in warm processes; its exponent is that of the largest size over the smallest. `cpu_s` is
processor time; `over_libraries` sets it beside what this machine takes to import the libraries.
`--solvers` adds heat histories and tempering beside general methods, which takes minutes.
"""

import argparse
import json
import os
import platform
import resource
import sys
from pathlib import Path
from typing import Any

from tests.benchmarks import advice_time, batch_speed, growth
from tests.benchmarks.advice_time import EXAMPLES, LIBRARIES, RUN, first_ever, repeated

PART = EXAMPLES / "starting-handle-dog.toml"
STEELS = (70, 150, 1000)
COLUMNS = ("what", "steels", "parts", "clock_s", "cpu_s", "over_libraries", "peak_mb", "note")
OPTIONS = (
    "42crmo4/annealed/local-torch.oil/oven-225c-60min",
    "c45/cold-drawn/through-torch.warm-water/oven-225c-60min",
)
Row = dict[str, Any]


def row(what: str, times: tuple[float, float], **more: Any) -> Row:
    """Return a row of clock and processor seconds."""
    return {"what": what, "clock_s": round(times[0], 2), "cpu_s": round(times[1], 2), **more}


def commands() -> list[Row]:
    """Return what each command takes, started anew over the shipped catalogue."""
    part = str(PART)
    asked = {
        "help": ("--help",),
        "need": ("need", part),
        "steels": ("steels", "EN24"),
        "advise, cold": ("advise", part),
        "flame": ("flame", part),
        "versus": ("versus", part, *OPTIONS),
    }
    rows = [
        row("libraries", repeated(LIBRARIES)),
        row("advise, first ever", first_ever(PART)),
        row("advise, warm", advice_time.warm(PART), note="the middle of the other examples"),
    ]
    rows += [row(name, repeated(RUN, *arguments)) for name, arguments in asked.items()]
    largest = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
    rows[-1]["note"] = f"the largest of all these processes took {largest:.0f} MB"
    return rows


def by_size(counts: list[int]) -> list[Row]:
    """Return advice, flame and comparison over catalogues of several sizes; their growth."""
    found = list(growth.each_size(PART, counts))
    names = {"advise_s": "advise", "flame_s": "flame", "versus_s": "versus"}
    rows = []
    for key, name in names.items():
        for size in found:
            held = {"steels": size["steels"], "peak_mb": size["peak_mb"]}
            rows.append({"what": f"{name}, warm", "cpu_s": size[key], **held})
        if len(found) > 1:
            power = growth.powers([found[0], found[-1]], key)[0]
            rows[-1]["note"] = f"grows with the power {power} of the steels"
    return rows


def solvers() -> list[Row]:
    """Return a heat history beside general solvers, and tempering beside a plain loop."""
    from tests.benchmarks import conduction_speed, tempering_speed  # noqa: PLC0415 - compile

    process = conduction_speed.Process(32.0, conduction_speed.SHORT, 160.0)
    process.run()
    _, taken_ms, error = conduction_speed.ladder(process)
    rows = [row("heat history", (taken_ms / 1e3, taken_ms / 1e3), note=f"error {error:.2f} K")]
    for name, ratio in conduction_speed.others(process, taken_ms, error).items():
        rows.append({"what": name, "note": f"{ratio:.0f} times the heat history"})
    ways = tempering_speed.measured()
    rows += [row(f"tempering, {name}", (s, s)) for name, s in ways.items()]
    return rows


def with_ratio(rows: list[Row]) -> list[Row]:
    """Return rows with their processor time over that of importing the libraries."""
    yardstick = next(r["cpu_s"] for r in rows if r["what"] == "libraries")
    return [
        {**r, "over_libraries": round(r["cpu_s"] / yardstick, 2)} if "cpu_s" in r else r
        for r in rows
    ]


def table(rows: list[Row]) -> str:
    """Return rows as a table of plain text."""
    cells = [COLUMNS, *([str(r.get(name, "")) for name in COLUMNS] for r in rows)]
    widths = [max(len(line[k]) for line in cells) for k in range(len(COLUMNS))]
    return "\n".join(
        "  ".join(cell.ljust(wide) for cell, wide in zip(line, widths, strict=True)).rstrip()
        for line in cells
    )


def machine() -> Row:
    """Return what the figures were measured on."""
    return {
        "machine": platform.platform(),
        "processor": platform.processor() or platform.machine(),
        "cores": os.cpu_count(),
        "python": platform.python_version(),
        "load_before": round(os.getloadavg()[0], 1) if hasattr(os, "getloadavg") else None,
    }


def main() -> int:
    """Measure, print the table and write the JSON."""
    read = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    read.add_argument("--steels", type=int, nargs="*", default=STEELS)
    read.add_argument("--parts", type=int, default=batch_speed.PARTS)
    read.add_argument("--repeats", type=int, default=advice_time.REPEATS)
    read.add_argument("--solvers", action="store_true")
    read.add_argument("--out", type=Path, default=Path("speed.json"))
    given = read.parse_args()
    advice_time.REPEATS = given.repeats
    on = machine()
    rows = commands()
    rows += by_size(list(given.steels)) if given.steels else []
    rows += batch_speed.measured(given.parts) if given.parts else []
    rows += solvers() if given.solvers else []
    rows = with_ratio(rows)
    given.out.write_text(json.dumps({**on, "rows": rows}, indent=1) + "\n", encoding="utf-8")
    sys.stdout.write(f"{on}\n\n{table(rows)}\n\nWritten: {given.out}\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
