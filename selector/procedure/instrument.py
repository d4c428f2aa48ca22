"""The tests of hardness that a workshop has: how each errs, and what it shows when it is right.

Errors are estimates of practice: no test of a small workshop has a certificate.
"""

import itertools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.hardness_scale import LOWEST_HRC
from selector.job.treatment import LAID_ON
from selector.procedure.doing import Doing
from selector.requirement.workshop import Check
from selector.wording import either, shown, shown_range

Floats = NDArray[np.float64]
COMMON = "common practice, no source"
# Hardness files as they are sold. [HRC]
FILES = (40, 45, 50, 55, 60, 65)
# Where a new file goes from cutting to skating, and a corner begins to scratch glass. Common
# practice. [HRC]
FILE_EDGES_HRC, GLASS_HRC = (38.0, 48.0, 55.0, 60.0), 55.0
# What a new file does, softest first, between the edges of its bands.
FILED = ("cuts freely", "cuts with effort", "bites a little", "just marks", "skates")
# A piece softer than the lowest edge of a test, or harder than its highest, is usually so far
# beyond it. [HRC]
SOFT_HRC, HARD_HRC = 10.0, 3.0
# Beyond all that is read: an end of a window that is open.
OPEN = 1000.0
# What weighs less gives way under a rebound tester. Makers' sheets (from memory). [kg]
FREE_KG = 5.0


@dataclass(frozen=True, slots=True)
class Instrument:
    """One test of hardness, or of how deep it goes.

    `bias` is the error it has in every reading, `scatter` that from one to the next, both as
    standard deviations in HRC or mm; it reads a number, or between which `edges` a piece lies.
    """

    slug: str
    words: str
    bias: float
    scatter: float
    edges: tuple[float, ...] = ()
    source: str = COMMON


@dataclass(frozen=True, slots=True)
class Window:
    """What a reading may be for a go; open ends are far off."""

    low: float = -OPEN
    high: float = OPEN

    @property
    def is_open(self) -> bool:
        """Whether any reading will do."""
        return self.low <= -OPEN and self.high >= OPEN


# A bench tester set by a block keeps within 1.5 HRC (ISO 6508-2, from memory); one in the hand
# errs twice that, by how the piece lies too.
TESTER = Instrument("tester", "the hardness tester", 0.75, 0.5)
REBOUND = Instrument("rebound", "the rebound tester", 1.5, 1.0)
HARDNESS_FILES = Instrument(
    "hardness-files", "the hardness files", 1.5, 1.0, tuple(float(file) for file in FILES)
)
NEW_FILE = Instrument("file", "a new file", 2.0, 1.5, FILE_EDGES_HRC)
GLASS = Instrument("glass", "a piece of glass", 2.5, 2.0, (GLASS_HRC,))

_BY_CHECK: dict[Check, Instrument] = {
    "tester": TESTER,
    "rebound": REBOUND,
    "hardness-files": HARDNESS_FILES,
    "file": NEW_FILE,
    "glass": GLASS,
}


def instruments(check: tuple[Check, ...]) -> tuple[Instrument, ...]:
    """Return the tests of hardness that a workshop has; a new file anyone can have.

    Parameters
    ----------
    check : tuple of str
        What the workshop tests hardness with.

    Returns
    -------
    tuple of Instrument
        The best first, at least one.
    """
    return tuple(_BY_CHECK[name] for name in _BY_CHECK if name in check) or (NEW_FILE,)


def instrument_for(check: tuple[Check, ...], hrc: float) -> Instrument:
    """Return what a workshop tries a hardness with: glass says nothing of the soft. [HRC]."""
    best = instruments(check)[0]
    return NEW_FILE if best is GLASS and hrc < GLASS_HRC else best


def means_of(do: Doing, test: Instrument) -> str:
    """Return a test as it is set up for a part: what rebounds wants mass behind it."""
    if test is REBOUND and do.job.mass_kg < FREE_KG:
        return f"{test.words}, the part greased and clamped to a heavy block"
    return test.words


def asked_window(do: Doing) -> Window:
    """Return what the finished zone may read: its floor and ceiling. [HRC]."""
    lead = do.lead
    low = -OPEN if lead.floor_hrc is None else lead.floor_hrc
    ceiling = lead.ceiling_hrc
    if lead.derived and do.work.route.process in LAID_ON:
        ceiling = None
    return Window(low, OPEN if ceiling is None else ceiling)


def quenched_hrc(do: Doing) -> Floats | None:
    """Return how hard the zone is as quenched, over the samples; None of no quench. [HRC]."""
    fresh = do.prediction.fresh
    return None if fresh is None else fresh.hrc[:, 0]


