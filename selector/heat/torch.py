"""First estimate of torch heating: can this flame heat that bar, how fast, and how deep.

The heated length is one temperature; its shank takes heat as a fin. The answers are estimates
with a wide error and stand until the transient solver replaces them.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

FloatArray = NDArray[np.float64]
TorchName = Literal["hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene"]


@dataclass(frozen=True, slots=True)
class TorchSource:
    """A flame: temperature, heat flux to cold steel, width, and the gas that feeds it."""

    flame_c: float
    cold_flux_mw_per_m2: float
    width_mm: float
    heating_value_mj_per_m3: float
    gas_flow_l_per_min: float
    efficiency_fraction: float


# Flux: published bands 0.05-0.25 (self-aspirating), 0.1-0.5 (blown), 1-3 (oxy-propane), 1.5-5
# MW/m² (oxy-acetylene), from memory, low confidence; near their geometric middle, but the top
# of the first for a swirl-flame hand torch. Flame temperatures and heating values: ASM Handbook
# vol. 4, flame hardening, and Welding Handbook vol. 2 (from memory). Widths, flows, shares:
# estimated.
SOURCES: Mapping[TorchName, TorchSource] = MappingProxyType(
    {
        "hand-propane": TorchSource(1925.0, 0.25, 30.0, 93.9, 1.3, 0.25),
        "blown-propane": TorchSource(1925.0, 0.30, 60.0, 93.9, 10.0, 0.25),
        "oxy-propane": TorchSource(2526.0, 1.7, 25.0, 93.9, 8.0, 0.30),
        "oxy-acetylene": TorchSource(3087.0, 2.7, 15.0, 53.4, 5.0, 0.35),
    }
)

_AMBIENT_C = 20.0
_DENSITY_KG_PER_M3, _HEAT_J_PER_KG_K = 7850.0, 650.0  # mean, heat of transformation included
_SHANK_W_PER_M_K, _HOT_W_PER_M_K = 35.0, 27.3
_FIN_W_PER_M2_K, _CONVECTION_W_PER_M2_K = 40.0, 15.0
_EMISSIVITY, _STEFAN = 0.8, 5.67e-8
_DIFFUSIVITY_MM2_PER_S = 8.0  # mean from cold to hardening heat
_FASTEST_C_PER_S = 30.0  # faster, nobody can stop in time: the flame is drawn back (practice)
_OVERSHOOT_K = 75.0  # what the surface may exceed the hardening heat by
_LOG_SD_TIME = 0.4
_LOG_SD_DEPTH = 0.5
_HEARTH_LOSS = 0.4  # share of radiation left between firebricks (estimated)


@dataclass(frozen=True, slots=True, eq=False)
class TorchHeating:
    """A first estimate: infinite time where the flame cannot reach the target."""

    reachable: NDArray[np.bool_]
    time_s: FloatArray
    log_sd_time: float
    rate_c_per_s: FloatArray
    power_w: FloatArray
    hardened_depth_mm: FloatArray
    log_sd_depth: float
    heat_affected_mm: FloatArray
    basis: str


def _balance(
    source: TorchSource, bar: tuple[FloatArray, FloatArray], flow: FloatArray, hearth: bool
) -> tuple[FloatArray, FloatArray, FloatArray, FloatArray]:
    """Return covered area m², surface m², gas power W and fin conductance W/K of a bar end."""
    diameter, length = bar
    surface = math.pi * diameter * length + math.pi / 4 * diameter**2
    # A flame twice as wide as the bar goes all round it; bricks turn the rest back.
    wrap = np.clip(source.width_mm / (2 * diameter), 0.8 if hearth else 0.5, 1.0)
    covered = wrap * math.pi * diameter * np.minimum(length, source.width_mm)
    gas = source.efficiency_fraction * source.heating_value_mj_per_m3 * 1e3 * flow / 60
    d = diameter * 1e-3
    fin = np.sqrt(_FIN_W_PER_M2_K * math.pi * d * _SHANK_W_PER_M_K * math.pi / 4 * d**2)
    return np.minimum(covered, surface) * 1e-6, surface * 1e-6, gas, fin


def _power_and_loss(
    source: TorchSource,
    balance: tuple[FloatArray, FloatArray, FloatArray, FloatArray],
    temperature: FloatArray,
    hearth: bool,
) -> tuple[FloatArray, FloatArray]:
    """Return heat in and heat out, W, at a temperature of the heated length."""
    covered, surface, gas, fin = balance
    left = (source.flame_c - temperature) / (source.flame_c - _AMBIENT_C)
    heat_in = np.minimum(source.cold_flux_mw_per_m2 * 1e6 * covered, gas) * left
    rise = temperature - _AMBIENT_C
    fourth = (temperature + 273.15) ** 4 - (_AMBIENT_C + 273.15) ** 4
    radiation = _EMISSIVITY * _STEFAN * fourth * (_HEARTH_LOSS if hearth else 1.0)
    bare = np.maximum(surface - covered, 0.0)
    return heat_in, surface * radiation + bare * _CONVECTION_W_PER_M2_K * rise + fin * rise


def heating(
    source: TorchName,
    diameter_mm: ArrayLike,
    heated_length_mm: ArrayLike,
    target_c: ArrayLike,
    gas_flow_l_per_min: ArrayLike | None = None,
    hearth: bool = False,
) -> TorchHeating:
    """Return a first estimate of heating the end of a round bar with a torch.

    One temperature in the heated length, the shank as a long fin, the flame covering its own
    width. Not a substitute for the transient solver or a coupon.

    Parameters
    ----------
    source : {"hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene"}
        Flame. [-]
    diameter_mm : array_like
        Diameter of the bar. [mm]
    heated_length_mm : array_like
        Length to be brought to heat. [mm]
    target_c : array_like
        Hardening heat. [°C]
    gas_flow_l_per_min : array_like, optional
        Fuel gas; left out, usual for the torch. [l/min]
    hearth : bool, optional
        Whether the part lies between firebricks. [-]

    Returns
    -------
    TorchHeating
        Whether it gets there, time, mean rate, heat taken up, depth and heat-affected length,
        with errors. [s]

    Notes
    -----
    ``t = ∫ ρ c V dT / (P(T) - losses(T))``, P the smaller of flux × covered area and efficiency
    × gas power, both falling towards the flame temperature. Depth: a round heated at flux q is
    ``q R / (2 k)`` hotter outside; the depth is where it is within 75 K of the surface.
    Heat-affected length past the zone: ``√(4 α t)``. Fluxes carry a factor of 1.5 either way.
    Above 30 °C/s the operator draws the flame back, so no time is shorter than that.

    References
    ----------
    .. [1] Flame impingement heat transfer reviews and moving-heat-source texts (from memory).
    .. [2] ASM Handbook, vol. 4, flame hardening, fuel gases (from memory).
    """
    torch = SOURCES[source]
    usual = torch.gas_flow_l_per_min if gas_flow_l_per_min is None else gas_flow_l_per_min
    diameter, length, target, flow = np.broadcast_arrays(
        *(np.asarray(v, dtype=float) for v in (diameter_mm, heated_length_mm, target_c, usual))
    )
    balance = _balance(torch, (diameter, length), flow, hearth)
    heat_in, loss = _power_and_loss(torch, balance, target, hearth)
    steps = np.linspace(0, 1, 25)
    path = _AMBIENT_C + steps * (target - _AMBIENT_C)[..., None]
    wide = tuple(part[..., None] for part in balance)
    gain_in, gain_loss = _power_and_loss(
        torch, (wide[0], wide[1], wide[2], wide[3]), path, hearth
    )
    gain = gain_in - gain_loss
    reachable = np.min(gain, axis=-1) > 0
    volume = math.pi / 4 * diameter**2 * length * 1e-9
    pace = 1 / np.where(reachable[..., None], gain, 1.0)
    heat_w = _DENSITY_KG_PER_M3 * _HEAT_J_PER_KG_K * volume
    mean = np.sum((pace[..., 1:] + pace[..., :-1]) * np.diff(steps) / 2, axis=-1)
    flat_out = heat_w * (target - _AMBIENT_C) * mean
    time = np.maximum(flat_out, (target - _AMBIENT_C) / _FASTEST_C_PER_S)
    radius = diameter / 2
    flux = heat_in / balance[0] * flat_out / time
    difference = np.maximum(flux * radius * 1e-3 / (2 * _HOT_W_PER_M_K), _OVERSHOOT_K)
    time = np.where(reachable, time, np.inf)
    thin = np.sqrt(1 - _OVERSHOOT_K / difference)
    return TorchHeating(
        reachable=reachable,
        time_s=time,
        log_sd_time=_LOG_SD_TIME,
        rate_c_per_s=np.asarray((target - _AMBIENT_C) / time),
        power_w=np.asarray(heat_in - loss),
        hardened_depth_mm=np.where(reachable, radius * (1 - thin), 0.0),
        log_sd_depth=_LOG_SD_DEPTH,
        heat_affected_mm=np.sqrt(4 * _DIFFUSIVITY_MM2_PER_S * time),
        basis="first estimate",
    )


def ceiling_c(
    source: TorchName, diameter_mm: float, heated_length_mm: float, hearth: bool = False
) -> float:
    """Return the temperature at which a torch no longer heats a bar end.

    Parameters
    ----------
    source : {"hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene"}
        Flame, at its usual gas flow. [-]
    diameter_mm : float
        Diameter of the bar. [mm]
    heated_length_mm : float
        Length to be brought to heat. [mm]
    hearth : bool, optional
        Whether the part lies between firebricks. [-]

    Returns
    -------
    float
        Temperature where heat in equals heat lost; melting is not looked at. [°C]

    References
    ----------
    .. [1] As `heating`.
    """
    torch = SOURCES[source]
    bar = (np.asarray(diameter_mm, dtype=float), np.asarray(heated_length_mm, dtype=float))
    balance = _balance(torch, bar, np.asarray(torch.gas_flow_l_per_min), hearth)
    path = np.linspace(_AMBIENT_C, torch.flame_c, 400)
    heat_in, loss = _power_and_loss(torch, balance, path, hearth)
    return float(path[np.argmax(heat_in - loss <= 0)])


def max_diameter_mm(
    source: TorchName,
    heated_length_mm: float,
    target_c: float,
    longest_s: float = 300.0,
    hearth: bool = False,
) -> float:
    """Return the thickest round bar end a torch brings to heat within a time.

    Parameters
    ----------
    source : {"hand-propane", "blown-propane", "oxy-propane", "oxy-acetylene"}
        Flame, at its usual gas flow. [-]
    heated_length_mm : float
        Length to be brought to heat. [mm]
    target_c : float
        Hardening heat. [°C]
    longest_s : float, optional
        Patience; beyond some minutes scale and soft skin win. [s]
    hearth : bool, optional
        Whether the part lies between firebricks. [-]

    Returns
    -------
    float
        Diameter, to 2 %; 0 when not even 2 mm gets there. [mm]

    References
    ----------
    .. [1] As `heating`.
    """
    sizes = np.geomspace(2.0, 120.0, 207)
    reached = heating(source, sizes, heated_length_mm, target_c, hearth=hearth).time_s
    able = sizes[reached <= longest_s]
    return float(able[-1]) if able.size else 0.0
