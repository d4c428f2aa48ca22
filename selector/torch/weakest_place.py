"""The torque a part bears before it twists throughout: by section, and where it is cut."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.hardness_scale import hv_from_hrc
from selector.job.geometry import cut_share, notch_factor
from selector.mechanics.section import section_modulus, torsion_stress_mpa
from selector.mechanics.strength import static_factor
from selector.requirement.part import CUTS, Part, Section

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class WeakPlace:
    """Where a part is weak by its form, and the torque it bears there."""

    name: str
    torque_nm: float


def torque_borne_nm(
    section: Section, hrc: ArrayLike, left: float = 1.0, notch: float = 1.0
) -> Floats:
    """Return the torque a section bears at a hardness, at the middle strength of that hardness.

    Parameters
    ----------
    section : Section
        One stretch of the part.
    hrc : array_like
        Its hardness. [HRC]
    left : float, optional
        Share of its plastic torque that a hole leaves. [-]
    notch : float, optional
        Its notch on the whole section; counts where the steel is too hard to yield. [-]

    Returns
    -------
    ndarray
        The fully plastic torque of soft steel; above about 50 HRC that of first yield at the
        notch. [N m]
    """
    shape = (section.shape, section.size, section.width, section.bore)
    modulus = section_modulus(*shape)
    ratio = left * modulus.torsion_plastic_mm3 / modulus.torsion_mm3
    hv = np.maximum(hv_from_hrc(hrc, outside="extend"), 90.0)
    return static_factor(torsion_stress_mpa(1.0, *shape), hv, "torsion", ratio, notch)


def weakest_form(
    part: Part, along_mm: Floats, hrc: Floats, sold_hrc: float, *, turned_round: bool = False
) -> WeakPlace | None:
    """Return the weakest place a hardness map does not show: a cut, or the cold rest."""
    cuts = _cuts(part, along_mm, hrc, sold_hrc, turned_round)
    places = [*cuts, *_rest(part, float(along_mm[-1]), sold_hrc, turned_round)]
    return min(places, key=lambda place: place.torque_nm, default=None)


def _cuts(
    part: Part, along_mm: Floats, hrc: Floats, sold_hrc: float, turned: bool
) -> Iterator[WeakPlace]:
    """Yield the holes, slots and keyways, their places counted as on the map."""
    end = 2 * along_mm[-1] - along_mm[-2]
    for feature in part.feature:
        if feature.kind not in CUTS:
            continue
        name, here = f"the {feature.kind.replace('-', ' ')}", min(float(np.min(hrc)), sold_hrc)
        if feature.at is not None:
            at = part.length_mm - feature.at if turned else feature.at
            name += f" at {at:.0f} mm"
            here = sold_hrc if at > end else float(np.interp(at, along_mm, hrc))
        section, left = part.section[part.place(feature)], cut_share(part, feature).torsion
        notch = notch_factor(part, feature).torsion
        yield WeakPlace(name, float(torque_borne_nm(section, here, left, notch)))


def _rest(part: Part, end_mm: float, sold_hrc: float, turned: bool) -> Iterator[WeakPlace]:
    """Yield the sections that begin beyond the map."""
    given = list(enumerate(part.section, start=1))
    start = 0.0
    for number, section in reversed(given) if turned else given:
        if start > end_mm:
            name = section.name or f"section {number}"
            yield WeakPlace(name, float(torque_borne_nm(section, sold_hrc)))
        start += section.length
