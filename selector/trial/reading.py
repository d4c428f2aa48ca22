"""What is read off the coupons at each stage, with what means go and what stops the trial."""

import itertools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.hardening.bath_response import POSITIONS
from selector.option.preparation import prepare
from selector.procedure.doing import Doing
from selector.procedure.quenching import FILES
from selector.trial.coupon import hrc_of
from selector.trial.instrument import NEW_FILE, SNAPPED, Instrument
from selector.trial.record import ReadingOut
from selector.wording import either, shown_range

Floats = NDArray[np.float64]
# A torch that needs less than half or more than twice the time is another than was forecast.
FASTER, SLOWER = 0.5, 2.0
# What a new file does, softest first, between the edges of its bands.
FILED = ("cuts freely", "cuts with effort", "bites a little", "just marks", "skates")
# A piece softer than the lowest edge of a test, or harder than its highest, is usually so far
# beyond it. [HRC]
SOFT_HRC, HARD_HRC = 10.0, 3.0
# Beyond all that is read: an end of a window that is open.
OPEN = 1000.0


@dataclass(frozen=True, slots=True)
class Window:
    """What a reading may be for a go; open ends are far off."""

    low: float = -OPEN
    high: float = OPEN


def asked_window(do: Doing) -> Window:
    """Return what a tempered coupon may read: floor and ceiling of the zone. [HRC]."""
    lead = do.lead
    low = -OPEN if lead.floor_hrc is None else lead.floor_hrc
    ceiling = lead.ceiling_hrc
    if lead.derived and do.work.route.process == "nitride":
        ceiling = None
    return Window(low, OPEN if ceiling is None else ceiling)


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
        return shown_range(go.low, go.high), "below: too soft; above: too hard"
    if low:
        return f"{go.low:.0f} HRC or more", "below: too soft"
    return (f"{go.high:.0f} HRC or less", "above: too hard") if high else ("any", "nothing")


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


def quenched_hrc(do: Doing) -> Floats | None:
    """Return how hard a coupon is as quenched, over the samples; None of no quench. [HRC]."""
    fresh = prepare(do.work, do.job).fresh
    return None if fresh is None else fresh.hrc[:, do.job.lead_section * len(POSITIONS)]


def heat_reading(do: Doing) -> list[ReadingOut]:
    """Return the seconds to heat of a torch, where they are forecast."""
    set_up = do.set_up
    if set_up is None or set_up.to_heat_s is None:
        return []
    about = set_up.to_heat_s
    low, high = round(FASTER * about), round(SLOWER * about)
    return [
        ReadingOut(
            stage="heat",
            test="watch",
            means="a watch",
            unit="s",
            expected=None,
            go_low=low,
            go_high=high,
            go=f"{about:.0f} s forecast; {low} to {high} s will do",
            no_go=f"{_stronger(do)} first: the heat runs in otherwise",
            bias=None,
            scatter=None,
            counted=False,
        )
    ]


def _stronger(do: Doing) -> str:
    """Return what is changed about a fire or flame that heats too slowly or too fast."""
    source = do.work.source
    fire = source is not None and source.kind == "fire"
    return "more or less blast, a cleaner fire" if fire else "another nozzle or gas setting"


def quenched_reading(do: Doing, good: NDArray[np.bool_], test: Instrument) -> list[ReadingOut]:
    """Return the hardness test after the bath, before any temper.

    Parameters
    ----------
    do : Doing
        The option as it is done.
    good : ndarray of bool
        Which samples come out right.
    test : Instrument
        What it is read with.

    Returns
    -------
    list of ReadingOut
        None where nothing is quenched. A go is as hard as 95 in 100 of the good ones are.
    """
    fresh = quenched_hrc(do)
    if fresh is None or not do.work.hardens:
        return []
    least = float(np.quantile(fresh[good] if good.any() else fresh, 0.05))
    go = go_window(test, Window(low=least))
    says, stops = words_of(test, go)
    return [
        ReadingOut(
            stage="quenched",
            test=test.slug,
            means=test.words,
            unit="HRC",
            expected=hrc_of(fresh),
            go_low=None if go.low <= -OPEN else round(go.low, 1),
            go_high=None,
            go=says,
            no_go=stops if go.low > -OPEN else "nothing: it is hard enough either way",
            bias=test.bias,
            scatter=test.scatter,
            counted=False,
        )
    ]


def snapped_reading(do: Doing, *, counted: bool) -> ReadingOut:
    """Return what a snapped coupon shows: grain, and how deep it is hard."""
    depth, asked = do.prediction.depth_mm, do.lead.depth_mm
    low, middle, high = (round(float(q), 2) for q in np.quantile(depth, (0.05, 0.5, 0.95)))
    through = do.prediction.hard_through
    ring = "hard right through" if through else f"rim about {middle:.1f} mm"
    if asked > 0:
        ring += f", at least {asked:g} mm"
    return ReadingOut(
        stage="snapped",
        test=SNAPPED.slug,
        means=SNAPPED.words,
        unit="mm",
        expected=(low, middle, high),
        go_low=asked if asked > 0 else None,
        go_high=None,
        go=f"fine grey grain; {ring}",
        no_go="coarse and sparkling: too hot; a thin or soft rim: too cool, or too slow a bath",
        bias=SNAPPED.bias,
        scatter=SNAPPED.scatter,
        counted=counted,
    )


def tempered_reading(do: Doing, test: Instrument, *, counted: bool) -> ReadingOut:
    """Return the hardness test after all is done, or of a bar that nothing is done to."""
    go = go_window(test, asked_window(do))
    says, stops = words_of(test, go)
    treated = do.work.route.process != "none"
    return ReadingOut(
        stage="tempered" if treated else "bar",
        test=test.slug,
        means=test.words,
        unit="HRC",
        expected=hrc_of(do.prediction.surface_hrc),
        go_low=None if go.low <= -OPEN else round(go.low, 1),
        go_high=None if go.high >= OPEN else round(go.high, 1),
        go=says,
        no_go=stops,
        bias=test.bias,
        scatter=test.scatter,
        counted=counted,
    )


def crack_reading(do: Doing) -> ReadingOut:
    """Return the look for cracks."""
    rate = do.prediction.crack.rate
    low, middle, high = (round(float(q), 4) for q in np.quantile(rate, (0.05, 0.5, 0.95)))
    return ReadingOut(
        stage="crack",
        test="chalk",
        means="oil and chalk, or dye penetrant",
        unit="-",
        expected=(low, middle, high),
        go_low=None,
        go_high=0.0,
        go="no dark line on any of them",
        no_go="one cracks: a milder bath, larger radii, or another steel before the part",
        bias=None,
        scatter=None,
        counted=True,
    )
