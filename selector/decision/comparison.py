"""What other methods say of the same options, by scikit-criteria, in this process or a second.

The library takes longer to load than an advice takes to compute, so the command line has a
second process load it meanwhile: `ahead`.
"""

import json
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import asdict, dataclass
from importlib.abc import MetaPathFinder
from importlib.machinery import ModuleSpec, PathFinder
from importlib.util import LazyLoader
from types import ModuleType
from typing import Any

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
# A tiny floor keeps the weighted sum's demand for positive values.
FLOOR = 1e-6
# What the library loads to draw with.
DRAWING = ("seaborn",)


@dataclass(frozen=True, slots=True)
class Comparison:
    """The order another method gives to the same options; places count from 1."""

    method: str
    places: tuple[int, ...]


Compare = Callable[[Floats, Floats], tuple[Comparison, ...]]


def other_methods(merit: Floats, weights: Floats) -> tuple[Comparison, ...]:
    """Return the order by other methods of the same options, as a check on the method.

    Parameters
    ----------
    merit : ndarray
        Expected merits; shape (options, criteria). [-]
    weights : ndarray
        Weights; shape (criteria,). [-]

    Returns
    -------
    tuple of Comparison
        Weighted sum, TOPSIS and SPOTIS by scikit-criteria; empty where there is no order.
    """
    import skcriteria  # noqa: PLC0415 - slow to load
    from skcriteria.agg.rim import RIM  # noqa: PLC0415
    from skcriteria.agg.simple import WeightedSumModel  # noqa: PLC0415
    from skcriteria.agg.spotis import SPOTIS  # noqa: PLC0415
    from skcriteria.agg.topsis import TOPSIS  # noqa: PLC0415

    merit = np.clip(merit, FLOOR, 1)
    # Where nothing that carries weight sets them apart there is no order: TOPSIS divides by it.
    if len(merit) < 2 or not np.ptp(merit[:, weights > 0], axis=0).any():
        return ()
    count = merit.shape[1]
    matrix = skcriteria.mkdm(merit, [max] * count, weights=weights)
    unit = [(FLOOR, 1.0)] * count
    results: tuple[tuple[str, Any], ...] = (
        ("weighted sum", WeightedSumModel().evaluate(matrix)),
        ("TOPSIS", TOPSIS().evaluate(matrix)),
        ("SPOTIS", SPOTIS().evaluate(matrix, bounds=np.array(unit))),
        (
            "reference ideal at the expected values",
            RIM().evaluate(
                skcriteria.mkdm(matrix.matrix, [max] * count, weights=np.sqrt(weights)),
                ref_ideals=[(1.0, 1.0)] * count,
                ranges=[(0.0, 1.0)] * count,
            ),
        ),
    )
    return tuple(
        Comparison(name, tuple(int(place) for place in result.rank_))
        for name, result in results
    )


@contextmanager
def ahead() -> Iterator[Compare]:
    """Give `other_methods` done by a second process, which loads its library at once.

    Yields
    ------
    callable
        Takes and returns what `other_methods` does; to be called once. Where no second process
        can be had it is done here.
    """
    command = [sys.executable, "-P", "-m", "selector.decision.comparison"]
    pipe, lost = subprocess.PIPE, subprocess.DEVNULL
    try:
        child = subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=lost, text=True)  # noqa: S603
    except OSError:
        yield other_methods
        return

    def asked(merit: Floats, weights: Floats) -> tuple[Comparison, ...]:
        question = json.dumps({"merit": merit.tolist(), "weights": weights.tolist()})
        answer = ""
        with suppress(OSError):
            print(question, file=child.stdin, flush=True)
            # Its answer is enough: what it takes to end need not be waited for.
            answer = child.stdout.readline() if child.stdout else ""
        if not answer:
            return other_methods(merit, weights)
        return tuple(Comparison(c["method"], tuple(c["places"])) for c in json.loads(answer))

    try:
        yield asked
    finally:
        child.kill()
        child.communicate()


class _Undrawn(MetaPathFinder):
    """Puts off loading what draws until something is drawn: a third of the library's load."""

    def find_spec(
        self, fullname: str, path: Sequence[str] | None, target: ModuleType | None = None
    ) -> ModuleSpec | None:
        """Return the spec of a package that draws, to be loaded at its first use."""
        found = PathFinder.find_spec(fullname, path, target) if fullname in DRAWING else None
        if found is not None and found.loader is not None:
            found.loader = LazyLoader(found.loader)
        return found


def main() -> None:
    """Answer one question from standard input on standard output."""
    sys.meta_path.insert(0, _Undrawn())
    # Loads all that is needed while the question is still being worked out.
    other_methods(np.eye(2), np.ones(2))
    asked = json.loads(sys.stdin.readline())
    found = other_methods(np.array(asked["merit"]), np.array(asked["weights"]))
    sys.stdout.write(json.dumps([asdict(one) for one in found]) + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
