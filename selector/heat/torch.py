"""Flames and fires as a part feels them: hot gas, exchange, width, and what is left bare.

A flame gives h (T_flame - T) where it washes the surface; everything radiates. A small torch so
has a ceiling, a corner washed on two faces runs ahead, and the efficiency is a result.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal, get_args

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.exchange import SURFACE_C, Boundary, convection, mixed
from selector.heat.grid import Grid
from selector.sampling import probability

Floats = NDArray[np.float64]
TorchName = Literal["hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene", "forge"]

AMBIENT_C = 20.0
EMISSIVITY = 0.8
BARE_W_PER_M2_K = 15.0  # still air on hot steel beside the flame (estimated)
# Share of radiation that is lost between firebricks; the rest comes back (estimated). [-]
HEARTH_OPEN = 0.4
# A held place has the flame half the time at its heat, all of it this much / 2 below. [°C]
HOLD_BAND_C = 30.0
SAME_MM = 1e-6


@dataclass(frozen=True, slots=True)
class Torch:
    """A flame at a tip, gas flow and stand-off: how hot, how wide, how strong.

    `cold_flux_mw_per_m2` goes into cold steel where the flame washes it; `wall_c` is what the
    part sees around it, hot in a forge.
    """

    flame_c: float
    cold_flux_mw_per_m2: float
    width_mm: float
    tip_mm: float
    stand_off_mm: float
    gas_flow_l_per_min: float
    heating_value_mj_per_m3: float
    wall_c: float = AMBIENT_C

    @property
    def exchange(self) -> float:
        """Heat transfer coefficient under the flame, W/(m² K)."""
        return self.cold_flux_mw_per_m2 * 1e6 / (self.flame_c - AMBIENT_C)

    @property
    def power_w(self) -> float:
        """What the gas holds."""
        return self.gas_flow_l_per_min / 60.0 * self.heating_value_mj_per_m3 * 1e3

    def stronger(self, times: float) -> "Torch":
        """Return a flame that gives so many times the exchange, for its error."""
        return replace(self, cold_flux_mw_per_m2=self.cold_flux_mw_per_m2 * times)


# Flux: published bands 0.05-0.25 (self-aspirating), 0.1-0.5 (blown), 1-3 (oxy-propane), 1.5-5
# MW/m² (oxy-acetylene), from memory, low confidence; near their geometric middle, but the top
# of the first for a swirl-flame hand torch. Flame temperatures and heating values: ASM Handbook
# vol. 4, flame hardening, and Welding Handbook vol. 2 (from memory). Widths, tips, stand-offs
# and flows: estimated. The forge is a chamber at yellow heat whose walls do most of the work.
TORCHES: Mapping[TorchName, Torch] = MappingProxyType(
    {
        "hand-propane": Torch(1925.0, 0.25, 30.0, 12.0, 40.0, 1.3, 93.9),
        "blown-propane": Torch(1925.0, 0.30, 60.0, 25.0, 80.0, 10.0, 93.9),
        "oxy-propane": Torch(2526.0, 1.7, 25.0, 10.0, 25.0, 8.0, 93.9),
        "oxy-acetylene": Torch(3087.0, 2.7, 15.0, 6.0, 15.0, 5.0, 53.4),
        "forge": Torch(1250.0, 0.075, 150.0, 25.0, 80.0, 7.3, 93.9, wall_c=1150.0),
    }
)


def torch(
    name: TorchName,
    gas_flow_l_per_min: float | None = None,
    tip_mm: float | None = None,
    stand_off_mm: float | None = None,
) -> Torch:
    """Return a flame as it is set.

    More gas without another tip named means a larger tip at the same gas speed; through the
    same tip it means a faster flame. Held farther off than usual, a flame is wider and cooler.

    Parameters
    ----------
    name : {"hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene", "forge"}
        Flame. [-]
    gas_flow_l_per_min : float, optional
        Fuel gas; left out, usual for the torch. [l/min]
    tip_mm : float, optional
        Width of the burner's mouth; left out, the one that suits the flow. [mm]
    stand_off_mm : float, optional
        Distance of the tip; left out, the usual. [mm]

    Returns
    -------
    Torch
        The flame. [-]

    Raises
    ------
    OutOfRangeError
        The flame is unknown, or a setting is not above 0.

    Notes
    -----
    Stagnation flow: exchange ∝ (v / d)^½, speed v ∝ flow / d² [1]_, so flow^½ d^-1.5; width
    ∝ d. Beyond the usual distance s0 the excess temperature falls as s0 / s and the width grows
    as s / s0, as in a turbulent jet [2]_; nearer, nothing is gained.

    References
    ----------
    .. [1] M. Sibulkin, Heat transfer near the forward stagnation point of a body of revolution,
       Journal of the Aeronautical Sciences 19, 1952, 570-571 (from memory).
    .. [2] H. Schlichting, Boundary-Layer Theory, 7th ed., 1979, free jets (from memory).

    Examples
    --------
    >>> usual, rich = torch("oxy-propane"), torch("oxy-propane", 16.0)
    >>> round(rich.width_mm / usual.width_mm, 3), round(rich.exchange / usual.exchange, 3)
    (1.414, 0.841)
    """
    if name not in TORCHES:
        rule, step = f"one of {', '.join(get_args(TorchName))}", "Choose the nearest."
        raise OutOfRangeError(Problem("name", rule, repr(name), step))
    usual = TORCHES[name]
    flow = usual.gas_flow_l_per_min if gas_flow_l_per_min is None else gas_flow_l_per_min
    richness = flow / usual.gas_flow_l_per_min
    tip = usual.tip_mm * math.sqrt(max(richness, 0.0)) if tip_mm is None else tip_mm
    away = usual.stand_off_mm if stand_off_mm is None else stand_off_mm
    for field, value, unit in (
        ("gas_flow_l_per_min", flow, "l/min"),
        ("tip_mm", tip, "mm"),
        ("stand_off_mm", away, "mm"),
    ):
        if not 0.0 < value < math.inf:
            step = "Give the real setting, or leave it out."
            raise OutOfRangeError(Problem(field, "above 0", f"{value:g} {unit}", step))
    wide, far = tip / usual.tip_mm, max(away / usual.stand_off_mm, 1.0)
    exchange = usual.exchange * math.sqrt(richness) * wide**-1.5
    flame_c = AMBIENT_C + (usual.flame_c - AMBIENT_C) / far
    return replace(
        usual,
        flame_c=flame_c,
        cold_flux_mw_per_m2=exchange * (flame_c - AMBIENT_C) * 1e-6,
        width_mm=usual.width_mm * wide * far,
        tip_mm=tip,
        stand_off_mm=away,
        gas_flow_l_per_min=flow,
    )


def wrap_fraction(width_mm: ArrayLike, diameter_mm: ArrayLike) -> Floats:
    """Return the share of a bar's girth that a flame washes.

    Parameters
    ----------
    width_mm : array_like
        Width of the flame. [mm]
    diameter_mm : array_like
        Diameter of the bar. [mm]

    Returns
    -------
    ndarray
        Share; 1 for a flame twice as wide as the bar. [-]

    Notes
    -----
    A narrow flame covers the arc it falls on; a wider one closes behind the bar (estimated).

    References
    ----------
    .. [1] Geometry; the closing behind the bar is common practice, no source.

    Examples
    --------
    >>> wrap_fraction([10.0, 15.0, 20.0], 10.0).tolist()
    [0.5, 0.75, 1.0]
    """
    ratio = np.asarray(width_mm, dtype=float) / np.asarray(diameter_mm, dtype=float)
    arc = np.arcsin(np.minimum(ratio, 1.0)) / math.pi
    return np.asarray(arc + 0.5 * np.clip(ratio - 1.0, 0.0, 1.0))


def swept_share(along_mm: ArrayLike, width_mm: float, start_mm: float, end_mm: float) -> Floats:
    """Return the flame's share of each place while it sweeps to and fro over a length.

    Parameters
    ----------
    along_mm : array_like
        Distance from the working end. [mm]
    width_mm : float
        Width of the flame. [mm]
    start_mm, end_mm : float
        Length that is heated; a flame wider than that stands in its middle. [mm]

    Returns
    -------
    ndarray
        Mean share of the flame, at most 1 at its middle. [-]

    Notes
    -----
    A Gaussian of standard deviation w / 2, its middle going evenly between the ends, w / 2
    inside them.

    References
    ----------
    .. [1] N. N. Rykalin, Berechnung der Wärmevorgänge beim Schweissen, 1957, normally
       distributed flames (from memory).

    Examples
    --------
    >>> swept_share([10.0, 30.0], 20.0, 0.0, 20.0).round(2).tolist()
    [1.0, 0.14]
    """
    z, sigma = np.asarray(along_mm, dtype=float), 0.5 * width_mm
    middle, reach = 0.5 * (start_mm + end_mm), max(end_mm - start_mm - width_mm, 0.0)
    if reach < 1e-6 * width_mm:
        return np.asarray(np.exp(-0.5 * ((z - middle) / sigma) ** 2))
    low, high = (z - middle - 0.5 * reach) / sigma, (z - middle + 0.5 * reach) / sigma
    return np.asarray(
        sigma * math.sqrt(2.0 * math.pi) / reach * (probability(high) - probability(low))
    )


def flame_boundary(
    grid: Grid,
    flame: Torch,
    heated_mm: tuple[float, float],
    level: float = 1.0,
    hearth: bool = False,
    hold_c: float | None = None,
) -> Boundary:
    """Return the boundary of a bar whose working end turns in a flame.

    The girth is a mean over the turn; the working end and shoulders are washed like the side at
    that place; a bore and the held end are not washed. To hold, the flame is taken from each
    place as it comes to the heat. Of a part in a chamber only what is heated lies inside.

    Parameters
    ----------
    grid : Grid
        The part. [-]
    flame : Torch
        The flame as it is set. [-]
    heated_mm : tuple of float
        Stretch swept, from and to. [mm]
    level : float, optional
        Share of the flame that is on the part. [-]
    hearth : bool, optional
        Whether the part lies between firebricks. [-]
    hold_c : float, optional
        Heat to hold; left out, the flame is on whatever the heat. [°C]

    Returns
    -------
    Boundary
        For the solver. [-]

    References
    ----------
    .. [1] As `torch` and `swept_share`.
    """
    outer = np.max(np.where(grid.active, grid.across_mm[:, None], 0.0), axis=0)
    wrap = wrap_fraction(flame.width_mm, 2.0 * outer[grid.mesh.wall_column])
    along_mm = grid.wall_along_mm()
    is_chamber = flame.wall_c > AMBIENT_C
    swept = swept_share(along_mm, flame.width_mm, *heated_mm)
    inside = (along_mm >= heated_mm[0] - SAME_MM) & (along_mm <= heated_mm[1] + SAME_MM)
    share = level * wrap * (inside if is_chamber else swept)
    # A far end that the flame reaches is not held, and is washed like the working end.
    held = (grid.wall_face == "held") & (along_mm > heated_mm[1] + SAME_MM)
    open_air = (grid.wall_face != "bore") & ~held
    washed = np.where(open_air, share, 0.0)
    bare = np.where(open_air, 1.0 - share, 0.0)
    lit = open_air & inside & is_chamber
    shares = np.stack([washed, bare, lit, open_air & ~lit], axis=-1)
    gas = convection(flame.exchange, flame.flame_c)
    walls_c = flame.wall_c
    if hold_c is not None:
        gas = gas * np.clip((hold_c - SURFACE_C) / HOLD_BAND_C + 0.5, 0.0, 1.0)
        walls_c = max(min(walls_c, hold_c), AMBIENT_C)
    seen = HEARTH_OPEN if hearth and not is_chamber else 1.0
    walls = convection(0.0, walls_c, EMISSIVITY)
    around = seen * convection(0.0, AMBIENT_C, EMISSIVITY)
    air = convection(BARE_W_PER_M2_K, AMBIENT_C)
    both = np.repeat(shares[:, None, :], 2, axis=1)
    return mixed([gas, air, walls, around], both, np.array([0.0, 1.0]))


def ceiling_c(flame: Torch, diameter_mm: float, hearth: bool = False) -> float:
    """Return the heat at which a long bar in the middle of a flame takes up no more.

    Parameters
    ----------
    flame : Torch
        The flame as it is set. [-]
    diameter_mm : float
        Diameter of the bar. [mm]
    hearth : bool, optional
        Whether it lies between firebricks. [-]

    Returns
    -------
    float
        Ceiling, before anything flows into the rest of the bar; melting is not looked at. [°C]

    References
    ----------
    .. [1] The balance of `flame_boundary` at a surface that takes up nothing.

    Examples
    --------
    >>> ceiling_c(torch("hand-propane"), 40.0) < ceiling_c(torch("hand-propane"), 10.0) < 1100.0
    True
    """
    wrap = float(wrap_fraction(flame.width_mm, diameter_mm))
    seen = HEARTH_OPEN if hearth and flame.wall_c <= AMBIENT_C else 1.0
    loss = (
        wrap * convection(flame.exchange, flame.flame_c)
        + (1.0 - wrap) * convection(BARE_W_PER_M2_K, AMBIENT_C)
        + seen * convection(0.0, flame.wall_c, EMISSIVITY)
    )
    return float(np.interp(0.0, loss, SURFACE_C))
