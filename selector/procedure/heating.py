"""Set up the source of heat, bring the part to its hardening heat, hold it there."""

import math

from selector.heat.colour import MAGNET_LOST_C, heat_colour
from selector.job.geometry import section_ratio
from selector.job.soak import soak_min, soak_source
from selector.procedure.doing import Doing
from selector.procedure.practice import (
    COMMON,
    LATEST_S,
    PREHEAT_C,
    PREHEAT_FROM_MM,
    PREHEAT_MIN,
    SHEETS,
)
from selector.procedure.protection import protection
from selector.procedure.shape import left_on, skin_left_mm
from selector.record import SetUpOut, StepOut
from selector.wording import shown_time

FIRES = frozenset({"flame", "fire"})
LIGHT = {"dim": "dim light", "shade": "the shade", "daylight": "daylight", "sun": "the sun"}
READ_BY = {
    "furnace": "the furnace's own instrument",
    "thermocouple": "a thermocouple on the part",
    "crayon": "a crayon",
    "infrared": "infrared on a scaled, dull face",
    "magnet": "magnet, then the eye",
    "eye": "the eye",
}
# The magnet says no more of a heat this near above where it lets go. [°C]
JUST_PAST_C = 8.0
# A fire brings touchy steel up to here slowly; sections so unlike count as touchy. COMMON.
# [°C], [-]
DULL_RED_C, UNEVEN = 650.0, 2.0
# Foil of the usual kind stands this; the better kind 1230. Foil makers (from memory). [°C]
FOIL_C = 1090.0


def heating_steps(do: Doing) -> list[StepOut]:
    """Return set-up, preheat, heat and hold of a part that is quenched in the workshop."""
    if do.set_up is None or do.work.source is None:
        return []
    return [set_up(do), *_preheated(do), heated(do, do.set_up), held(do, do.set_up)]


def set_up(do: Doing) -> StepOut:
    """Return how the source of heat is laid out for this part."""
    source = do.work.source
    kind = source.kind if source else "furnace"
    action = _fire_laid(do) if kind in FIRES else _furnace_laid(do)
    if kind == "induction":
        action = "Fit the coil 3 mm clear all round the zone, water on, part on a ceramic stop"
    reach_mm = _reach_mm(do)
    return StepOut(
        stage="set-up",
        action=action,
        means=source.name if source else None,
        check=_rehearsed(do),
        length_mm=reach_mm,
        temperature_c=do.set_up.heat_c if do.set_up and reach_mm is None else None,
        source=COMMON,
    )


def _rehearsed(do: Doing) -> str:
    """Return the dry run into the bath."""
    medium, set_up = do.work.medium, do.set_up
    if medium is None or set_up is None or medium.severity_class == "air":
        return "rack or plates stand ready, dry and clear"
    return f"dry run, part cold, from the heat to over the bath: {within_s(set_up):.0f} s"


def within_s(set_up: SetUpOut) -> float:
    """Return how soon the part must be under, as it was judged, in whole seconds. [s]."""
    return min(float(math.ceil(set_up.delay_s or 2.0)), LATEST_S)


def _reach_mm(do: Doing) -> float | None:
    """Return how far from the working end the flame goes. [mm]."""
    if not do.is_local or do.set_up is None or do.set_up.past_zone_mm is None:
        return None
    return round(do.zone_end_mm + do.set_up.past_zone_mm)


def _fire_laid(do: Doing) -> str:
    """Return the layout of a flame or fire."""
    source = do.work.source
    slug = source.slug if source else ""
    turn = _turning(do)
    if do.is_local and slug not in {"forge", "charcoal-forge"} and _in_chuck(do):
        where = "lathe chuck" if do.shop.held_by == "lathe" else "drill chuck"
        hearth = (
            f"Firebrick behind the end; part in a loose sleeve in the {where}, slowest speed"
        )
        return f"{hearth}; {_nozzle(do)}"
    if slug == "charcoal-forge":
        return (
            f"Deep clean charcoal or coke fire, little blast, part in the heart of it, {turn}"
        )
    if slug == "forge":
        return f"Forge up to heat first, soft flame, part in a length of pipe, {turn}"
    return f"Hearth of soft firebrick round the part; {_nozzle(do)}; {turn}"


def _nozzle(do: Doing) -> str:
    """Return nozzle and flame of a torch, turned down where all of it would be too much."""
    slug = do.work.source.slug if do.work.source else ""
    nozzle = {
        "oxy-propane": "heating nozzle, soft neutral flame, cones 15 mm off the work",
        "oxy-acetylene": "rosebud or large welding nozzle, neutral, cones 10 mm off the work",
    }.get(slug, "biggest burner, soft roaring flame")
    return nozzle + _turned_down(do)


