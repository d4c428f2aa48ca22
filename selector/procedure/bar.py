"""The first steps: be sure of the bar, and bring it to the shape that may go into the heat."""

import math
from dataclasses import replace

from catalog.steel import Steel
from selector.job.blank import BarShape, Blank, blank
from selector.job.ready_hard import is_wire
from selector.job.sold import is_forged
from selector.option.cost import bark_mm
from selector.procedure.doing import Doing
from selector.procedure.first_heat import softened
from selector.procedure.practice import (
    ASM,
    COMMON,
    RELIEF_C,
    RELIEF_MIN,
    RELIEF_PREHARD_C,
    RELIEF_RUNOUT_MM,
    RELIEF_SLENDER,
)
from selector.procedure.shape import left_mm, left_on, plugged, rounded
from selector.record import StepOut
from selector.requirement.workshop import Stock

# Thinner flat is sold in tenths. Common practice. [mm]
STRIP_MM = 3.0


def bar_steps(do: Doing) -> list[StepOut]:
    """Return how the bar is proved and brought to shape before it is hardened."""
    steps = [proved(do), *softened(do), *skimmed(do), *_relieved(do), rounded(do)]
    return [*steps, *plugged(do), *left_on(do)]


def proved(do: Doing) -> StepOut:
    """Return how to be sure that the bar is what it is said to be."""
    steel, stock = do.steel, do.work.stock
    if stock is None:
        action = f"Buy {steel.spoken}, {do.work.condition.name}, {bar_size(do)}, with its paper"
        return StepOut(
            stage="bar",
            action=action,
            means="dealer",
            check="the name is stamped or painted on the bar: paint it on the offcut too",
            otherwise=_coupon(do),
            length_mm=bar_of(do).size_mm,
            source=COMMON,
        )
    means = {
        "certificate": "certificate",
        "marking": "the mark, grinding wheel",
        "receipt": "receipt, grinding wheel",
    }.get(stock.evidence, "grinding wheel, coupon")
    action = {
        "certificate": f"Be sure it is {steel.spoken}: number on the bar against its paper",
        "marking": f"Be sure it is {steel.spoken}: read the mark on the bar, then spark it",
        "receipt": f"Be sure it is {steel.spoken}: find the receipt, then spark it",
    }.get(stock.evidence, f"Prove that it is {steel.spoken}: spark it, then try a coupon")
    check = "they agree" if stock.evidence == "certificate" else f"it throws {_spark(steel)}"
    return StepOut(
        stage="bar",
        action=f"{action}; {_bar_words(do, stock)}",
        means=means,
        check=check,
        otherwise=_coupon(do),
        length_mm=bar_of(do).size_mm,
        source=COMMON,
    )


def _bar_words(do: Doing, stock: Stock) -> str:
    """Return the size of bar that the part takes, or that it is drawn out of a thinner one."""
    if stock.size is None:
        return bar_size(do)
    own = f"the {stock.size:.1f}".removesuffix(".0") + " mm bar"
    if is_forged(do.job.asked, stock, do.work.condition):
        return f"forged to shape out of {own}"
    if bar_of(do).width_mm is None and stock.size < max(s.size for s in do.part.section):
        return f"{bar_size(do)}: {own} of the rack is too small"
    skinned = do.work.condition.surface == "black" and do.work.route.process != "none"
    if skinned and stock.size < bar_of(do).size_mm:
        return f"{own}, its skin off where it is hard and no more"
    return own


def _coupon(do: Doing) -> str:
    """Return what to do where the bar is in doubt."""
    if do.work.route.process == "case":
        return "in doubt case a pin of it first and snap it: hard rim, fibrous core"
    if not do.work.hardens:
        return "in doubt ask for the paper; a coupon quenched from red and filed tells"
    return (
        "in doubt harden a coupon of it first: it must skate a new file and break fine and grey"
    )


# What a bar of a size is called, by its shape.
_SIZED: dict[BarShape, str] = {
    "round": "Ø{0:g}", "square": "square {0:g} mm", "hexagon": "hexagon {0:g} mm",
    "flat": "flat {0:g} × {1:g} mm",
}  # fmt: skip


def bar_size(do: Doing) -> str:
    """Return the bar that the part is cut from, skin to come off included."""
    bar = bar_of(do)
    # Wire is bought at its size: what is over it is another spring.
    over = "" if is_wire(do.work.condition) else " or over"
    return _SIZED[bar.shape].format(bar.size_mm, bar.width_mm) + over