def quenched_go(do: Doing, test: Instrument) -> Window:
    """Return what a test may show before any temper, so that the zone comes out hard. [HRC].

    Parameters
    ----------
    do : Doing
        The option as it is done.
    test : Instrument
        One that sorts may show the band that the least hardness lies in.

    Returns
    -------
    Window
        From as hard as 95 in 100 are of those that are hard enough when tempered.
    """
    fresh = quenched_hrc(do)
    if fresh is None:
        return Window()
    hard = do.prediction.surface_hrc >= asked_window(do).low
    least = float(np.quantile(fresh[hard] if hard.any() else fresh, 0.05))
    if not test.edges:
        return Window(low=least)
    return Window(low=max((edge for edge in test.edges if edge <= least), default=-OPEN))


def go_window(test: Instrument, asked: Window) -> Window:
    """Return what a test may show for a go, in its own steps.

    Parameters
    ----------
    test : Instrument
        One that reads a number keeps the window; one that sorts widens it to the bands that
        have their middle in it.
    asked : Window
        What is asked. [HRC]

    Returns
    -------
    Window
        Ends are edges of bands. [HRC]
    """
    if not test.edges:
        return asked
    ends = (-OPEN, *test.edges, OPEN)
    middles = [_middle(low, high) for low, high in itertools.pairwise(ends)]
    inside = [k for k, hrc in enumerate(middles) if asked.low <= hrc <= asked.high]
    if not inside:
        wanted = _middle(asked.low, asked.high)
        nearest = min(range(len(middles)), key=lambda k: abs(middles[k] - wanted))
        inside = [nearest]
    return Window(ends[inside[0]], ends[inside[-1] + 1])


def _middle(low: float, high: float) -> float:
    """Return the middle of a band, of an open one a hardness that is usual in it. [HRC]."""
    if low == -OPEN:
        return high - SOFT_HRC
    return low + HARD_HRC if high == OPEN else 0.5 * (low + high)


def words_of(test: Instrument, go: Window) -> tuple[str, str]:
    """Return what means go and what stops, in words of the test."""
    if test.slug == "file":
        return _of_file(go)
    if test.slug == "glass":
        hard = go.low >= test.edges[0]
        return ("a corner scratches it", "it does not: too soft") if hard else (
            "no corner scratches it", "a corner scratches it: too hard",
        )  # fmt: skip
    if test.slug == "hardness-files":
        return _of_files(go)
    low, high = go.low > -OPEN, go.high < OPEN
    if low and high:
        return f"it reads {shown_range(go.low, go.high)}", "below: too soft; above: too hard"
    if low:
        return f"it reads {shown(go.low)} or more", "below: too soft"
    return (f"it reads {shown(go.high)} or less", "above: too hard") if high else (
        "any", "nothing",
    )  # fmt: skip


def _of_file(go: Window) -> tuple[str, str]:
    """Return what a new file does for a go, and what stops."""
    ends = (-OPEN, *NEW_FILE.edges)
    good = [FILED[k] for k, end in enumerate(ends) if go.low <= end < go.high]
    soft = [FILED[k] for k, end in enumerate(ends) if end < go.low]
    hard = [FILED[k] for k, end in enumerate(ends) if end >= go.high]
    stops = [f"it {soft[-1]}, or softer: too soft"] if soft else []
    stops += [f"it {hard[0]}: too hard"] if hard else []
    return f"it {either(good)}", "; ".join(stops) or "nothing"


def _of_files(go: Window) -> tuple[str, str]:
    """Return what hardness files do for a go, and what stops."""
    slides = max((file for file in FILES if file <= go.low), default=None)
    bites = min((file for file in FILES if file >= go.high), default=None)
    good = [f"the {slides} file slides"] if slides else []
    good += [f"the {bites} file bites"] if bites else []
    stops = [f"the {slides} file bites: too soft"] if slides else []
    stops += [f"the {bites} file slides: too hard"] if bites else []
    return ", ".join(good) or "any", "; ".join(stops) or "nothing"


def right_words(test: Instrument, go: Window, hrc: float) -> str:
    """Return what a test shows of a piece that is right.

    Parameters
    ----------
    test : Instrument
        What it is tried with.
    go : Window
        What it may show. [HRC]
    hrc : float
        What is expected, which is what is right where nothing is asked. [HRC]

    Returns
    -------
    str
        For instance "it bites a little or just marks".
    """
    if not go.is_open:
        return words_of(test, go)[0]
    if test is NEW_FILE:
        return file_words(hrc)
    near = 0.0 if test.edges else 2.0
    return words_of(test, go_window(test, Window(hrc - near, hrc + near)))[0]


def file_words(hrc: float) -> str:
    """Return how a new file takes on a hardness. [HRC]."""
    if hrc < LOWEST_HRC:
        return "it cuts as easily as before"
    return f"it {FILED[sum(hrc >= edge for edge in FILE_EDGES_HRC)]}"
