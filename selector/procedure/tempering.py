"""The temper: at once, by what, how hot, how long, how often, and what it looks like."""

from dataclasses import replace

import numpy as np

from selector.errors import OutOfRangeError
from selector.heat.colour import HEAT_COLOURS, temper_colour
from selector.job.demand import Demand
from selector.job.treatment import Means, Temper
from selector.option.caution import SLOW_COOL, of_steel
from selector.option.prediction import embrittled
from selector.option.preparation import prepare
from selector.option.temper_choice import section_hrc
from selector.procedure.doing import Doing
from selector.procedure.first_heat import hardened_anew
from selector.procedure.practice import (
    COLOURS_TO_CR,
    COMMON,
    HEAT_UP_MIN_PER_MM,
    splinter_words,
)
from selector.record import StepOut
from selector.wording import shown_time

# Names of the means where the workshop names none of its own.
USUAL = {
    "oven": "oven", "furnace": "furnace", "plate": "thick steel plate, heated from below",
    "torch": "soft flame", "blaze": "the oil that is on it", "residual": "its own heat",
    "sand": "tray of dry sand over the fire",
}  # fmt: skip
AGAIN_C = 25.0
# A zone is drawn further by flame in this time. Common practice. [s]
FLAME_S = 300.0
# The first red that a dark-adapted eye sees: lowest of the printed tables. [°C]
FAINT_RED_C = HEAT_COLOURS["faint red"].low_c
# No oven thermometer reads higher. Common practice. [°C]
OVEN_THERMOMETER_C = 300.0
# By what a part is tempered hotter than its own means goes.
SLOW_FIRST: tuple[Means, ...] = ("furnace", "plate", "torch")
_WITH = {"furnace": "in the furnace", "plate": "on the plate", "torch": "with a soft flame"}


def tempering_steps(do: Doing) -> list[StepOut]:
    """Return the temper of an option; none where it is left as it comes out of the bath."""
    means = do.temper.means
    if means in {"none", "salt"}:
        return []
    if means == "residual":
        return [run_back(do)]
    return [tempered(do), *_drawn_further(do)]


def _means_name(do: Doing) -> str:
    """Return the workshop's own thing that a temper is done with."""
    means = do.temper.means
    for source in do.job.bench.sources:
        is_plate = source.kind == "oven" and "plate" in source.slug
        fits = {
            "oven": source.kind == "oven" and not is_plate,
            "plate": is_plate,
            "furnace": source.kind == "furnace"
            or (source.kind == "salt-bath" and not do.furnaces),
            "torch": source.kind == "flame",
        }.get(means, False)
        if fits:
            return source.name[:1].lower() + source.name[1:]
    return USUAL[means]


def _shown_colour(do: Doing) -> str | None:
    """Return what a bright patch shows after the temper; none of high-alloy steel."""
    return _colour_of(do, do.temper)


def _colour_of(do: Doing, temper: Temper) -> str | None:
    """Return what a bright patch of this steel shows after any temper."""
    chromium = do.steel.composition_wt_pct.get("Cr")
    if chromium is not None and chromium.middle > COLOURS_TO_CR:
        return None
    try:
        return temper_colour(temper.temperature_c, temper.time_s).name
    except OutOfRangeError:
        return None


def _times_words(do: Doing) -> str:
    """Return how often and how long: "2 × 60 min"."""
    each = shown_time(do.temper.time_s)
    return f"{do.temper.cycles} × {each}" if do.temper.cycles > 1 else each


def tempered(do: Doing) -> StepOut:
    """Return a temper by oven, furnace, plate, flame or burning oil."""
    temper, colour, name = do.temper, _shown_colour(do), _means_name(do)
    at_c = temper.temperature_c
    how = {
        "oven": f"in the {name}",
        "furnace": f"in the {name}",
        "plate": f"on the {name}, turned over without a stop",
        "torch": _by_flame(do),
        "blaze": "by letting the oil on it take fire and burn off, out of doors",
        "sand": "laid in dry sand in a steel tray over the fire, stirred and turned over",
    }[temper.means]
    action = f"At once, while hand-warm: temper {_times_words(do)} at {at_c:.0f} °C {how}"
    if temper.means in {"oven", "furnace"}:
        up = max(HEAT_UP_MIN_PER_MM * do.thick_mm, 10.0)
        action += f"; allow {5 * round(up / 5):.0f} min more to come to heat"
    if temper.means in {"oven", "furnace"} and _is_clamped(do):
        action += ", clamped between two flat plates"
    source = do.work.source
    if temper.means == "furnace" and source is not None and source.kind == "furnace":
        action += "; till the furnace is down to that, keep the part in boiling water"
    if temper.cycles > 1:
        action += "; cold to the hand between"
    if do.part.quantity > 1 and temper.means in {"oven", "furnace", "plate"}:
        action += "; together all that are quenched within an hour"
    return StepOut(
        stage="temper",
        action=action + _cooled(do),
        short=f"temper {_times_words(do)} at {at_c:.0f} °C{_read(do, colour)} "
        f"{_short_how(do, name)}",
        means=name,
        check=_seen(do, colour),
        otherwise=_again(do),
        temperature_c=at_c,
        band_c=do.choice.band_c,
        colour=colour,
        minutes=temper.time_s / 60.0,
        times=temper.cycles,
        source="chosen by the forecast of this option; times by " + COMMON,
    )


