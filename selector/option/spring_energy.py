"""How much a spring of a size can store, and from where on it hurts when it lets go."""

from selector.job.geometry import area_mm2
from selector.requirement import Requirement

# What spring steel bears once it is wound or bent, and its moduli: EN 13906-1 and common
# practice of spring makers (from memory). [MPa]
_SHEAR_MPA, _BENDING_MPA = 1000.0, 1500.0
_G_MPA, _E_MPA = 81_500.0, 206_000.0
# A hard thing thrown with more hurts an eye: EN 71-1 lets a toy throw a tipped one with as much
# (from memory). [J]
HURTS_J = 0.5


def stored_j(volume_mm3: float, *, wound: bool) -> float:
    """Return the most that steel stores as a spring before it takes a set.

    Wire wound to a coil is sheared, at its rim the most: tau² / 4 G by volume. Strip bent by
    one moment along it stores sigma² / 6 E (A. M. Wahl, Mechanical Springs, 2nd ed., McGraw-
    Hill 1963, chapter on the energy a spring stores; from memory). A strip held at one end
    stores a third of that.

    Parameters
    ----------
    volume_mm3 : float
        Of the steel. [mm³]
    wound : bool
        Whether it is a coil spring.

    Returns
    -------
    float
        Energy. [J]
    """
    if wound:
        return volume_mm3 * _SHEAR_MPA**2 / (4.0 * _G_MPA) / 1000.0
    return volume_mm3 * _BENDING_MPA**2 / (6.0 * _E_MPA) / 1000.0


def maims(asked: Requirement) -> bool:
    """Return whether a spring of this size stores enough to hurt whoever lets it off."""
    sections = asked.part.section
    volume = sum(area_mm2(section) * section.length for section in sections)
    wound = asked.part.shape_class == "coil-spring"
    return stored_j(volume, wound=wound) >= HURTS_J
