"""Ageing, which needs no quench; annealing and normalising, which are left as they are."""

from selector.heat.colour import heat_colour
from selector.job.process import normalising_span
from selector.job.soak import soak_min
from selector.procedure.bar import proved
from selector.procedure.checking import checking_steps
from selector.procedure.doing import Doing
from selector.procedure.heating import LIGHT
from selector.procedure.practice import (
    ANNEAL_COOL_C_PER_H,
    ANNEAL_LEAST_MIN,
    ANNEAL_MIN_PER_MM,
    COMMON,
    SOFTEN_C,
)
from selector.procedure.shape import rounded
from selector.record import StepOut
from selector.wording import shown_time


def aged_steps(do: Doing) -> list[StepOut]:
    """Return the steps of a part that is aged in the workshop."""
    temper, source = do.temper, do.work.source
    hold = shown_time(temper.time_s)
    at_c = temper.temperature_c
    ageing = StepOut(
        stage="heat",
        action=f"Lay it in the furnace, {at_c:.0f} °C, {hold} from when it is hot through; air "
        "cool, no quench",
        short=f"age {hold} at {at_c:.0f} °C, cool in air",
        means=source.name if source else "furnace",
        check="a thermocouple beside it holds within 5 °C",
        otherwise="too hot or too long: it is softer for good",
        temperature_c=at_c,
        read_by="furnace",
        minutes=temper.time_s / 60.0,
        times=1,
        source=do.steel.aged.curve_hrc.source if do.steel.aged else COMMON,
    )
    return [proved(do), rounded(do), ageing, *checking_steps(do)]


def annealed_steps(do: Doing) -> list[StepOut]:
    """Return the steps of a part that is annealed and left soft."""
    span = do.steel.temperature_c.get("anneal") or do.work.route.temperature_c
    at_c = 10.0 * round((span.middle if span else SOFTEN_C) / 10.0)
    minutes = max(ANNEAL_MIN_PER_MM * do.thick_mm, ANNEAL_LEAST_MIN)
    source = do.work.source
    heat = StepOut(
        stage="heat",
        action=f"In the furnace, wrapped or packed in spent charcoal: {at_c:.0f} °C, "
        f"{shown_time(60 * minutes)} from when it is hot through; cool in there by "
        f"{ANNEAL_COOL_C_PER_H:.0f} °C an hour to 600 °C, then as it likes",
        short=f"anneal {shown_time(60 * minutes)} at {at_c:.0f} °C, cool in the furnace",
        means=source.name if source else "furnace",
        check="door shut until it is black; a file cuts it freely all over",
        otherwise="still hard: it cooled too quickly, do it again",
        temperature_c=at_c,
        read_by="furnace",
        minutes=minutes,
        source=span.source if span else COMMON,
    )
    return [proved(do), rounded(do), heat, *checking_steps(do)]


def normalised_steps(do: Doing) -> list[StepOut]:
    """Return the steps of a part that is normalised and left so."""
    span = normalising_span(do.work)
    at_c = 10.0 * round(span.middle / 10.0)
    source = do.work.source
    by_eye = source is not None and source.control == "eye"
    colour = heat_colour(at_c).name if by_eye else None
    words = f"{at_c:.0f} °C" + (f", {colour} in {LIGHT[do.shop.light]}" if colour else "")
    most_min = source.soak_max_min.value if source else 60.0
    minutes = min(soak_min(do.steel, do.thick_mm), most_min)
    heat = StepOut(
        stage="heat",
        action=f"Heat evenly to {words}, hold {minutes:.0f} min",
        short=f"normalise: {minutes:.0f} min at {at_c:.0f} °C",
        means=source.name if source else "furnace",
        check="one colour all through",
        temperature_c=at_c,
        colour=colour,
        read_by="eye" if by_eye else "furnace",
        minutes=minutes,
        source=span.source,
    )
    cool = StepOut(
        stage="quench",
        action="Hang it in still air, out of the draught, until it can be held",
        short="hang in still air",
        means="wire hook",
        check="black all round at the same time",
        temperature_c=20.0,
        source=COMMON,
    )
    return [proved(do), rounded(do), heat, cool, *checking_steps(do)]
