"""How well every model does on measured figures: bias, error and how many its intervals hold.

Run by hand from the top folder: `python tests/benchmarks/calibration.py`; `--markdown` prints
the short table that stands in calibration.md, words after it name the topics wanted. Each topic
is a module `calibration_*.py` beside this file with a function `readings()`.
"""

import argparse
import importlib
import sys
from collections import defaultdict
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
sys.path.insert(0, str(HERE.parents[1]))
NOT_TOPICS = {"calibration_reading"}
# A split into more than this is a list, not a table.
MOST_PARTS = 40


def topics(wanted=()):
    """Return the names of the topics, without their common beginning."""
    found = {path.stem for path in HERE.glob("calibration_*.py")} - NOT_TOPICS
    names = sorted(name.removeprefix("calibration_") for name in found)
    return [name for name in names if not wanted or name in wanted]


def gathered(names):
    """Return the readings of the topics by model, in order."""
    by_model = defaultdict(list)
    for name in names:
        topic = importlib.import_module(f"tests.benchmarks.calibration_{name}")
        for reading in topic.readings():
            by_model[reading.model, reading.unit].append(reading)
    return by_model


def summary(readings):
    """Return number, bias, mean absolute error and share inside 50 and 90 %."""
    columns = ("measured", "p05", "p25", "p50", "p75", "p95")
    measured, p05, p25, p50, p75, p95 = np.array(
        [[getattr(reading, name) for name in columns] for reading in readings]
    ).T
    miss = p50 - measured
    half = np.mean((p25 <= measured) & (measured <= p75))
    most = np.mean((p05 <= measured) & (measured <= p95))
    return len(readings), miss.mean(), np.abs(miss).mean(), half, most


def factor(readings):
    """Return the mean factor, to either side, by which depths are missed; None of hardness."""
    if any(reading.unit != "mm" for reading in readings):
        return None
    pairs = np.array([(reading.p50, reading.measured) for reading in readings])
    return float(np.exp(np.abs(np.diff(np.log(pairs))).mean()))


def line(label, readings):
    """Return one row of a table."""
    count, bias, error, half, most = summary(readings)
    return f"  {label:<46}{count:>6}{bias:>+9.2f}{error:>9.2f}{half:>7.0%}{most:>7.0%}"


def fitted_on(readings):
    """Return which of the readings a fit has seen, in words."""
    seen = [reading for reading in readings if reading.fitted]
    if not seen:
        return "none seen in a fit"
    if len(seen) == len(readings):
        return "all seen in a fit"
    names = sorted({reading.group.get("laboratory", "unnamed") for reading in seen})
    return f"{len(seen)} seen in a fit: {', '.join(names)}"


def parts(readings):
    """Yield each split of the readings: its name, and the readings by part."""
    for name in dict.fromkeys(key for reading in readings for key in reading.group):
        by_part = defaultdict(list)
        for reading in readings:
            by_part[reading.group.get(name, "not said")].append(reading)
        if 1 < len(by_part) <= MOST_PARTS:
            yield name, dict(sorted(by_part.items()))


def report(by_model):
    """Yield the lines of the full report."""
    heading = f"{'n':>6}{'bias':>9}{'error':>9}{'50 %':>7}{'90 %':>7}"
    for (model, unit), readings in by_model.items():
        yield f"{model}, {unit} ({fitted_on(readings)})"
        yield f"  {'':<46}{heading}"
        yield line("all", readings)
        times = factor(readings)
        if times is not None:
            yield f"  missed by a factor of {times:.2f} on average"
        for name, by_part in parts(readings):
            yield f"  by {name}"
            yield from (line(f"  {part}", some) for part, some in by_part.items())
        yield ""


def markdown(by_model):
    """Yield the lines of the short table."""
    yield "| model | unit | readings | in a fit | bias | error | factor | in 50 % | in 90 % |"
    yield "|---|---|---|---|---|---|---|---|---|"
    for (model, unit), readings in by_model.items():
        count, bias, error, half, most = summary(readings)
        seen = sum(reading.fitted for reading in readings)
        times = factor(readings)
        missed = "" if times is None else f"{times:.2f}"
        yield (
            f"| {model} | {unit} | {count} | {seen} | {bias:+.2f} | {error:.2f} "
            f"| {missed} | {half:.0%} | {most:.0%} |"
        )


def main():
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("topic", nargs="*", help="topics wanted; all, if none is named")
    parser.add_argument("--markdown", action="store_true", help="the short table alone")
    asked = parser.parse_args()
    by_model = gathered(topics(asked.topic))
    lines = markdown(by_model) if asked.markdown else report(by_model)
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
