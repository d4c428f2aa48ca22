"""Set up the source of heat, bring the part to its hardening heat, hold it there."""

from selector.heat.colour import MAGNET_LOST_C, heat_colour
from selector.job.geometry import section_ratio
from selector.job.soak import soak_min, soak_source
from selector.job.treatment import FLAMES
from selector.procedure.doing import Doing
from selector.procedure.laid import reach_mm, set_up
from selector.procedure.practice import (
    COMMON,
    PREHEAT_C,
    PREHEAT_FROM_MM,
    PREHEAT_MIN,
    SHEETS,
)
from selector.record import SetUpOut, StepOut
from selector.wording import shown_time

LIGHT = {"dim": "dim light", "shade": "the shade", "daylight": "daylight", "sun": "the sun"}
READ_BY = {
    "furnace": "the furnace's own instrument",
    "thermocouple": "a thermocouple pressed on the part, flame off it",
    "crayon": "a crayon",
    "infrared": "infrared on a scaled, dull face",
    "magnet": "magnet, then the eye",
    "eye": "the eye",
}
# The magnet says no more of a heat this near above where it lets go. [°C]
JUST_PAST_C = 8.0
# A torch that needs less than half or more than twice the time is another than was forecast.
FASTER, SLOWER = 0.5, 2.0
# A shorter time than this is no step of its own; what is held is held at least so long.
# COMMON. [s]
MOMENT_S = 10.0
# A fire brings touchy steel up to here slowly; sections so unlike count as touchy. COMMON.
# [°C], [-]
DULL_RED_C, UNEVEN = 650.0, 2.0


def heating_steps(do: Doing) -> list[StepOut]:
    """Return set-up, preheat, heat and hold of a part that is quenched in the workshop."""
    if do.set_up is None or do.work.source is None:
        return []
    return [set_up(do), *_preheated(do), heated(do, do.set_up), held(do, do.set_up)]


def _preheated(do: Doing) -> list[StepOut]:
    """Return the preheats of steel that is hurt by going straight to its heat."""
    source, set_up = do.work.source, do.set_up
    if source is None or set_up is None:
        return []
    if source.kind in FLAMES:
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


def heat_times_s(to_heat_s: float) -> tuple[float, float, float]:
    """Return the least time to a heat that will do, the forecast, and the most. [s]."""
    least, about, most = (
        max(5.0 * round(share * to_heat_s / 5.0), 5.0) for share in (FASTER, 1.0, SLOWER)
    )
    return least, about, most


def stronger(do: Doing) -> str:
    """Return what is changed about a fire or flame that heats too slowly or too fast."""
    source = do.work.source
    fire = source is not None and source.kind == "fire"
    return "more or less blast, a cleaner fire" if fire else "another nozzle or gas setting"


def time_words(to_heat_s: float) -> str:
    """Return how long a part takes to its heat: "about 55 s, 30 s to 1.8 min will do"."""
    least, about, most = (shown_time(time) for time in heat_times_s(to_heat_s))
    return f"about {about}, {least} to {most} will do"


