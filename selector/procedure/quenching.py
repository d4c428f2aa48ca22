"""Into the bath, and what says at once whether it took."""

from selector.job.geometry import mass_kg
from selector.job.process import OIL_L_PER_KG
from selector.job.together import at_once, is_trayed
from selector.procedure.doing import Doing
from selector.procedure.heating import to_five
from selector.procedure.instrument import instrument_for, means_of, quenched_go, right_words
from selector.procedure.laid import within_s
from selector.procedure.practice import (
    BATH_MIN,
    COMMON,
    HAND_WARM_C,
    SALT_LEAST_MIN,
    SALT_MIN_PER_MM,
    SALT_MOST_MIN,
    WASH_C,
)
from selector.procedure.protection import protection
from selector.procedure.shape import is_plate
from selector.record import StepOut
from selector.wording import in_sentence, shown_time

BATHS = {
    "water": "water", "warm-water": "warm water", "brine": "brine", "oil": "oil",
    "fast-oil": "fast oil", "vegetable-oil": "vegetable oil", "polymer": "polymer quench",
    "hot-salt": "hot salt", "hot-oil": "hot oil", "air": "air", "plates": "the plates",
}  # fmt: skip

# A flat not this many times as long as wide goes in on edge, as a plane iron does. COMMON. [-]
BROAD = 5.0


def quenching_steps(do: Doing) -> list[StepOut]:
    """Return the quench and the test that follows it."""
    if do.work.medium is None or do.set_up is None:
        return []
    if do.dip is not None:
        return [dipped(do)]
    medium = do.work.medium
    if medium.severity_class == "air":
        return [_cooled_in_air(do), tried(do)]
    if medium.kind in {"hot-salt", "hot-oil"}:
        bainite = do.work.route.process == "austemper"
        return [_into_salt(do)] if bainite else [_into_salt(do), tried(do)]
    return [quenched(do), tried(do)]


def _bath_words(do: Doing) -> str:
    """Return the bath as the workshop has it: "oil, 15 l at 50 °C"."""
    medium, kept = do.work.medium, do.kept_bath
    words = BATHS["air"] if medium is None else BATHS.get(medium.slug, in_sentence(medium.name))
    if kept is not None and kept.volume is not None:
        words += f", {kept.volume:.3g} l"
    elif do.work.medium is not None and do.work.medium.is_oil:
        words += f", {bath_l(do):.3g} l or more and deep enough,"
    return f"{words} at {bath_c(do):.0f} °C"


def bath_c(do: Doing) -> float:
    """Return how warm the bath is when the part goes in. [°C]."""
    kept, set_up = do.kept_bath, do.set_up
    if kept is not None and kept.temperature is not None:
        return kept.temperature
    if set_up is not None and set_up.bath_c is not None:
        return to_five(set_up.bath_c)
    return 20.0


def bath_l(do: Doing) -> float | None:
    """Return the volume of the bath, or what the part needs where none is given. [l]."""
    kept, medium = do.kept_bath, do.work.medium
    if kept is not None and kept.volume is not None:
        return kept.volume
    if medium is None or medium.severity_class == "air":
        return None
    return round(max(OIL_L_PER_KG * mass_kg(do.part), 1.0), 1)


def _entry_words(do: Doing) -> str:
    """Return how the part goes in, so that it stays straight."""
    tube = all(section.bore for section in do.part.section)
    flat = all(section.shape == "flat" for section in do.part.section)
    if _is_lot(do):
        return "shaken in spread out, into a wire basket"
    if is_plate(do):
        return "on edge, straight down" + (", bore across the stream" if tube else "")
    if do.is_local:
        return "hot end first, straight down"
    wide_mm = max(section.across_mm for section in do.part.section)
    if flat and (not do.is_slender or do.part.length_mm < BROAD * wide_mm):
        return "on edge, straight down"
    if flat and do.has_edge:
        return "point or cutting end first, straight down"
    return "end first, straight down" + (", bore upright" if tube else "")


def _is_lot(do: Doing) -> bool:
    """Return whether several small parts go into the bath together."""
    several = do.part.quantity > 1 and at_once(do.work, do.part) > 1
    return several and is_trayed(do.work, do.part)


def _until(do: Doing) -> tuple[str, float]:
    """Return until what the part stays in, and about how long. [min]."""
    medium = do.work.medium
    kind = "oil" if medium is None else medium.severity_class
    plates = medium is not None and medium.kind == "plates"
    rate, least = BATH_MIN["plates" if plates else kind]
    low, high = HAND_WARM_C
    minutes = max(rate * do.thick_mm, least)
    minutes = 5.0 * round(minutes / 5.0) if minutes >= 10.0 else round(minutes * 2.0) / 2.0
    hot_bath = kind != "air" and bath_c(do) > low
    until = "until it is as warm as the bath" if hot_bath else (
        f"until it can just be held ({low:.0f} to {high:.0f} °C)"
    )  # fmt: skip
    return until, minutes


def quenched(do: Doing) -> StepOut:
    """Return the quench of a part in a liquid."""
    set_up = do.set_up
    seconds = within_s(set_up) if set_up is not None else 2.0
    until, minutes = _until(do)
    bath, entry = _bath_words(do), _entry_words(do)
    narrow = do.is_slender or do.thinnest_mm < 5.0
    moved = "up and down, never sideways" if narrow and not _is_lot(do) else "about"
    action = (
        f"Into the {bath} within {seconds:.0f} s: {entry}, all of it under; keep it moving "
        f"{moved} {until}, about {shown_time(60 * minutes)}"
    )
    return StepOut(
        stage="quench",
        action=action,
        short=f"{bath}, {entry.split(',')[0]}, moving",
        means=bath,
        check="no flame stands on the oil" if do.work.medium and do.work.medium.is_oil else
        "it hisses evenly, no bubble stands on it",
        otherwise=_straighten(do),
        temperature_c=bath_c(do),
        minutes=minutes,
        within_s=seconds,
        volume_l=bath_l(do),
        source=f"time from hand to bath as judged; the rest {COMMON}",
    )  # fmt: skip