def _in_chuck(do: Doing) -> bool:
    """Return whether the part is turned by a machine while its end is in the flame."""
    return do.shop.turns_part and do.shop.held_by in {"lathe", "drill-press"}


def _turned_down(do: Doing) -> str:
    """Return how far the torch is turned down, where all of it would be too much."""
    share = do.set_up.flame_share if do.set_up else None
    if share is None or share > 0.85:
        return ""
    words = {1: "a tenth", 2: "a fifth", 3: "a third", 4: "under a half", 5: "a half",
             6: "two thirds", 7: "two thirds", 8: "four fifths"}  # fmt: skip
    return f", turned down to {words[max(1, min(8, round(10 * share)))]}"


def _turning(do: Doing) -> str:
    """Return how the part is turned in the flame."""
    if any(section.shape == "flat" for section in do.part.section):
        return "turned over without a stop, flame on the thick part"
    held = {"tongs": "in the tongs", "wire": "on a wire", "vice": "in a holder"}
    return f"turned by hand {held.get(do.shop.held_by or '', 'in the tongs')} without a stop"


def _furnace_laid(do: Doing) -> str:
    """Return how a furnace is loaded, with foil or coating where the skin needs it."""
    kept = protection(do)
    hot_c = do.set_up.heat_c if do.set_up else 0.0
    laid = "Stand it on a ceramic rest, clear of walls and elements"
    if kept == "foil":
        which = "309 stainless foil" if hot_c > FOIL_C else "stainless tool foil"
        laid = f"Wrap it in {which}, every fold doubled, a scrap of paper inside"
    elif kept == "coat":
        laid = "Warm it, coat it all over with anti-scale compound, let that dry; ceramic rest"
    elif kept == "bare":
        skin_mm = max(round(skin_left_mm(do), 2), 0.01)
        ground = ", to be ground off" if left_on(do) else ""
        laid += (
            f"; bare, it gets a soft skin of up to {skin_mm:.2f} mm{ground}: "
            "anti-scale compound or a lump of charcoal beside it saves most of that"
        )
    kiln = do.work.source is not None and do.work.source.slug == "kiln"
    opening = "; power off before the lid is lifted" if kiln else ""
    return f"{laid}; thermocouple beside the part{opening}"


def _preheated(do: Doing) -> list[StepOut]:
    """Return the preheats of steel that is hurt by going straight to its heat."""
    source, set_up = do.work.source, do.set_up
    if source is None or set_up is None:
        return []
    if source.kind in FIRES:
        return [_brought_up(do)] if _is_touchy(do) else []
    steps = () if do.thick_mm < PREHEAT_FROM_MM and do.steel.kind == "oil-tool" else (
        PREHEAT_C.get(do.steel.kind, ())
    )  # fmt: skip
    heats = [at_c for at_c in steps if at_c < set_up.heat_c - 100.0]
    return [
        StepOut(
            stage="heat",
            action=f"Preheat to {at_c:.0f} °C, {PREHEAT_MIN:.0f} min, until it is even",
            means=source.name,
            check="the part has the colour of the walls",
            temperature_c=at_c,
            minutes=PREHEAT_MIN,
            read_by="furnace",
            source=SHEETS,
        )
        for at_c in heats
    ]


def _is_touchy(do: Doing) -> bool:
    """Return whether a part is brought up slowly at a fire: rich and thick, or uneven."""
    thick = do.thick_mm >= PREHEAT_FROM_MM and do.steel.kind in PREHEAT_C
    return thick or (not do.is_local and section_ratio(do.part) >= UNEVEN)


def _brought_up(do: Doing) -> StepOut:
    """Return the slow first heat at a fire, below where the steel turns."""
    colour = heat_colour(DULL_RED_C).name
    return StepOut(
        stage="heat",
        action=f"Bring it up slowly, thick part first, to {colour} ({DULL_RED_C:.0f} °C) all "
        "round",
        means=do.work.source.name if do.work.source else None,
        check="the thin part is no brighter than the thick",
        otherwise="thin part ahead: take the flame off it and wait",
        temperature_c=DULL_RED_C,
        colour=colour,
        read_by="eye",
        source=COMMON,
    )


def to_five(heat_c: float) -> float:
    """Return a heat to the five degrees that anybody can keep. [°C]."""
    return 5.0 * round(heat_c / 5.0)


