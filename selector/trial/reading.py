"""What is read off the coupons at each stage, with what means go and what stops the trial."""

import numpy as np

from selector.procedure.doing import Doing
from selector.procedure.heating import heat_times_s, stronger, time_words
from selector.procedure.instrument import (
    OPEN,
    Instrument,
    asked_window,
    go_window,
    quenched_go,
    quenched_hrc,
    right_words,
    words_of,
)
from selector.trial.coupon import expected
from selector.trial.record import ReadingOut

# The rim of a snapped coupon, fine and grey, beside its dull core, by a steel rule.
SNAPPED = Instrument("snap", "a vice, a hammer and a steel rule", 0.2, 0.3)


def heat_reading(do: Doing) -> list[ReadingOut]:
    """Return the seconds to heat of a torch, where they are forecast."""
    set_up = do.set_up
    if set_up is None or set_up.to_heat_s is None:
        return []
    least, _, most = heat_times_s(set_up.to_heat_s)
    return [
        ReadingOut(
            stage="heat",
            test="watch",
            means="a watch",
            unit="s",
            expected=None,
            go_low=least,
            go_high=most,
            go=time_words(set_up.to_heat_s),
            no_go=f"{stronger(do)} first: the heat runs in otherwise",
            bias=None,
            scatter=None,
            counted=False,
        )
    ]


def quenched_reading(do: Doing, test: Instrument) -> list[ReadingOut]:
    """Return the hardness test after the bath, before any temper; none of no quench."""
    fresh = quenched_hrc(do)
    if fresh is None or not do.work.hardens:
        return []
    go = quenched_go(do, test)
    says = right_words(test, go, float(np.median(fresh)))
    stops = "nothing: it is hard enough either way" if go.is_open else words_of(test, go)[1]
    return [
        ReadingOut(
            stage="quenched",
            test=test.slug,
            means=test.words,
            unit="HRC",
            expected=expected(fresh),
            go_low=None if go.low <= -OPEN else round(go.low, 1),
            go_high=None,
            go=says,
            no_go=stops,
            bias=test.bias,
            scatter=test.scatter,
            counted=False,
        )
    ]


def snapped_reading(do: Doing, *, counted: bool) -> ReadingOut:
    """Return what a snapped coupon shows: grain, and how deep it is hard."""
    deep, asked = expected(do.prediction.depth_mm, digits=2), do.lead.depth_mm
    through = do.prediction.hard_through
    ring = "hard right through" if through else f"a hard rim of about {deep[1]:.1f} mm"
    if asked > 0 and not through:
        ring = f"a hard rim of {asked:g} mm or more"
    return ReadingOut(
        stage="snapped",
        test=SNAPPED.slug,
        means=SNAPPED.words,
        unit="mm",
        expected=deep,
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
        expected=expected(do.prediction.surface_hrc),
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
    return ReadingOut(
        stage="crack",
        test="chalk",
        means="oil and chalk, or dye penetrant",
        unit="-",
        expected=expected(do.prediction.crack.rate, digits=4),
        go_low=None,
        go_high=0.0,
        go="no dark line on any of them",
        no_go="one cracks: a milder bath, larger radii, or another steel before the part",
        bias=None,
        scatter=None,
        counted=True,
    )
