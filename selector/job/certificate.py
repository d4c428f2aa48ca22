"""A bar of the rack as its certificate has it: analysis and hardness of this very bar."""

from catalog.steel import Condition, Steel
from catalog.values import Span
from selector.errors import Problem
from selector.hardness_scale import hrc_from_hv
from selector.requirement.workshop import Stock

# How far a piece may lie off the analysis of its cast, either way: the permissible deviations
# of EN 10083-2 and -3 (from memory); rich steel deviates by its share (EN 10088-3, table of the
# permissible deviations: chromium of 10.5 to 15 % 0.15, nickel of 5 to 10 % 0.10). [wt %]
DEVIATION_WT_PCT = {
    "C": 0.02, "Si": 0.03, "Mn": 0.04, "P": 0.005, "S": 0.005, "Cr": 0.05, "Mo": 0.03,
    "Ni": 0.05, "V": 0.02, "Cu": 0.05, "W": 0.05, "Co": 0.05, "Al": 0.005,
}  # fmt: skip
DEVIATION_FRACTION = 0.0125
# Off its limits by more than so many deviations and this share, a bar is another steel.
# Estimate: limits in the catalogue are partly typical ones.
_DEVIATIONS, _OFF_FRACTION = 3.0, 0.25
# A hardness tester errs by up to this (ISO 6508-2, from memory). [HRC]
TESTER_HRC = 1.5


def deviation_wt_pct(element: str, content: float) -> float:
    """Return how far a piece may lie off the analysis of its cast. [wt %]."""
    return max(DEVIATION_WT_PCT[element], DEVIATION_FRACTION * content)


def certified(steel: Steel, bar: Stock) -> Steel:
    """Return a steel with the composition of one bar of it.

    Parameters
    ----------
    steel : Steel
        What the bar is.
    bar : Stock
        The bar; what its analysis leaves out stays as its standard has it.

    Returns
    -------
    Steel
        The steel itself where the bar has no analysis.
    """
    if bar.analysis is None:
        return steel
    own = {}
    for element, content in bar.analysis.held_wt_pct().items():
        off = deviation_wt_pct(element, content)
        own[element] = _span(max(0.0, content - off), content + off, "workshop.stock.analysis")
    return steel.model_copy(update={"composition_wt_pct": {**steel.composition_wt_pct, **own}})


def measured(condition: Condition, bar: Stock) -> Condition:
    """Return a supply condition with the hardness measured on one bar of it, if any was."""
    if bar.hardness is None:
        return condition
    hrc = float(hrc_from_hv(bar.hardness, outside="extend"))
    span = _span(hrc - TESTER_HRC, hrc + TESTER_HRC, "workshop.stock.hardness")
    return condition.model_copy(update={"hardness_hrc": span, "hardness_hb": None})


def _span(low: float, high: float, at: str) -> Span:
    """Return a measured range."""
    return Span(min=low, max=high, source="certificate", at=at, basis="measured", seen="read")


def not_of(number: int, bar: Stock, steel: Steel) -> list[Problem]:
    """Return the problems of an analysis that cannot be of the steel it is said to be.

    Parameters
    ----------
    number : int
        Of the bar in the rack, from 1.
    bar : Stock
        The bar.
    steel : Steel
        What it is said to be.

    Returns
    -------
    list of Problem
        Of each element far outside the limits of the steel.
    """
    if bar.analysis is None:
        return []
    problems = []
    for element, content in bar.analysis.held_wt_pct().items():
        span = steel.composition_wt_pct.get(element)
        if span is None:
            continue
        low, high = span.min or 0.0, span.high
        off = max(low - content, content - high)
        allowed = max(
            _DEVIATIONS * deviation_wt_pct(element, content), _OFF_FRACTION * max(low, high)
        )
        if off > allowed:
            problems.append(
                Problem(
                    f"workshop.stock.{number}.analysis.{element}",
                    f"near {low:g} to {high:g} wt %, which is {steel.name}",
                    f"{content:g}",
                    "Check the figure (in wt %), or name the steel that it is.",
                )
            )
    return problems
