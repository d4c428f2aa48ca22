"""What a zone at a torch goes through in heats that are tried, and how hard it comes out."""

import numpy as np
from numpy.typing import NDArray

from catalog.steel import Steel
from selector import sampling
from selector.hardening.as_quenched import as_quenched
from selector.hardening.composition import middle
from selector.heat.boiling import Quench
from selector.kept import kept_within
from selector.metallurgy.hardening_heat import Heat, MediumClass
from selector.metallurgy.transformation import Structure
from selector.torch.history import Heats, History
from selector.torch.part import Torching
from selector.torch.probe import Probes
from selector.torch.response import library, looked_at

Floats = NDArray[np.float64]
# What a part at a torch is, how far past its zone it is heated, and in what it is quenched.
Where = tuple[Torching, float, Quench]
# The heats at which the flame is taken away and how long each is held. [°C], [s]
Tried = tuple[tuple[float, ...], tuple[float, ...]]
# What of a heat is no matter of the place: what is aimed at, the structure before, what
# follows. [°C]
Met = tuple[float, Structure, MediumClass, float | None]
# What is kept of them: of the zone for all steels, of each steel for the part with a changed
# answer. [MB]
ZONES_MB, STEELS_MB = 24.0, 24.0


@kept_within(STEELS_MB)
def zone_hrc(steel: Steel, met: Met, where: Where, places: Probes, tried: Tried) -> Floats:
    """Return a zone as quenched, at the middle; shape (heats, probes). [HRC]."""
    zone = _zone(where, places, tried)
    target_c, structure, medium_class, cold_c = met
    course = zone.peak_c, zone.hold_s, zone.rate_c_per_s
    heat = Heat(target_c, *course, structure, medium_class, cold_c)
    points = zone.points(places.place)
    return as_quenched(steel, middle(steel), heat, points, sampling.middle()).hrc


@kept_within(ZONES_MB)
def _zone(where: Where, places: Probes, tried: Tried) -> History:
    """Return what the zone goes through in some heats, for all steels that are tried so."""
    # By what the library is made of: a key that is the library would keep it from being let go.
    stop_c, hold_s = (np.array(each) for each in tried)
    part, still = looked_at(library(*where), places), np.zeros(stop_c.size)
    flame = part.heatings.effective_log(still, stop_c)
    history = part.read(Heats(stop_c, hold_s, flame, still, still))
    return history.only(slice(0, places.in_zone))
