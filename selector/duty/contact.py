"""What presses on the part: the contact of its working zone, a drive's corners, a blow."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.job.geometry import area_mm2
from selector.mechanics.contact import (
    HertzContact,
    corner_bearing_mpa,
    hertz_line,
    line_shear_mpa,
    rolling_contact_limit_mpa,
    static_contact_limit_mpa,
)
from selector.mechanics.strength import impact_force_n, strength
from selector.requirement import Requirement

Floats = NDArray[np.float64]
# A corner rounds near this multiple of yield strength (mechanics.contact.corner_bearing_mpa).
CORNER_YIELD = 1.5
_SIDES = {"square": 4, "hexagon": 6}
# Depths looked at, in half widths of the contact; beyond the last the shear has died away.
_DEPTHS = np.linspace(0.0, 12.0, 481)
_SHEAR_SHARE = 0.300  # greatest shear over peak pressure of a line contact


@dataclass(frozen=True, slots=True, eq=False)
class Pressing:
    """One round section pressed along a line by the stated contact force."""

    zone: int
    section: int
    hertz: HertzContact
    rolling: bool

    @property
    def pressure_mpa(self) -> float:
        """The peak pressure at the stated force."""
        return float(self.hertz.pressure_mpa)

    def bears_mpa(self, hardness_hv: ArrayLike) -> Floats:
        """Return the pressure that a hardness bears, rolling for long or now and then."""
        if self.rolling:
            return rolling_contact_limit_mpa(hardness_hv)
        return static_contact_limit_mpa(hardness_hv)

    def depth_mm(self, core_hv: float) -> float:
        """Return how deep the shear exceeds what a core bears, 0 where it nowhere does."""
        shear = line_shear_mpa(self.hertz, _DEPTHS * float(self.hertz.half_width_mm))
        beyond = np.flatnonzero(shear > _SHEAR_SHARE * float(self.bears_mpa(core_hv)))
        return float(_DEPTHS[beyond[-1]] * self.hertz.half_width_mm) if beyond.size else 0.0


@dataclass(frozen=True, slots=True)
class Corner:
    """One square or hexagon that carries the torque at its corners."""

    section: int
    pressure_mpa: float
    mate_hv: float | None

    @property
    def yield_mpa(self) -> float:
        """The yield strength at which its corners begin to round."""
        return self.pressure_mpa / CORNER_YIELD


def pressings(asked: Requirement) -> tuple[Pressing, ...]:
    """Return the contacts of the stated force: each wearing zone with a round section."""
    # The force bears along the whole of the zone's thinnest section, against a flat.
    return tuple(_pressings(asked)) if asked.load.contact else ()


def _pressings(asked: Requirement) -> Iterator[Pressing]:
    """Yield the contacts, one a zone."""
    for number, zone in enumerate(asked.zone):
        rounds = [
            index - 1
            for index in zone.section
            if asked.part.section[index - 1].shape in {"round", "tube"}
        ]
        if zone.wear == "none" or not rounds:
            continue
        thin = min(rounds, key=lambda i: asked.part.section[i].size)
        section = asked.part.section[thin]
        hertz = hertz_line((asked.load.contact or 0.0) / section.length, 0.5 * section.size)
        rolling = zone.wear == "rolling-contact" and asked.load.cycles == "fatigue"
        yield Pressing(number, thin, hertz, rolling)


def corners(asked: Requirement) -> tuple[Corner, ...]:
    """Return the squares and hexagons that carry the torque, with the hardness they run in."""
    torque = asked.load.torque
    mates = {
        index - 1: zone.mate.hardness
        for zone in asked.zone
        if zone.mate is not None
        for index in zone.section
    }
    return tuple(
        Corner(
            number,
            float(corner_bearing_mpa(torque, s.size, s.length, _SIDES[s.shape])),
            mates.get(number),
        )
        for number, s in enumerate(asked.part.section)
        if torque and asked.load.twists(number) and s.shape in _SIDES
    )


def corner_factor(corner: Corner, hardness_hv: ArrayLike) -> Floats:
    """Return the factor left before the corners of a drive begin to round. [-]."""
    return np.asarray(strength(hardness_hv).yield_mpa / corner.yield_mpa)


def blow_force_n(asked: Requirement) -> float | None:
    """Return the force of the stated blow if the part alone takes it elastically. [N]."""
    if not asked.load.impact_energy:
        return None
    sections = asked.part.section
    lengths, areas = [s.length for s in sections], [area_mm2(s) for s in sections]
    return float(impact_force_n(asked.load.impact_energy, lengths, areas))