def _is_clamped(do: Doing) -> bool:
    """Return whether a flat part is straightened by plates in its temper, as was judged."""
    flat = all(section.shape == "flat" for section in do.part.section)
    move = do.prediction.movement
    return flat and bool(np.quantile(move.raw_mm, 0.5) > move.permitted_mm)


def _drawn_further(do: Doing) -> list[StepOut]:
    """Return the second temper of a zone that must be softer, as was judged of it."""
    ceilings = do.job.temper_ceilings_c
    flames = [s.name for s in do.job.bench.sources if s.kind == "flame"]
    steps = []
    for demand in do.job.demands:
        hard = [k for k in demand.sections if k in do.job.hard or not do.is_local]
        top, hrc = demand.ceiling_hrc, do.prediction.section_hrc
        if demand is do.lead or top is None or not hard or not flames:
            continue
        if float(np.median(hrc[:, hard].max(axis=1))) <= top:
            continue
        heat = _softening(do, (top, max(hard)), ceilings.get("torch", 0.0))
        if heat is not None:
            steps.append(_by_zone(do, demand, (heat, flames[0])))
    return steps


def _softening(do: Doing, zone: tuple[float, int], top_c: float) -> Temper | None:
    """Return the mildest temper by flame that brings a section under its ceiling."""
    ceiling_hrc, section = zone
    first = int(do.temper.temperature_c + AGAIN_C)
    grid = tuple(
        Temper("torch", float(at_c), FLAME_S) for at_c in range(first, int(top_c) + 1, 25)
    )
    if not grid:
        return None
    hrc = section_hrc(prepare(do.work, do.job.middle()), grid, section)
    fits = [t for t, h in zip(grid, hrc, strict=True) if h <= ceiling_hrc]
    return next((t for t in fits if not embrittled(do.work, t)), None)


def _by_zone(do: Doing, demand: Demand, by: tuple[Temper, str]) -> StepOut:
    """Return the step that draws one zone further and keeps the working end cool."""
    temper, flame = by
    zone = do.job.asked.zone[demand.zone]
    name = f"the {zone.name}" if zone.name else f"zone {demand.zone + 1}"
    colour = _colour_of(do, temper)
    shown = f", {colour}" if colour else ""
    return StepOut(
        stage="temper",
        action=f"Draw {name} further with a soft flame: {temper.temperature_c:.0f} °C{shown}, "
        f"{shown_time(temper.time_s)}, the working end in a wet rag or in water",
        short=f"draw {name} to {temper.temperature_c:.0f} °C with the flame",
        means=flame[:1].lower() + flame[1:],
        check=f"the working end stays bright; {name} shows {colour}" if colour else
        "a crayon mark for that heat melts; the working end stays cool",
        otherwise=f"the colour runs into the working end: {hardened_anew(do)}",
        temperature_c=temper.temperature_c,
        colour=colour,
        minutes=temper.time_s / 60.0,
        times=1,
        source="forecast of this option",
    )  # fmt: skip


def _read(do: Doing, colour: str | None) -> str:
    """Return the colour that a temper without a thermometer is read by, after its time."""
    if do.temper.means == "sand":
        return f" ({splinter_words(do.temper.temperature_c)})"
    if do.temper.means not in {"plate", "torch"}:
        return ""
    return f" (shows {colour})" if colour is not None else f" ({_past_blue(do).split(',')[0]})"


def _short_how(do: Doing, name: str) -> str:
    """Return the means in a few words."""
    words = {"torch": "with the flame", "blaze": "by burning the oil off",
             "plate": "on a plate heated from below",
             "sand": "in dry sand over the fire"}  # fmt: skip
    return words.get(do.temper.means, f"in the {name}")


