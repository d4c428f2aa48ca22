"""The last steps: hardness, truth and cracks, then finishing what was left on."""

import numpy as np

from selector.job.asked_words import asked_words
from selector.job.treatment import LAYERS
from selector.procedure.doing import Doing
from selector.procedure.first_heat import hardened_anew
from selector.procedure.instrument import (
    NEW_FILE,
    asked_window,
    go_window,
    instrument_for,
    means_of,
    right_words,
)
from selector.procedure.practice import COMMON, LIGHT_CUT_MM
from selector.procedure.shape import finishing_tools, left_mm
from selector.record import StepOut
from selector.wording import shown, shown_limit, shown_mm, shown_range

# Rockwell C wants a case this deep under it. Common practice. [mm]
ROCKWELL_MM = 0.7
TOO_SOFT = {
    "austemper": "too soft: the salt was too hot; too hard: too cool, or out of it too soon",
    "case": "too soft: the case is thin or the heat was low",
    "nitride": "too soft: too thin a layer, ask the firm for its reading",
    "chrome": "soft or chipped: the plate is thin; the firm strips it and does it again",
    "anneal": "hard: too quick a cooling; soften it again",
    "age": "too soft: too hot or too long; too hard: age it again, hotter by 15 °C",
    "normalise": "not even: heat it again",
}
# A piece softer than the usual by this, and by so many times what others are harder, is one
# that went wrong and no range to expect. COMMON. [HRC], [-]
TAIL_HRC, TAILED = 6.0, 2.0
# A struck end is drawn to blue at least. Common practice. [°C]
BLUE_C = 290.0


def checking_steps(do: Doing) -> list[StepOut]:
    """Return how a hardened part is looked over and finished."""
    return [hardness(do), *truth(do), *cracks(do), *finished(do)]


def hardness(do: Doing) -> StepOut:
    """Return the last hardness test, with what it should say."""
    low, high = do.surface_hrc
    middle = float(np.median(do.prediction.surface_hrc))
    test = instrument_for(do.checks, middle)
    thin = float(np.median(do.prediction.depth_mm)) < ROCKWELL_MM
    cased = do.work.route.process in LAYERS
    skin = cased and thin and middle >= 55.0
    if skin:
        test = NEW_FILE
    good = right_words(test, go_window(test, asked_window(do)), middle)
    if skin:
        good += ": a Rockwell point goes through the skin"
    where = "on the zone, and once behind it" if do.is_local else "on the working face"
    if do.is_local and do.prediction.hard_ends_mm:
        good += f"; soft beyond {max(do.prediction.hard_ends_mm):.0f} mm"
    return StepOut(
        stage="check",
        action=f"Try {test.words} {where}: {_usual_words(do)}, "
        f"{asked_words(do.lead)} is asked",
        means=means_of(do, test),
        check=good,
        otherwise=_too_soft(do),
        hardness_hrc=(low, high),
        source="forecast of this option",
    )  # fmt: skip


def _usual_words(do: Doing) -> str:
    """Return how hard it comes out, the piece whose heat was missed by itself."""
    low, high = do.surface_hrc
    lower, middle = (float(q) for q in np.quantile(do.prediction.surface_hrc, (0.25, 0.5)))
    if middle - low <= max(TAIL_HRC, TAILED * (high - middle)):
        return f"{shown_range(low, high)} is what to expect"
    return f"{shown_range(lower, high)} is usual, {shown(low)} where the heat was missed"


def _too_soft(do: Doing) -> str:
    """Return what is done with a finished part that comes out too soft."""
    process = do.work.route.process
    if process not in {"quench", "marquench"}:
        return TOO_SOFT[process]
    if do.work.route.place == "subcontract":
        return "too soft: back to the firm, with your reading"
    return f"too soft, though it was hard before the temper: {hardened_anew(do)}"


def truth(do: Doing) -> list[StepOut]:
    """Return the run-out check, where one is asked or the part is likely to bow."""
    move = do.prediction.movement
    typical, bad = (float(q) for q in np.quantile(move.moved_mm, (0.5, 0.95)))
    if not move.stated and (do.is_struck or bad < 0.5 * move.permitted_mm):
        return []
    on = "between centres, dial gauge" if "lathe" in do.shop.machine else "V-blocks, dial gauge"
    flat = all(section.shape == "flat" for section in do.part.section)
    bent = "straighten it little by little at its tempering heat, never cold"
    if do.work.route.process == "nitride":
        bent = "nothing straightens a nitrided part: relieve the next one before its last cut"
    return [
        StepOut(
            stage="check",
            action=f"See that it {'lies flat' if flat else 'runs true'} within "
            f"{shown_limit(move.permitted_mm)}"
            + ("" if move.stated else ", as an ordinary part should be"),
            means="surface plate, feelers" if flat else on,
            check=_expected(typical, bad, move.permitted_mm),
            otherwise=f"bent: {bent}",
            length_mm=move.permitted_mm,
            source="forecast of this option",
        )
    ]


def _expected(typical_mm: float, bad_mm: float, permitted_mm: float) -> str:
    """Return how far a part is expected to move, in words."""
    if shown_mm(typical_mm) != shown_mm(bad_mm):
        return f"expect {shown_mm(typical_mm)}, {shown_mm(bad_mm)} in a bad case"
    if shown_mm(bad_mm) == shown_mm(permitted_mm):
        return f"straightened to {shown_mm(permitted_mm)} or better"
    return f"expect {shown_mm(bad_mm)}"


def cracks(do: Doing) -> list[StepOut]:
    """Return the look for cracks, after whatever was quenched or cased."""
    if not (do.work.hardens or do.work.route.process == "case"):
        return []
    places = [f.kind.replace("-", " ") for f in do.part.feature]
    if len({section.size for section in do.part.section}) > 1:
        places.insert(0, "shoulder")
    where = f"at {', '.join(dict.fromkeys(places))}" if places else "at edges and ends"
    return [
        StepOut(
            stage="check",
            action=f"Oil it, wipe it dry, chalk it; look after 10 min, first {where}",
            means="chalk, or dye penetrant",
            check="no dark line",
            otherwise="a line is a crack: scrap it",
            minutes=10.0,
            source=COMMON,
        )
    ]


def finished(do: Doing) -> list[StepOut]:
    """Return what is ground, stoned or formed when all is hard."""
    stock, cut = round(left_mm(do), 2), f"{LIGHT_CUT_MM:g} mm"
    tools = finishing_tools(do) or "oilstone"
    if do.has_edge:
        text = f"Form the edge now, on a cool wheel or stone, {cut} at a time, dipped often"
    elif stock or do.part.finish_after:
        tools = finishing_tools(do) or "grinder"
        text = f"Finish the working faces by {tools}, in light cuts of {cut}, cool"
    else:
        text = f"Brush the scale off, stone the working faces, {cut} at most, oil it"
    if do.is_struck:
        text += "; dress the struck end to a chamfer"
        if do.is_local:
            text += ", left soft"
        elif do.temper.temperature_c < BLUE_C:
            text += " and draw it to blue with a flame, the working end in a wet rag"
    return [
        StepOut(
            stage="finish",
            action=text,
            means=tools,
            check="no temper colour comes up, no burnt smell",
            otherwise="a blue spot is soft: grind below it or temper all again",
            length_mm=stock or LIGHT_CUT_MM,
            source=COMMON,
        )
    ]