def bar_of(do: Doing) -> Blank:
    """Return the least bar that the part is cut from, what is left on and bark included."""
    # What the part says is ground off is in what is left on.
    bare = do.part.model_copy(update={"stock_removal": None})
    skin_mm = 2 * left_mm(do)
    if do.work.condition.surface == "black":
        skin_mm += 2 * _bark(do)
    sold = do.work.condition
    bar = blank(bare, sold.shapes).thicker(skin_mm, sold.size_mm.low)
    wide = None if bar.width_mm is None else _half_up(bar.width_mm)
    return replace(bar, size_mm=_half_up(bar.size_mm), width_mm=wide)


def _half_up(size_mm: float) -> float:
    """Return a size rounded up to half a millimetre, as bar is asked for; strip as it is."""
    return size_mm if size_mm < STRIP_MM else math.ceil(2.0 * size_mm - 1e-6) / 2.0


def _spark(steel: Steel) -> str:
    """Return what a steel throws on the grinding wheel."""
    held = {name: span.middle for name, span in steel.composition_wt_pct.items()}
    if steel.kind == "high-speed" or held.get("W", 0.0) > 4.0:
        return "short dull red rays and hardly a burst"
    if held.get("Cr", 0.0) >= 4.0:
        return "short orange rays with few bursts"
    carbon = held.get("C", 0.0)
    if carbon < 0.25:
        return "long straight rays with few forks"
    if carbon < 0.65:
        return "long rays with forked bursts"
    return "a thick bush of bursts close to the wheel"


def _bark(do: Doing) -> float:
    """Return the skin of black bar. [mm a side]."""
    return bark_mm(do.steel, max(section.size for section in do.part.section))


def skimmed(do: Doing) -> list[StepOut]:
    """Return how black bar loses its skin where it is to be hard."""
    if do.work.condition.surface != "black" or do.work.route.process == "none":
        return []
    skin_mm = round(_bark(do), 1)
    where = "over the zone and a diameter past it" if do.is_local else "all over"
    return [
        StepOut(
            stage="prepare",
            action=f"Skim the black skin off {where}, {skin_mm:g} mm a side",
            means=_skims_with(do),
            check="bright, no pits",
            length_mm=skin_mm,
            source="Diehl Steel, minimum allowances; carbon and alloy bar: " + COMMON,
        )
    ]


def _skims_with(do: Doing) -> str:
    """Return what the workshop has to take the skin of a bar off with."""
    round_bar = all(section.shape in {"round", "tube"} for section in do.part.section)
    suited = ("lathe",) if round_bar else ("mill", "shaper", "surface-grinder", "lathe")
    owned = [name for word in suited for name in do.shop.machine if word in name]
    return owned[0] if owned else "grinder, file"


def _needs_relief(do: Doing) -> bool:
    """Return whether the trade relieves this part of its stress before it is hardened."""
    limit_mm, thick = do.job.asked.limit.runout, max(s.size for s in do.part.section)
    fine = limit_mm is not None and limit_mm <= RELIEF_RUNOUT_MM
    slender = do.part.length_mm >= RELIEF_SLENDER * thick
    drawn = do.work.condition.name == "cold-drawn"
    return do.work.hardens and (fine or (slender and drawn))


def _relieved(do: Doing) -> list[StepOut]:
    """Return the stress relief of a part that must stay straight, where there is a furnace."""
    if not _needs_relief(do) or not do.furnaces or do.work.route.place != "workshop":
        return []
    return [relief(do)]


def relief(do: Doing) -> StepOut:
    """Return a stress relief between roughing out and the last cuts."""
    prehard = do.work.condition.name == "prehard"
    at_c = RELIEF_PREHARD_C if prehard else RELIEF_C
    return StepOut(
        stage="prepare",
        action=f"Rough out to 0.5 mm a side, relieve at {at_c:.0f} °C for "
        f"{RELIEF_MIN:.0f} min, leave it in to cool, then finish",
        short=f"rough out, relieve {RELIEF_MIN:.0f} min at {at_c:.0f} °C, finish",
        means=do.furnaces[0].name if do.furnaces else "the firm",
        check="runs as true after as before",
        otherwise="true it up now, not after it is hard",
        temperature_c=at_c,
        minutes=RELIEF_MIN,
        read_by="furnace",
        source=ASM,
    )
