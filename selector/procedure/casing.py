"""Case hardening in the workshop: by dips into compound, or for hours in a sealed box."""

from typing import Protocol

from selector.heat.colour import heat_colour
from selector.procedure.bar import proved, skimmed
from selector.procedure.checking import checking_steps
from selector.procedure.doing import Doing
from selector.procedure.heating import LIGHT, to_five
from selector.procedure.practice import (
    CARBONATE_PCT,
    COMMON,
    DIP_MIN,
    DIPS,
    PACKED_MM,
    WASH_C,
)
from selector.procedure.quenching import case_tried, quenched_from
from selector.procedure.shape import left_on, plugged, rounded
from selector.procedure.tempering import tempering_steps
from selector.record import StepOut
from selector.wording import hours_words, shown_time

BY_DEPTH = "by the depth that is asked, as judged"
# Longer than this a part is buried, not dipped. Model engineering practice (from memory). [h]
MOST_DIPPED_H = 0.3
# A pack that nobody reckoned is left in for the middle of its route's hours.
MIDDLE = 0.5
# What hardens without a heat of its own catalogued is quenched from here: ASM. [°C]
REHEAT_C = 790.0
REHEAT_MIN = 15.0


class Grown(Protocol):
    """How a case is grown: heat [°C], hours [h], depth left and ground off [mm]."""

    temperature_c: float
    hours: float
    depth_mm: float
    removed_mm: float


def _grown(prediction: object) -> Grown | None:
    """Return how the case of an option was reckoned to grow; None where nobody reckoned it."""
    run: Grown | None = getattr(prediction, "layer", None)
    return run


def cased_steps(do: Doing) -> list[StepOut]:
    """Return the steps of a part that is case-hardened in the workshop."""
    before = [proved(do), *skimmed(do), rounded(do), *plugged(do), *left_on(do), _spared(do)]
    long = do.work.route.kind == "carburise"
    cased = [_packed(), _boxed(do), _reheated(do)] if long else [fire(do), *_dips(do)]
    after = [quenched_from(do), case_tried(), *tempering_steps(do)]
    return [*before, *cased, *after, *checking_steps(do)]


def _spared(do: Doing) -> StepOut:
    """Return what keeps the carbon off what must stay soft."""
    where = " and ".join(_kept_soft(do))
    coat = f"; coat {where} with fireclay or copper" if where else ""
    if where and do.work.route.kind == "carburise":
        coat += ", or leave 1 mm on to turn off before the quench"
    return StepOut(
        stage="prepare",
        action=f"Degrease it in soda water at {WASH_C:.0f} °C{coat}; then no bare hands",
        means="washing soda" + (", fireclay or copper plate" if where else ""),
        check="clean bare steel where the case is to come",
        temperature_c=WASH_C,
        source=COMMON,
    )


def _kept_soft(do: Doing) -> list[str]:
    """Return what of a cased part is kept soft, in words."""
    soft = sorted({f.kind for f in do.part.feature} & {"thread", "keyway", "cross-hole"})
    bored = ["bore"] if any(section.bore for section in do.part.section) else []
    return [*bored, *(kind.replace("cross-", "") for kind in soft)]


def _source(do: Doing) -> str:
    """Return the source of heat by its name."""
    return do.work.source.name if do.work.source else "furnace"


def _case_c(do: Doing) -> float:
    """Return the heat at which carbon is taken up. [°C]."""
    run, span = _grown(do.prediction), do.work.route.temperature_c
    at_c = run.temperature_c if run else span.middle if span else 900.0
    return to_five(at_c)


def _case_colour(do: Doing, at_c: float) -> str | None:
    """Return how a heat looks in the workshop's light; None where an instrument reads it."""
    source = do.work.source
    if source is None or source.control != "eye":
        return None
    return heat_colour(at_c).name


def _by_eye(do: Doing, at_c: float) -> str:
    """Return a heat in words, by colour where there is no instrument."""
    colour = _case_colour(do, at_c)
    return f"{at_c:.0f} °C" + (f", {colour} in {LIGHT[do.shop.light]}" if colour else "")


def _read_by(do: Doing) -> str:
    """Return what the heat is read by."""
    return "eye" if _case_colour(do, _case_c(do)) else "furnace"


def _pack_h(do: Doing) -> tuple[float, str]:
    """Return the hours of a pack at its heat, and where they come from. [h]."""
    run = _grown(do.prediction)
    if run is not None:
        return run.hours, BY_DEPTH
    span = do.work.route.time_h
    if span is None:
        return 6.0, COMMON
    return span.low + MIDDLE * (span.high - span.low), span.source