def heated(do: Doing, set_up: SetUpOut) -> StepOut:
    """Return the step that brings the part to its hardening heat."""
    magnet = _magnet_words(set_up)
    fire = do.work.source is not None and do.work.source.kind in FLAMES
    action = f"Heat to {_heat_words(set_up)}" + (f", {magnet}" if magnet else "")
    if set_up.to_heat_s:
        action += f"; {time_words(set_up.to_heat_s)}"
    reach = None
    if fire and set_up.past_zone_mm is not None and do.is_local:
        past_mm = set_up.past_zone_mm
        reach = f"zone and {past_mm:.0f} mm past it" if past_mm >= 0.5 else "zone, no farther"
        action += f". {reach.capitalize()}"
    heat_c = to_five(set_up.heat_c)
    short = f"heat to {heat_c:.0f} °C"
    if set_up.colour and set_up.light:
        past = ", past where the magnet lets go" if magnet and magnet.startswith("past") else ""
        short += f" ({set_up.colour} in {LIGHT[set_up.light]}{past})"
    if reach is not None:
        # How far it goes is the heart of a local heat: it stands in the two lines too.
        short += f", {reach}"
    return StepOut(
        stage="heat",
        action=action,
        short=short,
        means=f"{heat_c:.0f} °C crayon: its mark melts"
        if set_up.read_by == "crayon"
        else READ_BY[set_up.read_by],
        check=_even(set_up),
        otherwise=_misread(do, set_up),
        temperature_c=heat_c,
        band_c=_hardening_band(do),
        colour=set_up.colour,
        read_by=set_up.read_by,
        minutes=round(set_up.to_heat_s / 60.0, 1) if set_up.to_heat_s else None,
        length_mm=reach_mm(do),
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


def _misread(do: Doing, set_up: SetUpOut) -> str | None:
    """Return what to do with a heat that was missed, or that came too soon or too late."""
    if set_up.read_by == "furnace":
        return None
    said = "too hot: let it go black and start again; never quench from a falling orange"
    return f"{said}; far off the time: {stronger(do)}" if set_up.to_heat_s else said


def held_parts_s(set_up: SetUpOut) -> tuple[float, float]:
    """Return how long a fire takes to make a zone of one colour, and how long that is kept.

    Parameters
    ----------
    set_up : SetUpOut
        Of a torch or fire.

    Returns
    -------
    tuple of float
        The first is 0 where it is even at once. [s]
    """
    even_s = MOMENT_S * round((set_up.even_s or 0.0) / MOMENT_S)
    # Together they are the hold that was judged, of which a moment is left once it is even.
    even_s = min(even_s, set_up.hold_s - MOMENT_S)
    if even_s < MOMENT_S:
        return 0.0, set_up.hold_s
    return even_s, set_up.hold_s - even_s


def _by_eye_words(set_up: SetUpOut, *, fire: bool) -> tuple[str, str]:
    """Return how a zone comes to one colour in a flame or fire and is kept, and in short."""
    even_s, kept_s = held_parts_s(set_up)
    where = "in the fire, blast low" if fire else "flame drawn back a little"
    action = f"Hold {shown_time(kept_s)}, {where}"
    short = f"hold {shown_time(kept_s)}"
    if even_s:
        way = "Move it about in the fire" if fire else "Play the flame over the dull ends"
        action = (
            f"{way} until all of it is of one colour, about {shown_time(even_s)}; then hold "
            f"{shown_time(kept_s)}, {where}"
        )
        short += " once it is of one colour"
    return action, short


def held(do: Doing, set_up: SetUpOut) -> StepOut:
    """Return how long the part is held at its heat, as it was judged."""
    source = do.work.source
    furnace = source is not None and source.kind in {"furnace", "salt-bath"}
    seconds = 60.0 * soak_min(do.steel, do.thick_mm) if furnace else set_up.hold_s
    if furnace:
        action = (
            f"Soak {shown_time(seconds)}, counted from when the part is as hot as the walls"
        )
        short, check = f"soak {shown_time(seconds)}", "the instrument holds within 10 °C"
    elif source is not None and source.kind == "induction":
        action = f"Power off after {shown_time(seconds)} at heat"
        short, check = f"hold {shown_time(seconds)}", "no corner melts"
    else:
        action, short = _by_eye_words(set_up, fire=source is not None and source.kind == "fire")
        check = "the colour stays; longer burns the carbon off the edges"
    return StepOut(
        stage="heat",
        action=action,
        short=short,
        means="clock",
        check=check,
        temperature_c=to_five(set_up.heat_c),
        colour=set_up.colour,
        read_by=set_up.read_by,
        minutes=round(seconds / 60.0, 2),
        source=soak_source(do.steel) if furnace else "chosen by the forecast of this option",
    )
