"""What a way of hardening is worth for a duty, whatever the steel: by its process, by eye.

Common practice of toolrooms and repair shops, no source.
"""

from collections.abc import Iterator

from selector.duty.merit import ALSO, NEVER, SELDOM, USUAL
from selector.duty.named_duty import Duty
from selector.job.bath_check import is_too_harsh
from selector.job.together import heats
from selector.job.treatment import Treatment
from selector.requirement import Requirement

_A, _S = ALSO, SELDOM
TOOL_KINDS = frozenset({"water-tool", "oil-tool", "air-tool", "high-speed", "shock-tool"})
# What is struck is tempered by the heat behind its end; nobody makes a gauge or a pin so.
_STRUCK = frozenset({"struck edge", "struck body", "struck face", "pressed edge", "drive"})
# Held in hot salt until it is bainite: thin parts of spring steel and the like.
_AUSTEMPERED = frozenset({"spring", "high-carbon", "alloy", "medium-carbon"})
# Made for oil or air they crack in water, however thin: nobody tries it on tool steel, on
# springs few do. Common practice.
_CRACK_IN_WATER = {
    "oil-tool": NEVER, "air-tool": NEVER, "high-speed": NEVER, "shock-tool": NEVER,
    "hot-work-tool": NEVER, "martensitic-stainless": NEVER, "bearing": _S, "spring": _S,
}  # fmt: skip
# Sold in blocks for moulds and the tools that press in them; no one cuts moving parts of it.
_MOULD, _OF_MOULD_STEEL = "prehard-mould", {"pressed face": USUAL, "plain": _S, "gauge": _S}
# Springs hardened by eye are of leaner steel than this.
FUSSY_CARBON_WT_PCT = 0.9
# Beyond so many heats one after another nobody stands at a flame who can send a lot out or load
# a furnace. Common practice. [-]
MANY_HEATS = 24
# Of a struck tool the end alone is hardened; what is hard all over must have its head let down.
_EYE_HARD = 0.7
# These are soaked at a measured heat where there is a furnace, and by eye where there is none.
_MEASURED = frozenset({"pressed edge", "pressed face", "gauge", "cutting edge", "grit"})
FURNACES = frozenset({"kiln", "muffle-furnace", "heat-treat-oven"})


def by_eye(merit: float, duty: Duty, work: Treatment, asked: Requirement) -> float:
    """Return the merit as it is where the heat is read by eye at a torch or fire. [-].

    Parameters
    ----------
    merit : float
        What the trade makes of such a steel for such a duty, treated so. [-]
    duty : str
        The duty.
    work : Treatment
        What is hardened by eye.
    asked : Requirement
        What is asked.

    Returns
    -------
    float
        Less where the eye of a tool is hardened too, for a large lot, and for what is soaked
        at a measured heat where a furnace stands by. [-]
    """
    if _hardens_eye(duty, work, asked):
        merit *= _EYE_HARD
    if heats(work, asked.part) > MANY_HEATS:
        merit = min(merit, SELDOM)
    return min(merit, ALSO) if duty in _MEASURED and _has_furnace(asked) else merit


def _has_furnace(asked: Requirement) -> bool:
    """Return whether the workshop has a furnace, whose heat is measured."""
    return any(heat.source in FURNACES for heat in asked.workshop.heat)


def _hardens_eye(duty: Duty, work: Treatment, asked: Requirement) -> bool:
    """Return whether all of a struck tool is hardened, head and eye too."""
    struck = (
        duty in {"struck edge", "struck body", "struck face"}
        and asked.load.impact == "hammered"
    )
    return struck and work.route.extent == "whole" and len(asked.zone) > 1


def most_of_way(duty: Duty, work: Treatment) -> float:
    """Return the most that a way of hardening is worth, whatever it is made of. [-].

    Parameters
    ----------
    duty : str
        The duty.
    work : Treatment
        What is done to which steel.

    Returns
    -------
    float
        1 where the way itself is as good as any. [-]
    """
    most = [USUAL, *_most_of_process(duty, work), *_most_by_eye(duty, work)]
    kind = work.steel.kind
    if work.hardens and is_too_harsh(work.steel, work.medium):
        most.append(_CRACK_IN_WATER.get(kind, USUAL))
    if "residual" in work.route.temper and duty not in _STRUCK:
        most.append(SELDOM)
    if work.steel.family == _MOULD:
        most.append(_OF_MOULD_STEEL.get(duty, NEVER))
    return min(most)


def _most_of_process(duty: Duty, work: Treatment) -> Iterator[float]:
    """Return what a process that few firms offer or few send parts to is worth at most."""
    kind, route = work.steel.kind, work.route
    if route.kind == "laser" or (route.process == "austemper" and kind not in _AUSTEMPERED):
        yield SELDOM
    if route.process == "marquench" and route.place == "subcontract":
        # Few firms still keep a bath of salt.
        yield ALSO
    if route.cold_c is not None and route.place == "workshop":
        # Who owns a kiln seldom has dry ice.
        yield SELDOM
    if route.process == "chrome":
        # Rods are bought chromed; of new parts few are sent to be plated.
        yield SELDOM
    if route.process == "chrome" and duty == "pressed face":
        # Hard chrome cracks where what is under it gives way.
        yield SELDOM if kind in TOOL_KINDS else NEVER


def _most_by_eye(duty: Duty, work: Treatment) -> Iterator[float]:
    """Return what steel that wants a measured heat is worth at most where there is an eye."""
    steel = work.steel
    if not (work.hardens and work.by_eye):
        return
    if steel.hardened and steel.hardened.quench == "air":
        # Steel that hardens in air wants a soak that nobody holds by eye.
        yield SELDOM
    if (
        duty == "spring"
        and steel.kind == "high-carbon"
        and carbon_wt_pct(work) >= FUSSY_CARBON_WT_PCT
    ):
        # One per cent of carbon is soon overheated by eye, and a spring of it snaps.
        yield NEVER


def carbon_wt_pct(work: Treatment) -> float:
    """Return the carbon of a steel, nil where it is not known. [wt %]."""
    carbon = work.steel.composition_wt_pct.get("C")
    return 0.0 if carbon is None else carbon.middle
