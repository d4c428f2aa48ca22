"""Bars whose as-quenched hardness nobody can say, by what is wrong with them."""

from collections.abc import Mapping

from selector.errors import OutOfRangeError, Problem
from selector.metallurgy.transformation import SPHEROIDISED_ABOVE_WT_PCT

DIAMETER_MM = (1.0, 500.0)
COLDEST_HEAT_C = 710.0
# Leaner steels with more alloy are austenitic, maraging or precipitation hardening. [wt %]
LEAN_ALLOY_WT_PCT = 15.0


def alloy_wt_pct(composition_wt_pct: Mapping[str, float]) -> float:
    """Return the sum of all elements but iron and carbon.

    Parameters
    ----------
    composition_wt_pct : mapping of str to float
        Element to content. [wt %]

    Returns
    -------
    float
        Sum. [wt %]
    """
    return sum(v for e, v in composition_wt_pct.items() if e not in ("C", "Fe"))


def check_bar(
    composition_wt_pct: Mapping[str, float], diameter_mm: float, austenitise_c: float
) -> None:
    """Refuse a bar, a heat or a steel that no model answers.

    Parameters
    ----------
    composition_wt_pct : mapping of str to float
        Element to content. [wt %]
    diameter_mm : float
        Diameter. [mm]
    austenitise_c : float
        Hardening heat. [°C]

    Raises
    ------
    OutOfRangeError
        One problem for each thing that is out of range.
    """
    found = []
    low, high = DIAMETER_MM
    if not low <= diameter_mm <= high:
        rule, step = f"between {low:g} and {high:g} mm", "Give the real diameter."
        found.append(Problem("diameter_mm", rule, f"{diameter_mm:g} mm", step))
    if not COLDEST_HEAT_C <= austenitise_c <= 1300.0:
        rule, step = f"between {COLDEST_HEAT_C:g} and 1300 °C", "Give the hardening heat."
        found.append(Problem("austenitise_c", rule, f"{austenitise_c:g} °C", step))
    if "C" not in composition_wt_pct:
        step = "Give the carbon content."
        found.append(Problem("composition_wt_pct", "with carbon", "no C", step))
    alloy = alloy_wt_pct(composition_wt_pct)
    lean = composition_wt_pct.get("C", 0.0) <= SPHEROIDISED_ABOVE_WT_PCT
    if lean and LEAN_ALLOY_WT_PCT < alloy <= 100.0:
        rule = f"with at most {LEAN_ALLOY_WT_PCT:g} % alloy at no more than 0.7 % C"
        step = "Go by the maker's sheet: such steel does not harden as martensite of carbon."
        found.append(Problem("composition_wt_pct", rule, f"{alloy:g} %", step))
    for element, content in composition_wt_pct.items():
        if not 0.0 <= content <= 100.0:
            field, rule = f"composition_wt_pct.{element}", "between 0 and 100 wt %"
            found.append(Problem(field, rule, f"{content:g} wt %", "Give the analysis."))
    if found:
        raise OutOfRangeError(*found)
