"""How the source of heat is laid out for a part, before anything is hot."""

import math

from selector.job.geometry import mass_kg
from selector.job.together import at_once, heats, is_trayed
from selector.job.treatment import FLAMES
from selector.procedure.doing import Doing
from selector.procedure.practice import COMMON, LATEST_S
from selector.procedure.protection import protection
from selector.procedure.shape import left_on, skin_left_mm
from selector.record import SetUpOut, StepOut
from selector.wording import shown_time

# Foil of the usual kind stands this; the better kind 1230. Foil makers (from memory). [°C]
FOIL_C = 1090.0
# What a small furnace is loaded with so that all of it comes to heat evenly and the bath stays
# cool. COMMON. [kg]
LOAD_KG = 2.0
# A part is taken up, quenched and laid away in this time. COMMON. [s]
HANDLED_S = 30.0


def set_up(do: Doing) -> StepOut:
    """Return how the source of heat is laid out for this part."""
    source = do.work.source
    kind = source.kind if source else "furnace"
    action = _fire_laid(do) if kind in FLAMES else _furnace_laid(do)
    if kind == "induction":
        action = "Fit the coil 3 mm clear all round the zone, water on, part on a ceramic stop"
    far_mm = reach_mm(do)
    return StepOut(
        stage="set-up",
        action=action + _of_many(do),
        short=_kept_words(do),
        means=source.name if source else None,
        check=_rehearsed(do),
        length_mm=far_mm,
        temperature_c=do.set_up.heat_c if do.set_up and far_mm is None else None,
        source=COMMON,
    )


def _of_many(do: Doing) -> str:
    """Return how several parts are heated: a load at a time, or one after the other."""
    count, source = do.part.quantity, do.work.source
    if count < 2 or source is None or do.set_up is None:
        return ""
    if source.kind in {"furnace", "salt-bath"}:
        loads = math.ceil(count * mass_kg(do.part) / LOAD_KG)
        all_of = f"all {count} in one load" if loads == 1 else f"{count} in {loads} loads"
        return (
            f"; {all_of}, in a wire basket or on a tray that goes into the bath, none touching"
        )
    each_s = (do.set_up.to_heat_s or 0.0) + do.set_up.hold_s + HANDLED_S
    together, runs = at_once(do.work, do.part), heats(do.work, do.part)
    hours = shown_time(60.0 * math.ceil(runs * each_s / 60.0))
    if together == 1:
        return f"; one after the other, {shown_time(each_s)} each, {hours} for {count}"
    some = min(together, count)
    if not is_trayed(do.work, do.part):
        return f"; {some} side by side in the fire, each taken out and quenched by itself"
    lots = "one heat" if runs == 1 else f"{runs} heats"
    return (
        f"; {some} at a time in a small tray or a length of pipe, spread out, shaken into the "
        f"bath: {lots}; try one of the first by the file"
    )


def _kept_words(do: Doing) -> str | None:
    """Return what the skin is kept by, and that it is to be bought where it is not there."""
    words = {
        "foil": "wrap in stainless foil",
        "coat": "coat with anti-scale compound",
        "pack": "pack in a pipe of cast-iron chips or spent charcoal",
    }
    kept = words.get(protection(do))
    if protection(do) == "bare":
        return "a lump of charcoal beside it against a soft skin"
    return kept if kept is None or do.shop.protect else f"{kept} (to buy)"


def _rehearsed(do: Doing) -> str:
    """Return the dry run into the bath."""
    medium, set_up = do.work.medium, do.set_up
    if medium is None or set_up is None or medium.severity_class == "air":
        return "rack or plates stand ready, dry and clear"
    return f"dry run, part cold, from the heat to over the bath: {within_s(set_up):.0f} s"


def within_s(set_up: SetUpOut) -> float:
    """Return how soon the part must be under, as it was judged, in whole seconds. [s]."""
    return min(float(math.ceil(set_up.delay_s or 2.0)), LATEST_S)


def reach_mm(do: Doing) -> float | None:
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
        held = f"part in a loose sleeve in the {where}, slowest speed"
        return f"Firebrick behind the end, out of the wind; {held}; {_nozzle(do)}"
    what = "the end alone" if do.is_local else "part"
    if slug == "charcoal-forge":
        return (
            f"Deep clean charcoal or coke fire, little blast, {what} in the heart of it, {turn}"
        )
    if slug == "forge":
        where = "in the chamber" if do.is_local else "in a length of pipe"
        return f"Forge up to heat first, soft flame, {what} {where}, {turn}"
    return f"Hearth of soft firebrick round the part, out of the wind; {_nozzle(do)}; {turn}"


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
    fire = do.work.source is not None and do.work.source.kind == "fire"
    if any(section.shape == "flat" for section in do.part.section):
        thick = "" if fire else ", flame on the thick part"
        return f"turned over without a stop{thick}"
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
    elif kept == "pack":
        laid = (
            "Pack it in a lidded pipe of cast-iron chips or spent charcoal, a wire on it to "
            "draw it out by: no foil goes into a bath"
        )
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
