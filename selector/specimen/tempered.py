"""A hardened piece after tempering: hardness by temperature, and the temper for a hardness."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from catalog import Catalog
from catalog.steel import Steel
from selector.decision.output import colour_shown
from selector.errors import OutOfRangeError, Problem, RequirementError
from selector.hardening.as_quenched import AsQuenched
from selector.hardening.kind import by_composition, is_high_alloy
from selector.hardening.tempered import curve_reach_c
from selector.job.process import temper_peak_c
from selector.job.tempers import tempers
from selector.job.treatment import Temper, Treatment
from selector.option.prediction import embrittled
from selector.option.zone_hardness import after_temper, temper_validity
from selector.requirement.part import Section
from selector.specimen.hardening import hardening, why_not
from selector.specimen.output import (
    COMPOSITION,
    hardness_words,
    origin_out,
    quench_assumed,
    quench_out,
    quench_words,
    range_out,
    steel_out,
    temper_assumed,
)
from selector.specimen.record import (
    OriginOut,
    RangeOut,
    RowOut,
    TemperedOut,
    WantedOut,
    WindowOut,
)
from selector.specimen.specimen import SHOP, Specimen, specimen
from selector.wording import shown

Floats = NDArray[np.float64]

# A thin piece, hard throughout in the bath that its steel asks for: at most half of what the
# steel is published to harden through, so that the error of that figure does not matter.
THIN_MM, THIN_PART = 10.0, 0.5
HOTTEST_C = 700.0
# One temper by itself may be colder or hotter than those of an option, a little past the end of
# a published curve too, where its error grows. [°C]
TRIED_C, PAST_C = (50.0, 720.0), 50.0


def thin_piece(catalog: Catalog, steel: Steel, heat_c: float | None = None) -> Specimen:
    """Return the piece that is tempered where nothing is said of its quench.

    Parameters
    ----------
    catalog : Catalog
        What is known.
    steel : Steel
        Catalogue steel.
    heat_c : float, optional
        Hardening heat; left out, the middle of the steel's own range. [°C]

    Returns
    -------
    Specimen
        A round of 10 mm, or of half the steel's section limit where that is less, in the bath
        that the steel asks for.

    Raises
    ------
    RequirementError
        When no quench hardens the steel, so that there is nothing to temper.
    """
    if hardening(steel) == "not" or steel.hardened is None:
        rule, step = "a steel that a quench hardens", why_not(steel)
        raise RequirementError(Problem("STEEL", rule, repr(steel.name), step))
    quench = steel.hardened.quench
    limit = steel.hardened.section_limit_mm.get(quench)
    size = THIN_MM if limit is None else min(THIN_MM, THIN_PART * limit.value)
    thin = Section(shape="round", size=size, length=10.0 * size)
    return specimen(catalog, steel, thin, catalog.media[quench], heat_c)


def temperings(work: Treatment, time_s: float) -> tuple[Temper, ...]:
    """Return the furnace tempers that an option would try, each of `time_s` in all."""
    reach_c = curve_reach_c(work.steel)
    return tuple(
        replace(temper, time_s=time_s / temper.cycles)
        for temper in _by_furnace(work)
        if temper.temperature_c <= reach_c
    )


def _by_furnace(work: Treatment) -> tuple[Temper, ...]:
    """Return the furnace tempers that an option would try, each as long as it would."""
    return tuple(t for t in tempers(work, {"furnace": HOTTEST_C}) if t.means == "furnace")


def usual_time_s(work: Treatment) -> float:
    """Return how long a steel is usually tempered in a furnace, all tempers together. [s]."""
    return (first := _by_furnace(work)[0]).time_s * first.cycles


def temper_at(work: Treatment, heat_c: float, time_s: float) -> Temper:
    """Return a furnace temper at one heat, as often as those that an option would try.

    Parameters
    ----------
    work : Treatment
        Steel and route.
    heat_c : float
        Tempering temperature. [°C]
    time_s : float
        Time at temperature, of all tempers together. [s]

    Returns
    -------
    Temper
        By furnace.

    Raises
    ------
    OutOfRangeError
        When nobody tempers so cold, or the steel's curve ends far below.
    """
    most = min(TRIED_C[1], curve_reach_c(work.steel) + PAST_C)
    if not TRIED_C[0] <= heat_c <= most:
        rule = f"between {TRIED_C[0]:g} and {most:g} °C, where {work.steel.name} is known"
        step = "Leave it out for all tempers that are known."
        raise OutOfRangeError(Problem("--at", rule, f"{heat_c:g} °C", step))
    return replace(temperings(work, time_s)[0], temperature_c=heat_c)


def skin_hrc(of: Specimen, fresh: AsQuenched, temper: Temper) -> Floats:
    """Return the hardness of the skin after a temper, over the samples. [HRC]."""
    peak_c = temper_peak_c(temper, SHOP, of.normals)
    skin = fresh.only([0])
    return np.asarray(after_temper(of.bar, skin, peak_c, temper, of.normals).hrc[:, 0])


def temperature_for(heats_c: Floats, hrc: Floats, wanted_hrc: float) -> Floats:
    """Return the hottest temper that leaves a hardness, over the samples. [°C]."""
    # `hrc` has shape (heats, samples), straight between heats; the first or last heat stands
    # where a sample is softer throughout or harder still.
    enough = hrc >= wanted_hrc
    last = len(heats_c) - 1 - np.argmax(enough[::-1], axis=0)
    at = np.minimum(last, len(heats_c) - 2)
    samples = np.arange(hrc.shape[1])
    here, then = hrc[at, samples], hrc[at + 1, samples]
    part = np.clip((here - wanted_hrc) / np.maximum(here - then, 1e-9), 0.0, 1.0)
    between = heats_c[at] + part * (heats_c[at + 1] - heats_c[at])
    crossing_c = np.where(last == len(heats_c) - 1, heats_c[-1], between)
    return np.asarray(np.where(enough.any(axis=0), crossing_c, heats_c[0]))


def tempered(
    of: Specimen,
    time_s: float | None = None,
    quenched_hrc: float | None = None,
    wanted_hrc: float | None = None,
    at_c: Sequence[float] = (),
) -> TemperedOut:
    """Return a specimen's hardness by tempering temperature.

    Parameters
    ----------
    of : Specimen
        What is tempered; its skin is looked at.
    time_s : float, optional
        Time at temperature, of all tempers together; left out, an hour each. [s]
    quenched_hrc : float, optional
        Hardness as quenched; left out, that of the specimen. [HRC]
    wanted_hrc : float, optional
        Hardness for which the temper is asked. [HRC]
    at_c : sequence of float, optional
        Tempers to show; left out, each that an option would try. [°C]

    Returns
    -------
    TemperedOut
        One row for each temper.
    """
    fresh = of.fresh if quenched_hrc is None else _as_given(of.fresh, quenched_hrc)
    time_s = usual_time_s(of.treatment) if time_s is None else time_s
    grid = temperings(of.treatment, time_s)
    shown_at = tuple(temper_at(of.treatment, heat, time_s) for heat in at_c) or grid
    tried = dict.fromkeys((*shown_at, *grid) if wanted_hrc is not None else shown_at)
    skin = {temper: skin_hrc(of, fresh, temper) for temper in tried}
    made = quench_out(of) if quenched_hrc is None else None
    before = range_out(fresh.hrc[:, 0])
    first = COMPOSITION if made is None else f"Quenched: {quench_words(made)}."
    more = [] if made is None else quench_assumed(of, made)
    wanted = None
    if wanted_hrc is not None:
        tried_hrc = np.array([skin[temper] for temper in grid])
        wanted = temperature_wanted(grid, tried_hrc, wanted_hrc)
    return TemperedOut(
        steel=steel_out(of.steel),
        headline=_headline(of, before, time_s, given=made is None),
        time_s=time_s,
        tempers=grid[0].cycles,
        quench=made,
        quenched_hrc=before,
        rows=tuple(_row(of, temper, skin[temper]) for temper in shown_at),
        wanted=wanted,
        embrittlement=tuple(
            WindowOut(low_c=span.low, high_c=span.high, source=span.source, at=span.at)
            for span in of.steel.embrittlement_c
        ),
        origin=_origin(of.steel, fresh, shown_at),
        assumed=(first, *more, *temper_assumed(of.steel, time_s, shown_at)),
    )


def _as_given(fresh: AsQuenched, hrc: float) -> AsQuenched:
    """Return a quench that left the hardness that was given, all of it turned."""
    return AsQuenched(
        np.full(fresh.turned_hrc.shape, hrc),
        np.ones(fresh.share.shape),
        "hardness as quenched, as given",
        "as given",
        (),
    )


def _row(of: Specimen, temper: Temper, hrc: Floats) -> RowOut:
    """Return one temper as plain data."""
    return RowOut(
        temperature_c=temper.temperature_c,
        time_s=round(temper.time_s * temper.cycles, 6),
        hrc=range_out(hrc),
        colour=None if is_high_alloy(of.steel) else colour_shown(temper),
        embrittled=embrittled(of.treatment, temper),
    )


def temperature_wanted(grid: tuple[Temper, ...], hrc: Floats, wanted_hrc: float) -> WantedOut:
    """Return the temper for a hardness, or which way the rows miss it."""
    heats_c = np.array([temper.temperature_c for temper in grid])
    low, high, wish = heats_c[0], heats_c[-1], shown(wanted_hrc)
    needed_c = range_out(temperature_for(heats_c, hrc, wanted_hrc))
    least, middle, most = (
        heat if heat is not None and low < heat < high else None
        for heat in (needed_c.p05, needed_c.p50, needed_c.p95)
    )
    if middle is not None:
        text = f"{wish}: temper at {middle:.0f} °C ({_span(least, most)})"
        known = RangeOut(p05=least, p50=middle, p95=most)
        return WantedOut(hrc=wanted_hrc, temperature_c=known, text=text)
    medians = np.median(hrc, axis=1)
    if medians[-1] >= wanted_hrc:
        text = f"{wish}: still {shown(float(medians[-1]))} at {high:.0f} °C, as hot as is known"
    else:
        hardest = shown(float(medians.max()))
        text = f"{wish}: never as hard from {low:.0f} °C up, {hardest} at most"
    return WantedOut(hrc=wanted_hrc, temperature_c=None, text=text)


def _span(least_c: float | None, most_c: float | None) -> str:
    """Return the range of a temper, and what happens where it has no end."""
    if least_c is not None and most_c is not None:
        return f"{least_c:.0f} to {most_c:.0f} °C"
    if most_c is not None:
        return f"up to {most_c:.0f} °C; some bars are softer at any temper"
    if least_c is not None:
        return f"from {least_c:.0f} °C; some bars are harder still where the rows end"
    return "some bars are softer and some harder at any temper"


def _origin(steel: Steel, fresh: AsQuenched, grid: tuple[Temper, ...]) -> OriginOut:
    """Return what computes the rows."""
    left = (limit for temper in grid for limit in temper_validity(steel, temper))
    curve = steel.tempered
    if curve is None or by_composition(steel):
        how = "tempering curve of the composition (tempering.tempered_hardness)"
    else:
        span = curve.curve_hrc
        hours = f"{curve.time_h.value:g} h"
        how = f"the steel's own tempering curve of {hours} ({span.source}, {span.at})"
    return origin_out(fresh, how, validity=tuple(dict.fromkeys(left)))


def _headline(of: Specimen, before: RangeOut, time_s: float, *, given: bool) -> str:
    """Return what is tempered and for how long, in one sentence."""
    steel = of.steel
    hard, span = hardness_words(before)
    what = " (its core, not its case)" if hardening(steel) == "core" else ""
    named = steel.spoken[:1].upper() + steel.spoken[1:]
    quenched = f"{hard} ({'as given' if given else span}) as quenched"
    return f"{named}{what}, {quenched}, tempered {time_words(time_s)}."


def time_words(time_s: float) -> str:
    """Return a time for the reader: "90 s", "30 min", "2 h"."""
    if time_s < 120.0:
        return f"{time_s:g} s"
    minutes = time_s / 60.0
    return f"{minutes:.4g} min" if minutes < 60.0 else f"{minutes / 60.0:.4g} h"