def _by_flame(do: Doing) -> str:
    """Return how a flame tempers: from the soft or thick part, never on the edge."""
    if do.is_local and do.zone_end_mm < do.part.length_mm:
        return "with the soft flame behind the zone, the colour let run into it and kept there"
    if do.has_edge:
        return "with the soft flame on the back, never on the edge, brought up slowly"
    return "with the soft flame played over it, thick part first, brought up slowly"


def _seen(do: Doing, colour: str | None) -> str:
    """Return how the temper is checked, by its means."""
    time = shown_time(do.temper.time_s)
    shows = f"a bright patch shows {colour} after the {time}" if colour else None
    if do.temper.means in {"oven", "furnace"}:
        own = "the oven" if "oven-thermometer" in do.shop.measure else "a second"
        read = f"{own} thermometer beside the part agrees"
        if do.temper.temperature_c > OVEN_THERMOMETER_C:
            read = "a second thermocouple, or a crayon for that heat, agrees"
        return f"{read}; {shows}" if shows else read
    crayon = "a crayon mark for that heat melts" if "crayon" in do.shop.measure else None
    on_plate = do.temper.means == "plate" and "thermocouple" in do.shop.measure
    wire = "a thermocouple under it on the plate agrees" if on_plate else None
    if do.temper.means == "sand":
        shows = f"{splinter_words(do.temper.temperature_c)}, and no red shows in the dark"
        wire = (
            "a thermocouple in the sand agrees" if "thermocouple" in do.shop.measure else None
        )
    return "; ".join(word for word in (shows, crayon, wire) if word) or _past_blue(do)


def _past_blue(do: Doing) -> str:
    """Return how a temper looks that is hotter than the temper colours go, or shows none."""
    chromium = do.steel.composition_wt_pct.get("Cr")
    if chromium is not None and chromium.middle > COLOURS_TO_CR:
        return "a crayon mark for that heat melts, buy one: this steel shows no true colour"
    if do.temper.temperature_c >= FAINT_RED_C:
        return "grey all over, faintest red in the dark just to be seen"
    return "past blue and grey all over, no red even in the dark"


def _cooled(do: Doing) -> str:
    """Return how the part cools from its temper."""
    if SLOW_COOL in of_steel(do.work, do.temper, welded=False):
        return "; then into oil or water, for slow cooling makes this steel brittle"
    chromium = do.steel.composition_wt_pct.get("Cr")
    lean = chromium is None or chromium.middle <= COLOURS_TO_CR
    if do.temper.means in {"torch", "plate"} and lean:
        return "; then quench it out"
    return "; cool in air"


def _hotter(do: Doing) -> Temper | None:
    """Return the temper to try where the part stays too hard; none where that harms."""
    again = replace(do.temper, temperature_c=do.temper.temperature_c + AGAIN_C)
    ceilings = do.job.temper_ceilings_c
    allowed = [do.temper.means, *(m for m in SLOW_FIRST if m in do.work.route.temper)]
    reach = [m for m in allowed if ceilings.get(m, 0.0) >= again.temperature_c]
    if not reach or embrittled(do.work, again):
        return None
    return replace(again, means=reach[0])


def _again(do: Doing) -> str:
    """Return what to do with a part that stays too hard."""
    again = _hotter(do)
    if again is None:
        return "too hard: leave it, the next heat up is beyond the means or makes it brittle"
    other = "" if again.means == do.temper.means else f" {_WITH[again.means]}"
    return f"too hard: once more at {again.temperature_c:.0f} °C{other}"


def run_back(do: Doing) -> StepOut:
    """Return the temper by the heat left behind the dipped end."""
    temper, colour = do.temper, _shown_colour(do)
    after_s = do.dip.colour_after_s(temper.temperature_c) if do.dip else None
    when = f", about {shown_time(after_s)} after the dip" if after_s else ""
    shown = colour or f"{temper.temperature_c:.0f} °C"
    return StepOut(
        stage="temper",
        action=f"Rub the end bright with a stone, watch the colours run down; when {shown} "
        f"({temper.temperature_c:.0f} °C) is at the edge{when}, quench all of it out",
        short=f"let the colour run down, quench out at {shown} ({temper.temperature_c:.0f} °C)",
        means="emery stick, the same bath",
        check=f"{shown} at the edge, all colours behind it gone by",
        otherwise="gone past: harden it again, brought up slowly; stopped too soon: warm it "
        "from behind, never on the edge",
        temperature_c=temper.temperature_c,
        band_c=do.choice.band_c,
        colour=colour,
        minutes=round((after_s or temper.time_s) / 60.0, 2),
        times=1,
        source="chosen by the forecast of this option",
    )
