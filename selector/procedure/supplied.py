"""Options without heat: bar as bought, bar bought prehard, elements bought hard."""

import numpy as np

from selector.job.ready_hard import TURNED_HRC, delivered_hrc, is_screw, is_wire, nominal_mm
from selector.procedure.bar import STRIP_MM, bar_size, proved
from selector.procedure.doing import Doing
from selector.procedure.instrument import file_words
from selector.procedure.practice import COMMON, RELIEF_RUNOUT_MM
from selector.procedure.shape import rounded
from selector.record import StepOut
from selector.wording import condition_words, shown_limit, shown_range

# A wound spring of hard wire is relieved of the strains of winding. Common practice; EN 13906-1
# asks for it too (from memory). [°C], [min]
RELIEF_C, RELIEF_MIN = 230.0, 30.0
# Cobalt drills cut plate up to here, as its makers advise for 500 HB plate (from memory). [HRC]
COBALT_HRC = 52.0
# The skin of a ground shaft is hard about so deep. Makers' sheets (from memory). [mm]
SKIN_MM = 2.0


def supplied_steps(do: Doing) -> list[StepOut]:
    """Return the steps of a part that no heat touches."""
    kind = do.work.condition.name
    if kind == "hard-element":
        return [_hard_bought(do), _hard_fitted(do), _sized(do)]
    # Wire has no edges to break.
    edges = [] if is_wire(do.work.condition) else [rounded(do)]
    return [proved(do), _proved_hard(do), _machined(do), *edges, *_relieved(do), _sized(do)]


def _sold(do: Doing) -> str:
    """Return the hardness of the bar as it is sold, in one scale."""
    return shown_range(*do.surface_hrc)


def _proved_hard(do: Doing) -> StepOut:
    """Return the test of the bar as it is bought."""
    condition = do.work.condition.name
    prehard = condition == "prehard"
    has_tester = {"tester", "rebound"} & set(do.checks)
    means = "the hardness tester" if has_tester else "a new file"
    hard = delivered_hrc(do.work.condition) > TURNED_HRC
    good = "it cuts, with more effort than mild steel" if prehard else "it cuts freely"
    if has_tester or hard:
        good = "it reads that" if has_tester else file_words(float(np.mean(do.surface_hrc)))
    return StepOut(
        stage="bar",
        action=f"Try the bar with {means}: {_sold(do)}, {condition_words(condition)}",
        means=means,
        check=good,
        otherwise="softer or harder than that: it is another bar, ask the dealer",
        hardness_hrc=do.surface_hrc,
        source=COMMON,
    )


def _machined(do: Doing) -> StepOut:
    """Return how the bar is machined to size, in its condition."""
    condition = do.work.condition.name
    thick, long = max(s.size for s in do.part.section), do.part.length_mm
    size = f"{thick:g} mm thick at most, {long:g} mm long"
    if delivered_hrc(do.work.condition) > TURNED_HRC:
        return _cut_hard(do, size)
    action = {
        "prehard": f"Machine it to size, {size}, as it is: carbide or slow high-speed steel, "
        "with oil",
        "cold-drawn": f"Machine it to size, {size}, equal cuts from opposite sides: it bows "
        "when one side alone is cut",
    }.get(condition, f"Machine it to size, {size}, as it is; no heat")
    left = "Leave it as bought" if condition != "prehard" else "Use it as it is, prehard"
    return StepOut(
        stage="finish",
        action=action,
        short=f"{left[:1].lower()}{left[1:]} ({_sold(do)}): machine to size, no heat",
        means=", ".join(do.shop.machine) or "lathe, file",
        check="to size and drawing",
        otherwise="no torch, weld or blue grinding mark on it: that undoes its hardness"
        if condition == "prehard" else None,
        length_mm=thick,
        source=COMMON,
    )  # fmt: skip


def _cut_hard(do: Doing, size: str) -> StepOut:
    """Return how wire, strip and plate are shaped that are bought too hard to be turned."""
    wire, strip = is_wire(do.work.condition), do.thinnest_mm <= STRIP_MM
    shaped = "wind or bend it cold" if wire else "grind its edges"
    shaped += ", bend it cold and wide" if strip and not wire else ""
    (holes, in_short), relief = _holes(do), " but the relief" if _winds_wire(do) else ""
    bent = wire or strip
    return StepOut(
        stage="finish",
        action=f"Cut it with an abrasive disc, dipped often, {size}; {shaped}{holes}; no heat "
        "but a relief under 250 °C",
        short=f"use it as it is, prehard ({_sold(do)}): cut with a disc, {shaped}{in_short}, "
        f"no heat{relief}",
        means="cutting disc, grindstone, former" if bent else "cutting disc, grindstone",
        check="no blue at the cut, no crack at the bend" if bent else "no blue at the cut",
        otherwise="it cracks where it is bent: a wider bend, or bend it soft and harden it"
        if bent
        else "blue at the cut is soft: grind that off; do not bend it",
        length_mm=max(s.size for s in do.part.section),
        source=COMMON,
    )


