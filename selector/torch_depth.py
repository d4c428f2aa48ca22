"""How deep a local heat hardens: a few histories of the part, and a smooth response between.

Three histories of the working zone, with a weak, a usual and a strong flame, are followed from
cold through a long hold. From them comes the depth that has reached the hardening heat, by the
flame, by the time the operator lingers, and by how far he misreads the heat.

The quench that follows starts from one even heat, in `quench_response`, not from these
histories: started from the heated section, places that came to heat take 0.92 to 1.03 times as
long from 700 to 500 °C (12 to 48 mm in water and oil), less than the equivalence is out. What
the cold shank behind the zone takes is not in it; `flame` follows the part whole.
"""

import numpy as np
from numpy.typing import NDArray

from selector.draws import Normals
from selector.process import reading_error_c
from selector.surroundings import Surroundings
from selector.torch_job import flame_of, knows, operator, stretch
from selector.treatment import Treatment

Floats = NDArray[np.float64]
# Once the surface is at heat the operator lingers, and the heat soaks in: time at heat with its
# log sd (common practice).
LINGER_S, LINGER_LOG_SD = 20.0, 0.5
# The flame on the part, tip, gas and distance together: sd of its logarithm (published bands of
# flux span a factor of two to three either side, one torch in one hand less; estimated).
LEVEL_LOG_SD = 0.3
# A place hardens that comes within this of the heat the zone was brought to: hardening heats
# leave so much room above Ac3. [°C]
ROOM_C = 45.0
# Where the whole zone was left too cool, that is judged by its hardness; its depth is then what
# came as near to the surface's heat as this. [°C]
EVEN_C = 10.0
BINS_C = (760.0, 800.0, 840.0, 880.0)
# No hot layer is thinner than this share of the radius. [-]
LEAST_SHARE = 0.05
# The design: levels of the flame in sd, holds, and misreadings of the heat. [-], [s], [°C]
LEVELS = (-1.5, 0.0, 1.5)
HOLDS_S = (2.0, 5.0, 10.0, 20.0, 40.0, 80.0)
MISREAD_C = (-120.0, -60.0, -30.0, 0.0, 30.0, 60.0, 120.0)


def hardened_depth_mm(treatment: Treatment, around: Surroundings, normals: Normals) -> Floats:
    """Return the depth that a local heat brings to hardening temperature.

    Parameters
    ----------
    treatment : Treatment
        A local route.
    around : Surroundings
        Part and workshop.
    normals : mapping of str to ndarray
        The steel's own draws.

    Returns
    -------
    ndarray
        Depth; shape (draws,). A forge soaks the end through; induction goes as deep as its
        published range. [mm]
    """
    sections = around.asked.part.section
    thick = max((sections[i] for i in around.hard), key=lambda s: s.size)
    radius = 0.5 * thick.size
    spread = normals["depth"]
    source = treatment.source
    if source is not None and source.kind == "flame" and knows(source):
        return radius * _share_of_radius(treatment, around, normals)
    span = treatment.route.depth_mm
    if source is None and span is not None:
        middle = np.sqrt(span.low * span.high)
        scatter = 0.25 * np.log(span.high / span.low)
        return np.asarray(np.minimum(middle * np.exp(scatter * spread), radius))
    return np.full(spread.shape, radius)


def _share_of_radius(treatment: Treatment, around: Surroundings, normals: Normals) -> Floats:
    """Return the depth over the draws as a share of the radius, once for each steel."""
    hardened, slug = treatment.steel.hardened, treatment.source.slug if treatment.source else ""
    target = hardened.temperature_c.middle if hardened else 850.0
    near = min(BINS_C, key=lambda heat: abs(heat - target))

    def response() -> Floats:
        key = ("torch-depth", slug, f"{near:g}")
        table = around.course(key, lambda: _table(treatment, around, near))
        return _read(table, treatment, around, normals)

    if normals is not around.of_steel(treatment.steel.slug):
        return response()
    return around.once(("torch-depth", slug, f"{near:g}", treatment.steel.slug), response)


