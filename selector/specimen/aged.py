"""A bar that is hardened by ageing: hardness by the temperature it is aged at."""

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from catalog import Catalog
from catalog.steel import Steel
from selector import sampling
from selector.errors import OutOfRangeError, Problem
from selector.hardening.stock import supply_hrc
from selector.hardening.tempered import aged_hrc
from selector.job.process import temper_peak_c
from selector.job.tempers import tempers
from selector.job.treatment import Temper, Treatment
from selector.specimen.output import hardness_words, range_out, steel_out
from selector.specimen.record import OriginOut, RowOut, TemperedOut, WindowOut
from selector.specimen.specimen import FURNACE, SHOP
from selector.specimen.tempered import temperature_wanted, time_words

ROUTE = "age-harden"
# Tables give an hour at the coldest ageing and their full hold at the others. [s]
SHORTEST_S = 3600.0
COMPOSITION = "Composition: any within the limits of the standard."


def aged(
    catalog: Catalog,
    steel: Steel,
    time_s: float | None = None,
    wanted_hrc: float | None = None,
    at_c: Sequence[float] = (),
) -> TemperedOut:
    """Return hardness by ageing temperature, each held as long as is published.

    Parameters
    ----------
    catalog : Catalog
        What is known.
    steel : Steel
        One with an `[aged]` table.
    time_s : float, optional
        Hold asked for; the rows are those of the published one. [s]
    wanted_hrc : float, optional
        Hardness for which the temperature is asked. [HRC]
    at_c : sequence of float, optional
        Temperatures to show; left out, those of the table. [°C]

    Returns
    -------
    TemperedOut
        One row for each temperature; nothing is quenched.

    Raises
    ------
    ValueError
        When the steel has no such table.
    OutOfRangeError
        The hold or a temperature lies outside what is published.
    """
    if steel.aged is None:
        msg = f"{steel.slug} has no aged table"
        raise ValueError(msg)
    route, furnace = catalog.routes[ROUTE], catalog.heat_sources[FURNACE]
    condition = next(c for c in steel.condition if c.name in route.conditions)
    work = Treatment(steel, condition, route, None, furnace)
    normals = sampling.with_shared(steel.slug)
    grid = tempers(work, {})
    shown_at = tuple(_at(grid, heat_c) for heat_c in at_c) or grid
    tried = dict.fromkeys((*shown_at, *grid))
    skin = {
        temper: aged_hrc(steel.aged, temper_peak_c(temper, SHOP, normals)[:, 0], normals)
        for temper in tried
    }
    wanted = None
    if wanted_hrc is not None:
        wanted = temperature_wanted(grid, np.array([skin[one] for one in grid]), wanted_hrc)
    _check_hold(grid[0].time_s, time_s)
    sold, time_s = range_out(supply_hrc(condition, normals)), grid[0].time_s
    hard, span = hardness_words(sold)
    curve = steel.aged.curve_hrc
    return TemperedOut(
        steel=steel_out(steel),
        headline=f"{steel.spoken}, {hard} ({span}) as sold, aged {time_words(time_s)}.",
        time_s=time_s,
        tempers=1,
        quench=None,
        quenched_hrc=sold,
        rows=tuple(
            RowOut(
                temperature_c=one.temperature_c,
                time_s=one.time_s,
                hrc=range_out(skin[one]),
                colour=None,
                embrittled=False,
            )
            for one in shown_at
        ),
        wanted=wanted,
        embrittlement=tuple(
            WindowOut(low_c=at.low, high_c=at.high, source=at.source, at=at.at)
            for at in steel.embrittlement_c
        ),
        origin=OriginOut(
            relation="published ageing curve of the steel", source=curve.source, validity=()
        ),
        assumed=(COMPOSITION, f"Hold as published: {curve.at} ({curve.source})."),
    )


def _check_hold(published_s: float, asked_s: float | None) -> None:
    """Refuse a hold that the table does not speak of."""
    if asked_s is None or SHORTEST_S <= asked_s <= published_s:
        return
    rule = f"from {time_words(SHORTEST_S)} to {time_words(published_s)}, as ageing is published"
    step = "Leave it out for the published hold."
    raise OutOfRangeError(Problem("--for", rule, time_words(asked_s), step))


def _at(grid: tuple[Temper, ...], heat_c: float) -> Temper:
    """Return the ageing at a temperature between the ends of the table."""
    low, high = grid[0].temperature_c, grid[-1].temperature_c
    if not low <= heat_c <= high:
        rule = f"between {low:g} and {high:g} °C, where ageing is published"
        step = "Leave it out for all that is published."
        raise OutOfRangeError(Problem("--at", rule, f"{heat_c:g} °C", step))
    return replace(grid[0], temperature_c=heat_c)
