"""What of a bar of steel counts: the limits of its standard, sampled, with residuals.

Manganese is counted without what the sulphur of free-machining steel binds.
"""

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from catalog.values import Span
from selector.metallurgy.austenite import free_manganese
from selector.metallurgy.hardenability import PRESUMED_WT_PCT
from selector.sampling import Normals, of_steel, truncated

Floats = NDArray[np.float64]
Composition = Mapping[str, Floats]

# How far bars differ in residual elements, as sd about what the end-quench curve presumes, on
# which it was fitted; from memory. [wt %]
RESIDUAL_SD_WT_PCT = {"Cr": 0.05, "Ni": 0.04, "Mo": 0.012, "Cu": 0.07, "Si": 0.06}
# A maximum alone says little of a main element; bar comes in the upper half of what is allowed.
_MAXIMUM_ONLY = (0.5, 1.0)
_IGNORED = frozenset({"P", "S", "N", "Pb", "Bi", "Te", "Al", "B", "Ti", "Nb", "Co"})


def _limits(element: str, span: Span | None) -> tuple[float, float]:
    """Return the range an element is sampled from. [wt %]."""
    if span is not None and span.min is not None and span.max is not None:
        return span.min, span.max
    if element in RESIDUAL_SD_WT_PCT:
        mean, sd = PRESUMED_WT_PCT[element], RESIDUAL_SD_WT_PCT[element]
        top = span.max if span is not None and span.max is not None else mean + 2 * sd
        return max(0.0, min(mean - 2 * sd, 0.5 * top)), min(mean + 2 * sd, top)
    if span is None:
        return 0.0, 0.0
    return _MAXIMUM_ONLY[0] * span.high, _MAXIMUM_ONLY[1] * span.high


def elements(steel: Steel) -> tuple[str, ...]:
    """Return the elements that count for hardening, residual ones included."""
    named = [name for name in steel.composition_wt_pct if name not in _IGNORED]
    return tuple(dict.fromkeys([*named, *RESIDUAL_SD_WT_PCT]))


@lru_cache(maxsize=1024)
def middle(steel: Steel) -> Composition:
    """Return the composition at the middle of the limits. [wt %]."""
    spans = steel.composition_wt_pct
    held = {
        element: np.full((1, 1), sum(_limits(element, spans.get(element))) / 2)
        for element in elements(steel)
    }
    found = _without_sulphide(steel, held)
    for content in found.values():
        content.setflags(write=False)
    return MappingProxyType(found)


def _without_sulphide(steel: Steel, held: dict[str, Floats]) -> dict[str, Floats]:
    """Return a composition whose manganese is free, where the steel has sulphur added."""
    sulphur = steel.composition_wt_pct.get("S")
    if "Mn" not in held or sulphur is None or sulphur.min is None:
        return held
    return {**held, "Mn": free_manganese(held["Mn"], sulphur.middle)}


def sampled(steel: Steel, normals: Normals) -> Composition:
    """Return the composition over the samples, each element a truncated normal in its limits.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    normals : mapping of str to ndarray
        The steel's own samples.

    Returns
    -------
    mapping of str to ndarray
        Element to content; shape (samples, 1). [wt %]
    """
    spans = steel.composition_wt_pct
    centre = middle(steel)
    moving = [element for element in elements(steel) if element in normals]
    held: dict[str, Floats] = {}
    if moving:
        # All at once: a call for each element would take three times as long.
        low, high = np.array([_limits(name, spans.get(name)) for name in moving]).T[:, :, None]
        contents = truncated(np.stack([normals[name] for name in moving]), low, high)
        held.update(zip(moving, contents[:, :, None], strict=True))
    # What stays at its middle is free of sulphide there.
    return {**centre, **_without_sulphide(steel, held)}


@lru_cache(maxsize=256)
def of_bar(steel: Steel, count: int) -> Composition:
    """Return the composition over so many samples, at the middle of the limits for one.

    Parameters
    ----------
    steel : Steel
        Catalogue steel.
    count : int
        Size of the sample, a power of two up to 512.

    Returns
    -------
    mapping of str to ndarray
        Element to content, never changed: every advice shares it; shape (count, 1). [wt %]
    """
    if count == 1:
        return middle(steel)
    found = sampled(steel, of_steel(steel.slug, count))
    for content in found.values():
        content.setflags(write=False)
    return MappingProxyType(dict(found))