def _read(
    table: Floats, treatment: Treatment, around: Surroundings, normals: Normals
) -> Floats:
    """Return the share of the radius at each draw's flame, hold and misreading."""
    from scipy.interpolate import RegularGridInterpolator  # noqa: PLC0415 - slow to load

    bias, scatter, shift = reading_error_c(treatment, around.asked.workshop)
    misread = shift + bias * normals["eye_bias"] + scatter * normals["eye_scatter"]
    linger = np.log(LINGER_S) + LINGER_LOG_SD * normals["eye_scatter"]
    places = (
        np.clip(normals["depth"], LEVELS[0], LEVELS[-1]),
        np.clip(linger, np.log(HOLDS_S[0]), np.log(HOLDS_S[-1])),
        np.clip(misread, MISREAD_C[0], MISREAD_C[-1]),
    )
    axes = (LEVELS, tuple(np.log(HOLDS_S)), MISREAD_C)
    at = np.stack(np.broadcast_arrays(*places), axis=-1)
    found = RegularGridInterpolator(axes, table)(at)
    return np.clip(found, LEAST_SHARE, 1.0)


def _table(treatment: Treatment, around: Surroundings, target_c: float) -> Floats:
    """Return depth as a share of the radius by level, hold and misreading."""
    return np.stack([_depths(treatment, around, target_c, level) for level in LEVELS])


def _depths(
    treatment: Treatment, around: Surroundings, target_c: float, level: float
) -> Floats:
    """Return depth as a share of the radius by hold and misreading, for one flame."""
    from selector.heat.grid import bar_grid  # noqa: PLC0415 - only where a flame is asked for
    from selector.heat.operator import heat_end, seen_cell  # noqa: PLC0415

    source, shop = treatment.source, around.asked.workshop
    if source is None:
        msg = f"{treatment.label} has no heat source"
        raise ValueError(msg)
    flame = flame_of(source, shop)
    flame = flame.stronger(float(np.exp(LEVEL_LOG_SD * level)))
    part = stretch(around.asked, around.hard, around.leading.sections[0])
    start, end = part.zone_mm
    grid = bar_grid(part.sections)
    hand = operator(source, shop, target_c, HOLDS_S[-1])
    middle = 0.5 * (start + end)
    column = int(np.argmin(np.abs(grid.along_mm - middle)))
    rows = np.flatnonzero(grid.active[:, column])
    watch = tuple(int(r) * grid.along_mm.size + column for r in rows)
    view = (seen_cell(grid, middle), (start, end + 0.5 * part.thickest_mm))
    heated = heat_end(grid, flame, hand, view, watch=watch)
    radii = grid.across_mm[rows]
    peaks = np.maximum.accumulate(heated.temperature_c, axis=1)
    share = np.empty((len(HOLDS_S), len(MISREAD_C)))
    for i, hold in enumerate(HOLDS_S):
        at = np.array([np.interp(heated.heat_s + hold, heated.time_s, row) for row in peaks])
        for j, miss in enumerate(MISREAD_C):
            share[i, j] = _share(at, radii, target_c - max(ROOM_C + miss, EVEN_C))
    return share


def _share(peak_c: Floats, radii_mm: Floats, need_c: float) -> float:
    """Return the depth, as a share of the wall, to which a section passed a heat."""
    if peak_c[-1] < need_c:
        return 0.0
    inner = np.flatnonzero(peak_c < need_c)
    if inner.size == 0:
        return 1.0
    k = int(inner[-1])
    part = (need_c - peak_c[k]) / (peak_c[k + 1] - peak_c[k])
    at = radii_mm[k] + part * (radii_mm[k + 1] - radii_mm[k])
    return float((radii_mm[-1] - at) / (radii_mm[-1] - radii_mm[0]))
