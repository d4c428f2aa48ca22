"""Thermal properties of steel: one set on heating, another from austenite down."""

from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.errors import OutOfRangeError, Problem

Floats = NDArray[np.float64]
SteelClass = Literal["low-alloy", "high-alloy"]

KELVIN = 273.15
COLDEST_C, HOTTEST_C = -100.0, 1700.0
HEATING_KG_PER_M3 = 7850.0  # EN 1993-1-2, held at all temperatures
# Austenite at 800 °C by its lattice, 0.365 nm (from memory).
AUSTENITE_KG_PER_M3 = 7650.0
IRON_KG_PER_MOL = 0.055845
# Transformation of austenite is spread over this much cooling. [°C]
CHANGE_SPAN_C = 100.0


class Table(NamedTuple):
    """Kirchhoff integral and temperature by enthalpy; the integral by temperature. SI units."""

    first_enthalpy: float
    per_enthalpy: float
    theta: Floats
    temperature: Floats
    first_c: float
    per_c: float
    theta_by_c: Floats


@dataclass(frozen=True, slots=True, eq=False)
class SteelProperty:
    """Conductivity and heat capacity by temperature, W/(m K) and J/(m³ K), on one grid."""

    name: str
    temperature_c: Floats
    conductivity: Floats
    heat_capacity: Floats

    def table(self) -> Table:
        """Return the look-up table of the solver."""
        return _table(self)

    def enthalpy_j_per_m3(self, temperature_c: ArrayLike) -> Floats:
        """Return the enthalpy above the coldest of the grid."""
        given = np.asarray(temperature_c, dtype=float)
        return np.asarray(np.interp(given, self.temperature_c, _integrals(self)[0]))

    def conductivity_at(self, temperature_c: float) -> float:
        """Return the conductivity at a temperature, W/(m K)."""
        return float(np.interp(temperature_c, self.temperature_c, self.conductivity))


@lru_cache(maxsize=32)
def _integrals(steel: SteelProperty) -> tuple[Floats, Floats]:
    """Return enthalpy and Kirchhoff integral by temperature, from 0 at the coldest."""
    width = np.diff(steel.temperature_c)
    enthalpy, theta = (
        np.concatenate([[0.0], np.cumsum(0.5 * (y[1:] + y[:-1]) * width)])
        for y in (steel.heat_capacity, steel.conductivity)
    )
    return enthalpy, theta


@lru_cache(maxsize=32)
def _table(steel: SteelProperty) -> Table:
    """Return the table, even in enthalpy, so that a peak of heat capacity is finely cut."""
    t, (enthalpy, theta) = steel.temperature_c, _integrals(steel)
    even = np.linspace(0.0, enthalpy[-1], 4096)
    return Table(
        0.0,
        float(1.0 / even[1]),
        np.interp(even, enthalpy, theta),
        np.interp(even, enthalpy, t),
        float(t[0]),
        float(1.0 / (t[1] - t[0])),
        theta,
    )


def _grid_c() -> Floats:
    """Return the temperatures of all sets, half a degree apart."""
    return np.linspace(COLDEST_C, HOTTEST_C, 3601)


def _known(steel_class: str) -> None:
    """Refuse a class that has no property set."""
    if steel_class not in ("low-alloy", "high-alloy"):
        rule, step = "low-alloy or high-alloy", "Above 5 % alloy take high-alloy."
        raise OutOfRangeError(Problem("steel_class", rule, repr(steel_class), step))


def en_conductivity(temperature_c: ArrayLike) -> Floats:
    """Return the thermal conductivity of carbon steel by EN 1993-1-2.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Conductivity. [W/(m K)]

    Notes
    -----
    Clause 3.4.1.3 of [1]_: 54 - 0.0333 T to 800 °C, then 27.3; below 20 °C the line goes on.
    Range of [1]_: 20 to 1200 °C.

    References
    ----------
    .. [1] EN 1993-1-2:2005, Design of steel structures, structural fire design (from memory).

    Examples
    --------
    >>> float(en_conductivity(600.0).round(2))
    34.02
    """
    t = np.asarray(temperature_c, dtype=float)
    return np.where(t < 800.0, 54.0 - 0.0333 * t, 27.3)


def en_heat_capacity(temperature_c: ArrayLike) -> Floats:
    """Return the specific heat of carbon steel on heating by EN 1993-1-2.

    The peak at 735 °C holds the Curie point and the transformation.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Specific heat. [J/(kg K)]

    Notes
    -----
    Clause 3.4.1.2 of [1]_; below 20 °C held, above 1200 °C 650 J/(kg K) goes on.

    References
    ----------
    .. [1] EN 1993-1-2:2005, Design of steel structures, structural fire design.

    Examples
    --------
    >>> float(en_heat_capacity(700.0).round(1))
    1008.2
    """
    t = np.maximum(np.asarray(temperature_c, dtype=float), 20.0)
    below = 425.0 + 0.773 * t - 1.69e-3 * t**2 + 2.22e-6 * t**3
    rising = 666.0 + 13002.0 / (738.0 - np.minimum(t, 735.0))
    falling = 545.0 + 17820.0 / (np.maximum(t, 735.0) - 731.0)
    return np.select([t < 600.0, t < 735.0, t < 900.0], [below, rising, falling], 650.0)


