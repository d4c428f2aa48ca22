"""What is done first to a part that comes plated, hard or welded."""

from catalog.steel import Steel
from selector.job.sold import is_forged
from selector.procedure.doing import Doing
from selector.procedure.practice import (
    ASM,
    COMMON,
    NORMALISE_C,
    PLATING_MM,
    SOFTEN_C,
    SOFTEN_MIN,
)
from selector.record import StepOut

# At a fire there is no hour to be had: a moment at heat, then a night in ash. COMMON. [min]
AT_FIRE_MIN = 5.0
# Leaner steel bears a second quench upon the first; a richer one coarsens and cracks. COMMON.
# [wt %]
RICH_WT_PCT = 0.6
DULL_RED = "dull red, short of where the magnet lets go"


def softened(do: Doing) -> list[StepOut]:
    """Return what is done first to a part that is hard, plated or welded already."""
    condition, stock = do.part.condition, do.work.stock
    if condition == "plated":
        return [_stripped()]
    if stock is not None and is_forged(do.job.asked, stock, do.work.condition):
        return [_forged(do)]
    if not do.work.hardens:
        return []
    if condition == "hard":
        return [_softened(do)]
    return [_normalised(do)] if condition == "welded" and _has_heat(do) else []


def hardened_anew(do: Doing) -> str:
    """Return how a part is hardened once more that a first quench has made hard already."""
    if _is_rich(do.steel):
        return (
            "soften it first, hard steel heated again coarsens and cracks; then harden it anew"
        )
    return "harden it again"


def _is_rich(steel: Steel) -> bool:
    """Return whether steel is softened between two quenches: rich in carbon, or for air."""
    carbon, hardened = steel.composition_wt_pct.get("C"), steel.hardened
    rich = carbon is not None and carbon.middle >= RICH_WT_PCT
    return rich or (hardened is not None and hardened.quench == "air")


def _stripped() -> StepOut:
    """Return how plating comes off."""
    return StepOut(
        stage="prepare",
        action=f"Strip the plating off, up to {1000 * PLATING_MM:.0f} µm of it, out of doors, "
        "before any heat",
        means="stripper for that plating, or a lathe",
        check="bare steel all over",
        length_mm=PLATING_MM,
        source=COMMON,
    )


def _has_heat(do: Doing) -> bool:
    """Return whether the workshop itself can bring the part to a red heat."""
    return bool(do.furnaces) or do.work.source is not None


def _heater(do: Doing) -> str:
    """Return what gives the first heat: a furnace where there is one."""
    if do.furnaces:
        return do.furnaces[0].name
    return do.work.source.name if do.work.source else "the firm"


def _forged(do: Doing) -> StepOut:
    """Return how the head of a part is drawn out of a bar, and made even after it."""
    span, hardened = do.steel.temperature_c.get("normalise"), do.steel.hardened
    at_c = span.middle if span else hardened.temperature_c.high if hardened else NORMALISE_C
    return StepOut(
        stage="prepare",
        action="Forge the head to shape at orange (1000 to 1100 °C), stop when it is dull red; "
        f"then normalise all of it: {at_c:.0f} °C right through, still air",
        short="forge to shape, normalise",
        means="forge, anvil",
        check="no cracks or cold shuts; a file cuts it alike all over",
        otherwise="burnt or sparking: cut it off and start again",
        temperature_c=at_c,
        read_by="eye",
        source=COMMON,
    )


def _softened(do: Doing) -> StepOut:
    """Return how hard steel is softened before it is hardened anew."""
    span = do.steel.temperature_c.get("anneal")
    at_c = SOFTEN_C if span is None else min(span.middle, SOFTEN_C)
    slow = bool(do.furnaces) or do.work.source is None
    minutes = SOFTEN_MIN if slow else AT_FIRE_MIN
    cool = "leave it in to cool" if slow else "bury it in dry ash or vermiculite overnight"
    return StepOut(
        stage="prepare",
        action=f"Soften it first: {at_c:.0f} °C"
        + ("" if slow else f" ({DULL_RED})")
        + f", {minutes:.0f} min, then {cool}",
        means=_heater(do),
        check="a file cuts it freely all over",
        otherwise="soften it again: hard steel heated to harden cracks",
        temperature_c=at_c,
        minutes=minutes,
        read_by="furnace" if slow else "eye",
        colour=None if slow else DULL_RED,
        source=ASM,
    )


def _normalised(do: Doing) -> StepOut:
    """Return how a weld is made even with the rest before it is hardened."""
    span = do.steel.temperature_c.get("normalise")
    hardened = do.steel.hardened
    at_c = span.middle if span else hardened.temperature_c.high if hardened else NORMALISE_C
    return StepOut(
        stage="prepare",
        action=f"Normalise the weld first: {at_c:.0f} °C right through, then still air",
        means=_heater(do),
        check="a file cuts weld and bar alike",
        otherwise="hard beside the weld: normalise again, or it cracks in the bath",
        temperature_c=at_c,
        read_by="furnace" if do.furnaces else "eye",
        colour=None if do.furnaces else "cherry",
        source=ASM,
    )