def _heat_words(set_up: SetUpOut) -> str:
    """Return a heat as the man at the fire reads it: "790 °C, cherry in the shade"."""
    words = f"{to_five(set_up.heat_c):.0f} °C"
    if set_up.colour and set_up.light:
        words += f", {set_up.colour} in {LIGHT[set_up.light]}"
    elif set_up.read_by == "furnace":
        words += " on the furnace"
    return words


def _magnet_words(set_up: SetUpOut) -> str | None:
    """Return what the magnet says of a heat read by eye: a floor, never the target."""
    if set_up.read_by == "furnace":
        return None
    more_c = to_five(set_up.heat_c) - MAGNET_LOST_C
    if more_c > JUST_PAST_C:
        return f"past where the magnet lets go (770 °C): {more_c:.0f} °C more"
    if more_c >= -JUST_PAST_C:
        return "where the magnet just lets go (770 °C), and no colder"
    return "short of where the magnet lets go (770 °C)"


def heated(do: Doing, set_up: SetUpOut) -> StepOut:
    """Return the step that brings the part to its hardening heat."""
    magnet = _magnet_words(set_up)
    fire = do.work.source is not None and do.work.source.kind in FIRES
    action = f"Heat to {_heat_words(set_up)}" + (f", {magnet}" if magnet else "")
    if set_up.to_heat_s:
        action += f"; about {shown_time(max(5.0 * round(set_up.to_heat_s / 5.0), 5.0))}"
    if fire and set_up.past_zone_mm is not None and do.is_local:
        past_mm = set_up.past_zone_mm
        action += (
            f". Zone and {past_mm:.0f} mm past it" if past_mm >= 0.5 else ". Zone, no farther"
        )
    heat_c = to_five(set_up.heat_c)
    short = f"heat to {heat_c:.0f} °C"
    if set_up.colour and set_up.light:
        past = ", past where the magnet lets go" if magnet and magnet.startswith("past") else ""
        short += f" ({set_up.colour} in {LIGHT[set_up.light]}{past})"
    return StepOut(
        stage="heat",
        action=action,
        short=short,
        means=f"{heat_c:.0f} °C crayon: its mark melts"
        if set_up.read_by == "crayon"
        else READ_BY[set_up.read_by],
        check=_even(set_up),
        otherwise=_misread(set_up),
        temperature_c=heat_c,
        band_c=_hardening_band(do),
        colour=set_up.colour,
        read_by=set_up.read_by,
        minutes=round(set_up.to_heat_s / 60.0, 1) if set_up.to_heat_s else None,
        length_mm=_reach_mm(do),
        source=do.steel.hardened.temperature_c.source if do.steel.hardened else None,
    )


def _hardening_band(do: Doing) -> tuple[float, float] | None:
    """Return the published hardening range of the steel for its bath. [°C]."""
    return do.work.heats_c


def _even(set_up: SetUpOut) -> str:
    """Return what the heat looks like when it is right."""
    if set_up.read_by == "furnace":
        return "the part has the colour of the walls: the soak counts from here"
    return "one colour all round, no dark core, corners no brighter than the rest"


def _misread(set_up: SetUpOut) -> str | None:
    """Return what to do with a heat that was missed."""
    if set_up.read_by == "furnace":
        return None
    return "too hot: let it go black and start again; never quench from a falling orange"


def held(do: Doing, set_up: SetUpOut) -> StepOut:
    """Return how long the part is held at its heat, as it was judged."""
    source = do.work.source
    furnace = source is not None and source.kind in {"furnace", "salt-bath"}
    seconds = 60.0 * soak_min(do.steel, do.thick_mm) if furnace else set_up.hold_s
    if furnace:
        action = (
            f"Soak {shown_time(seconds)}, counted from when the part is as hot as the walls"
        )
        check = "the instrument holds within 10 °C"
    elif source is not None and source.kind == "induction":
        action, check = f"Power off after {shown_time(seconds)} at heat", "no corner melts"
    else:
        where = "in the fire, blast low" if source and source.kind == "fire" else (
            "flame drawn back a little"
        )  # fmt: skip
        action = f"Hold {shown_time(seconds)}, {where}"
        check = "the colour stays; longer burns the carbon off the edges"
    return StepOut(
        stage="heat",
        action=action,
        short=f"{'soak' if furnace else 'hold'} {shown_time(seconds)}",
        means="clock",
        check=check,
        temperature_c=to_five(set_up.heat_c),
        colour=set_up.colour,
        read_by=set_up.read_by,
        minutes=round(seconds / 60.0, 2),
        source=soak_source(do.steel) if furnace else "chosen by the forecast of this option",
    )