def _packed() -> StepOut:
    """Return how the box is packed."""
    return StepOut(
        stage="case",
        action=f"Pack it in a steel box: {PACKED_MM:.0f} mm of wood charcoal, pea size, all "
        f"round, with {CARBONATE_PCT:.0f} % soda ash or chalk (never barium); two pins of the "
        "same bar beside it; lute the lid with fireclay",
        means="steel box, charcoal, soda ash or chalk, fireclay",
        check="lid dry and tight but for one pin hole",
        length_mm=PACKED_MM,
        source=COMMON,
    )


def _boxed(do: Doing) -> StepOut:
    """Return the hours in the box."""
    reckoned_h, source = _pack_h(do)
    hours = hours_words(reckoned_h)
    at_c = _case_c(do)
    depth_mm = do.work.route.depth_mm
    deep = do.lead.depth_mm or (depth_mm.low if depth_mm else 0.5)
    run = _grown(do.prediction)
    if run is not None:
        deep = run.depth_mm + run.removed_mm
    return StepOut(
        stage="case",
        action=f"Hold the box at {_by_eye(do, at_c)}, {hours} counted from when the box "
        "is hot through (allow 1 h); then let it cool shut",
        short=f"pack {hours} at {at_c:.0f} °C in a sealed box, from when it is hot through, "
        "cool shut",
        means=_source(do),
        check=f"quench and snap a pin: the fine rim is {deep:.2g} mm deep",
        otherwise="rim too thin: close it and go on",
        temperature_c=at_c,
        colour=_case_colour(do, at_c),
        read_by=_read_by(do),
        minutes=round(60.0 * reckoned_h),
        length_mm=round(deep, 2),
        source=source,
    )


def _reheated(do: Doing) -> StepOut:
    """Return the second heat, which makes the case fine before the quench."""
    hardened = do.steel.hardened
    at_c = hardened.temperature_c.middle if hardened else REHEAT_C
    at_c = 10.0 * round(at_c / 10.0)
    minutes = max(REHEAT_MIN, 5.0 * round(do.thick_mm / 5.0))
    turned = "turn off what was left on to stay soft, " if _kept_soft(do) else ""
    return StepOut(
        stage="heat",
        action=f"Brush it clean, {turned}heat again to "
        f"{_by_eye(do, at_c)}, hold {shown_time(60.0 * minutes)}",
        short=f"reheat to {at_c:.0f} °C, {shown_time(60.0 * minutes)}",
        means=_source(do),
        check="even all over",
        temperature_c=at_c,
        colour=_case_colour(do, at_c),
        read_by=_read_by(do),
        minutes=minutes,
        source=hardened.temperature_c.source if hardened else COMMON,
    )


def fire(do: Doing) -> StepOut:
    """Return the set-up for dips into compound."""
    return StepOut(
        stage="set-up",
        action="Hearth of firebrick out of doors; compound dry in an open steel tin, bath "
        "beside it; plain water for the wash, no acid near",
        means=_source(do),
        check="dry run from hearth to tin to bath",
        temperature_c=_case_c(do),
        source=COMMON,
    )


def _dips(do: Doing) -> list[StepOut]:
    """Return the dips into compound, from red to red."""
    at_c = _case_c(do)
    run, times = _grown(do.prediction), DIPS
    minutes, source = DIP_MIN, "model engineering practice (from memory)"
    if run is not None:
        # More than a few dips is a part buried in the compound, in a tin.
        times = DIPS if run.hours <= MOST_DIPPED_H else 1
        minutes, source = 60.0 * run.hours / times, BY_DEPTH
    again = f", {times} times over" if times > 1 else ""
    hold = shown_time(60.0 * minutes)
    action = f"Roll it in the compound till it is coated, back in the flame, {hold} at heat "
    action += f"under the crust{again}"
    if times == 1:
        action = (
            f"Bury it in the compound in a lidded steel tin, {hold} from when the tin is as "
        )
        action += "hot through"
    colour = _case_colour(do, at_c)
    seen = f" ({colour} in {LIGHT[do.shop.light]})" if colour else ""
    heat = StepOut(
        stage="heat",
        action=f"Heat to {_by_eye(do, at_c)}, well past where the magnet lets go (770 °C)",
        short=f"heat to {at_c:.0f} °C{seen}",
        means="the eye",
        check="one colour all round",
        temperature_c=at_c,
        colour=_case_colour(do, at_c),
        read_by=_read_by(do),
        source=do.work.route.temperature_c.source if do.work.route.temperature_c else COMMON,
    )  # fmt: skip
    dip = StepOut(
        stage="case",
        action=action,
        short=f"{'roll' if times > 1 else 'bury'} in compound, {hold} at heat{again}",
        means="case-hardening compound, no cyanide",
        check="a glassy crust all round",
        otherwise="bare spots stay soft: roll it again",
        temperature_c=at_c,
        colour=_case_colour(do, at_c),
        read_by=_read_by(do),
        minutes=round(minutes, 1),
        times=times,
        source=source,
    )
    return [heat, dip]