def _holes(do: Doing) -> tuple[str, str]:
    """Return how holes and slots are cut in what is bought hard, at length and in short."""
    kinds = {feature.kind for feature in do.part.feature}
    metal = "carbide" if delivered_hrc(do.work.condition) > COBALT_HRC else "cobalt"
    slots = ", slots by a thin disc" if "slot" in kinds else ""
    if "cross-hole" not in kinds:
        return slots, slots
    drilled = f", drill the holes with {metal} drills, stiff and slow, never left to rub"
    return f"{drilled}, or let the dealer cut them{slots}", f", {metal} drills{slots}"


def _winds_wire(do: Doing) -> bool:
    """Return whether a spring is wound of wire bought hard."""
    return is_wire(do.work.condition) and do.job.asked.is_spring


def _relieved(do: Doing) -> list[StepOut]:
    """Return how a spring of wire bought hard is relieved once it is wound."""
    if not _winds_wire(do):
        return []
    ceilings = do.job.temper_ceilings_c
    oven = next((m for m in ("oven", "furnace") if ceilings.get(m, 0.0) >= RELIEF_C), None)
    own = "" if oven else ", by a spring maker or heat treater: there is no oven here for it"
    return [
        StepOut(
            stage="temper",
            action=f"Relieve it once wound, {RELIEF_MIN:.0f} min at {RELIEF_C:.0f} °C{own}; it "
            "closes in a little, so wind the first one and measure",
            short=f"relieve it {RELIEF_MIN:.0f} min at {RELIEF_C:.0f} °C"
            + (own and ", sent out"),
            means=oven or "sent out",
            check="straw to brown all over, and it keeps its length when pressed solid thrice",
            otherwise="it takes a set: more wire or a lower load, not a longer relief",
            temperature_c=RELIEF_C,
            minutes=RELIEF_MIN,
            source=COMMON,
        )
    ]


def _sized(do: Doing) -> StepOut:
    """Return the last check of size and truth."""
    move = do.prediction.movement
    runs = f"runs true within {shown_limit(move.permitted_mm)}" if move.stated else "to drawing"
    long = do.part.length_mm
    finish = ", then oil it against rust" if do.steel.corrosion == "none" else ""
    return StepOut(
        stage="check",
        action=f"Measure it: {long:g} mm long, {runs}{finish}",
        means="micrometer, dial gauge",
        check="goes together by hand or as the fit asks",
        length_mm=move.permitted_mm if move.stated else long,
        source=COMMON,
    )


def _hard_bought(do: Doing) -> StepOut:
    """Return what is written on the order of a ready-hard element."""
    size, made = bar_size(do).replace(" or over", ""), "ground to h6 or m6"
    if is_screw(do.work.condition):
        thickest = max(section.size for section in do.part.section)
        size = f"M{nominal_mm(do.work.condition, thickest):g}"
        made = "with the point that is drawn"
    return StepOut(
        stage="order",
        action=f"Order {do.steel.spoken}, {size} × {do.part.length_mm:g} mm or the next "
        f"length, {_sold(do)} on the paper, {made}",
        short=f"buy it hard ({_sold(do)})",
        means="bearing or tool dealer",
        check="a new file skates on it",
        otherwise="it bites: it is soft shaft, send it back",
        hardness_hrc=do.surface_hrc,
        source=COMMON,
    )


def _hard_fitted(do: Doing) -> StepOut:
    """Return how a hard element is cut to length, and set where it works."""
    if is_screw(do.work.condition):
        short = "use it as it comes"
        set_in = ""
    else:
        set_in = _set_in(do)
        short = f"cut it cool with a disc, {set_in}"
    return StepOut(
        stage="finish",
        action=f"Cut it to {do.part.length_mm:g} mm with a thin abrasive disc, dipped often, "
        f"dress the end{'; ' * bool(set_in)}{set_in}",
        short=short,
        means="cutting disc, face shield",
        check="no blue at the cut",
        otherwise="blue is soft: cut that off",
        length_mm=do.part.length_mm,
        source=COMMON,
    )


def _set_in(do: Doing) -> str:
    """Return what is done to a hard element beside cutting it, by its length and its use."""
    if do.has_edge:
        return "grind its edge, dipped often"
    if do.work.condition.sold_for:
        return "use it as it comes"
    if not do.is_slender:
        return "press or glue it in cold, its seat reamed for it"
    soft_mm = 0.5 * max(s.size for s in do.part.section) - SKIN_MM
    cored = float(np.median(do.prediction.core_hrc)) < TURNED_HRC and soft_mm > SKIN_MM
    ends = "centre the ends in the soft core, through the skin with carbide" if cored else (
        "grind the ends"
    )  # fmt: skip
    move = do.prediction.movement
    fine = move.stated and move.permitted_mm <= RELIEF_RUNOUT_MM
    within = shown_limit(move.permitted_mm)
    true = f"turned on V-blocks it must run within {within}, else grind it between centres"
    return f"{ends}; {true}" if fine else ends