def austenite_heat_capacity(temperature_c: ArrayLike) -> Floats:
    """Return the specific heat of austenite, taken as that of face-centred iron.

    Parameters
    ----------
    temperature_c : array_like
        Temperature. [°C]

    Returns
    -------
    ndarray
        Specific heat. [J/(kg K)]

    Notes
    -----
    From the Gibbs energy of [1]_: 24.66 + 0.0075150 T + 3.536e-7 T² - 154718/T² J/(mol K).
    Below room temperature held. Range: 25 to 1527 °C.

    References
    ----------
    .. [1] A. T. Dinsdale, SGTE data for pure elements, Calphad 15, 1991, 317-425
       (from memory).

    Examples
    --------
    >>> float(austenite_heat_capacity(700.0).round())
    576.0
    """
    k = np.maximum(np.asarray(temperature_c, dtype=float), 20.0) + KELVIN
    molar = 24.6643 + 7.51504e-3 * k + 3.5356e-7 * k**2 - 154718.0 / k**2
    return np.asarray(molar / IRON_KG_PER_MOL)


@cache
def heating_steel(steel_class: SteelClass = "low-alloy") -> SteelProperty:
    """Return the properties of steel being heated, or of any steel that is not austenite.

    Parameters
    ----------
    steel_class : {"low-alloy", "high-alloy"}
        Carbon and low-alloy steel, or tool and stainless steel above some 5 % alloy. [-]

    Returns
    -------
    SteelProperty
        Conductivity and heat capacity by temperature. [-]

    Raises
    ------
    OutOfRangeError
        The class is unknown.

    Notes
    -----
    Low alloy: [1]_ with its peak, density 7850 kg/m³. High alloy: conductivity of A2, 26.0,
    27.0 and 28.5 W/(m K) at 20, 190 and 400 °C [2]_, held above (estimated), heat capacity of
    [1]_.

    References
    ----------
    .. [1] EN 1993-1-2:2005, clause 3.4.1.
    .. [2] Physical properties of A2, theworldmaterial.com (read).

    Examples
    --------
    >>> heating_steel("high-alloy").conductivity_at(400.0)
    28.5
    """
    _known(steel_class)
    t = _grid_c()
    capacity = HEATING_KG_PER_M3 * en_heat_capacity(t)
    if steel_class == "high-alloy":
        conductivity = np.interp(t, [20.0, 190.0, 400.0], [26.0, 27.0, 28.5])
        return SteelProperty("high-alloy, heating", t, conductivity, capacity)
    return SteelProperty("low-alloy, heating", t, en_conductivity(t), capacity)


@cache
def cooling_steel(
    steel_class: SteelClass = "low-alloy",
    change_c: float | None = None,
    recalescence_k: float = 0.0,
) -> SteelProperty:
    """Return the properties of austenite being cooled, until it transforms.

    Left out, `change_c` keeps the steel austenite throughout, which is right for the time from
    700 to 500 °C of a place that hardens.

    Parameters
    ----------
    steel_class : {"low-alloy", "high-alloy"}
        As in `heating_steel`. [-]
    change_c : float, optional
        Where transformation begins; over 100 °C the heating set takes over. [°C]
    recalescence_k : float, optional
        Heat of transformation over heat capacity: what the steel would warm by; about 130 K
        for pearlite and martensite (from memory); 0 leaves it out. [K]

    Returns
    -------
    SteelProperty
        Conductivity and heat capacity by temperature. [-]

    Raises
    ------
    OutOfRangeError
        The class is unknown.

    Notes
    -----
    Low alloy: conductivity of a 0.42 % C steel in its austenite, 24.7, 26.8 and 29.7 W/(m K) at
    800, 1000 and 1200 °C [1]_, the lower slope carried on below 800 °C; an end-quench bar
    confirms it. High alloy: 14.8 W/(m K) at 20, 21.4 at 500 and 25.4 at 800 °C, as austenitic
    stainless steel (from memory). Heat capacity of [2]_, density 7650 kg/m³.

    References
    ----------
    .. [1] Physical constants of some commercial steels at elevated temperatures, BISRA, 1953,
       as reprinted in Metals Handbook vol. 1 (from memory).
    .. [2] A. T. Dinsdale, SGTE data for pure elements, Calphad 15, 1991, 317-425
       (from memory).

    Examples
    --------
    >>> round(cooling_steel().conductivity_at(600.0), 1)
    22.6
    """
    _known(steel_class)
    t = _grid_c()
    if steel_class == "high-alloy":
        conductivity = np.interp(t, [20.0, 500.0, 800.0, 1200.0], [14.8, 21.4, 25.4, 30.0])
    else:
        conductivity = np.where(
            t < 1000.0, 26.8 + 0.0105 * (t - 1000.0), 26.8 + 0.0145 * (t - 1000.0)
        )
    capacity = AUSTENITE_KG_PER_M3 * austenite_heat_capacity(t)
    if change_c is not None:
        cold = heating_steel(steel_class)
        done = np.clip((change_c - t) / CHANGE_SPAN_C, 0.0, 1.0)
        changing = (done > 0.0) & (done < 1.0)
        latent = np.where(changing, recalescence_k / CHANGE_SPAN_C * capacity, 0.0)
        conductivity = conductivity + done * (cold.conductivity - conductivity)
        capacity = capacity + done * (cold.heat_capacity - capacity) + latent
    return SteelProperty(f"{steel_class}, cooling", t, conductivity, capacity)