def _straighten(do: Doing) -> str | None:
    """Return when a bent part may be straightened."""
    if do.work.medium is None or do.work.medium.severity_class == "water":
        return "bent: leave it; straighten warm, in the temper"
    return "bent: straighten it in the minute while it is over 200 °C, or warm in the temper"


def _cooled_in_air(do: Doing) -> StepOut:
    """Return the quench of a part in air or between plates."""
    until, minutes = _until(do)
    plates = do.work.medium is not None and do.work.medium.kind == "plates"
    foil = protection(do) == "foil"
    out = "Out, foil and all, and" if foil else "Out, and"
    action = f"{out} {'clamp it between the plates' if plates else 'hang it in still air'}"
    return StepOut(
        stage="quench",
        action=f"{action} {until}, about {shown_time(60 * minutes)}",
        short=f"cool {'between plates' if plates else 'in air'} to hand-warm",
        means="aluminium plates" if plates else f"wire hook or rack{', foil left on' * foil}",
        check="no draught on one side" if not plates else "clamped within 10 s",
        otherwise="bent: straighten it while it is over 200 °C, never cold",
        temperature_c=bath_c(do),
        minutes=minutes,
        source=COMMON,
    )


def _into_salt(do: Doing) -> StepOut:
    """Return the quench into hot salt, to equalise or to turn to bainite there."""
    span = do.work.route.temperature_c
    bainite = do.work.route.process == "austemper"
    at_c = do.kept_bath.temperature if do.kept_bath and do.kept_bath.temperature else (
        to_five(span.middle) if span else 250.0
    )  # fmt: skip
    if bainite:
        at_c = do.temper.temperature_c
    equal = min(max(SALT_MIN_PER_MM * do.thick_mm, SALT_LEAST_MIN), SALT_MOST_MIN)
    minutes = equal
    if bainite:
        minutes = max(5.0 * round(do.temper.time_s / 300.0), 5.0)
    then = "wash in hot water" if bainite else "then hang in still air to hand-warm, and wash"
    bath = "salt" if do.work.medium is None or not do.work.medium.is_oil else "hot oil"
    return StepOut(
        stage="quench",
        action=f"Straight into the {bath} at {at_c:.0f} °C, bone dry, all of it under; hold "
        f"{shown_time(60 * minutes)}, {then}",
        short=f"into {bath} at {at_c:.0f} °C for {shown_time(60 * minutes)}",
        means=f"{bath} pot",
        check=f"{bath} clear and stirred; pot back at its heat within a minute",
        temperature_c=at_c,
        minutes=round(minutes, 1),
        source=span.source if span else None,
    )


def dipped(do: Doing) -> StepOut:
    """Return the dip of the end alone, with heat left behind it."""
    dip = do.dip
    if dip is None:
        msg = f"{do.work.label} has no dip that leaves heat behind the end"
        raise ValueError(msg)
    action = (
        f"Dip {dip.under_mm:.0f} mm of the end in {_bath_words(do)}, up and down by 5 mm so "
        f"that no line stands, for {dip.dip_s:.0f} s; the rest stays red"
    )
    return StepOut(
        stage="quench",
        action=action,
        short=f"dip {dip.under_mm:.0f} mm of the end in {_bath_words(do)}, {dip.dip_s:.0f} s",
        means=_bath_words(do),
        check="the end is black, a drop of water on it stays; behind it still glows or hisses",
        otherwise="all of it cold: temper it on a plate or in the flame from behind instead",
        temperature_c=bath_c(do),
        minutes=round(dip.dip_s / 60.0, 2),
        length_mm=round(dip.under_mm),
        volume_l=bath_l(do),
        source="chosen by the forecast of this option",
    )


def tried(do: Doing) -> StepOut:
    """Return the test right after the quench, and what each result means."""
    hrc = do.quenched_hrc
    expected = 0.0 if hrc is None else hrc
    test = instrument_for(do.checks, expected)
    slow = do.work.medium is not None and do.work.medium.severity_class == "air"
    why = "too short a soak" if slow else "too slow into the bath"
    where = "the zone" if do.is_local else "a working face"
    return StepOut(
        stage="test",
        action=f"Wipe it, rub a patch bright, try {where} with {test.words} before the temper",
        means=means_of(do, test),
        check=right_words(test, quenched_go(do, test), expected),
        otherwise="too soft: file 0.2 mm deeper: hard below was skin; soft below was too cool "
        f"or {why}: what stayed soft may be heated again at once; soft in spots: scale or "
        "steam clung: brush it bare, heat it again, slowly, move it more",
        hardness_hrc=None if hrc is None else (round(hrc - 2.0, 1), round(hrc + 2.0, 1)),
        source=COMMON,
    )


def quenched_from(do: Doing) -> StepOut:
    """Return the quench of a cased part, straight from its heat."""
    shows = "the crust or scale flies off and leaves it grey"
    return quenched(do).model_copy(update={"check": shows})


def case_tried() -> StepOut:
    """Return the file test of a case."""
    # Any point goes through a thin case; a file does not.
    means = "a new file"
    return StepOut(
        stage="test",
        action=f"Wash it in water at {WASH_C:.0f} °C, dry it, try the case with {means}",
        means=means,
        check="it skates all over; on what was spared it bites",
        temperature_c=WASH_C,
        otherwise="it bites: not enough carbon or too cool; case it again before the temper",
        source=COMMON,
    )
