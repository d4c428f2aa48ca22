"""Hold the advice against everyday parts and what the trade would take for them.

    python tests/benchmarks/everyday_parts.py [NAME ...]

Parts and workshops are invented; what a good hand would take, and what would make him angry, is
common practice without a source. A pattern names the options that serve, by their ids.
"""

import json
import re
import sys
from pathlib import Path

import numpy as np

from catalog import load_catalog
from selector.advice.advise import advise
from selector.requirement import requirement_from

PARTS = Path(__file__).with_suffix(".jsonl")


def accepted(option, part):
    """Return whether an option is one that a good hand would take."""
    low, high = part["hrc"] or (-np.inf, np.inf)
    hrc = float(np.median(option.judged.prediction.surface_hrc))
    fits = re.search(part["takes"], option.id) and low <= hrc <= high
    return bool(fits) and not re.search(part["never"], option.id)


def main(only):
    """Print a line a part, then how many first choices are right, and how many anger."""
    known, count = load_catalog(), np.zeros(4, dtype=int)
    for line in PARTS.read_text(encoding="utf-8").splitlines():
        part = json.loads(line)
        if only and part["name"] not in only:
            continue
        options = advise(requirement_from(part["asked"]), known).options
        good = [accepted(option, part) for option in options] or [False]
        angry = bool(options and re.search(part["never"], options[0].id))
        count += [1, good[0], any(good[:3]), angry]
        shown = ", ".join(option.id for option in options[:3])
        sys.stdout.write(f"{part['name']:18} {'first' * good[0]:6}{'ANGRY ' * angry}{shown}\n")
    sys.stdout.write(
        "{} parts: first choice right {}, one of three {}, angry {}\n".format(*count)
    )


if __name__ == "__main__":
    main(sys.argv[1:])
