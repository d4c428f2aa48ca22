"""What a quench bath does to a hot surface: behind vapour, boiling, and by convection."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import get_args

import numpy as np
from numpy.typing import NDArray

from selector.errors import OutOfRangeError, Problem
from selector.heat.exchange import SURFACE_C, convection
from selector.heat.quench import Agitation, Medium

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class _Liquid:
    """A bath at its usual temperature and moderate motion: h, W/(m² K), at temperatures, °C."""

    usual_c: float
    hottest_c: float
    wet_c: tuple[float, ...]
    wet_h: tuple[float, ...]
    film_h: float
    film_ends_c: float
    film_s: float


# Shapes: convection, peak of boiling, what is left of it on hotter surfaces. Water: peak of the
# regimes from memory (8000 to 15000 still, 12000 to 25000 moved). Oil: 500 at 800 °C, peak at
# 520 to 550 °C, 250 to 500 below 250 °C (Buczek and Telejko 2013; Kobasko: read). Polymer: half
# of 3200, 7400 and 2000 at 800, 440 and 150 °C, one strong solution (Buczek and Telejko), to
# come within 1500 to 4000 of 10 to 15 % glycol (from memory). Water's hot branch and oil's peak
# are set on the SAE J1268 bar charts. Brine, fast and vegetable oil follow them by severity.
# Film times: estimated, after wetting fronts on test cylinders (from memory).
_LIQUID: Mapping[str, _Liquid] = MappingProxyType(
    {
        "water": _Liquid(
            20.0, 99.0, (100.0, 150.0, 300.0, 450.0, 600.0),
            (1500.0, 5000.0, 12000.0, 7000.0, 3600.0), 750.0, 600.0, 0.3,
        ),
        "brine": _Liquid(
            20.0, 105.0, (100.0, 150.0, 300.0, 450.0, 600.0),
            (2000.0, 9000.0, 22000.0, 14000.0, 7500.0), 750.0, 700.0, 0.03,
        ),
        "oil": _Liquid(
            50.0, 200.0, (250.0, 400.0, 535.0, 700.0, 800.0),
            (300.0, 700.0, 1700.0, 1200.0, 1000.0), 500.0, 700.0, 2.0,
        ),
        "fast-oil": _Liquid(
            50.0, 200.0, (250.0, 400.0, 535.0, 700.0, 800.0),
            (350.0, 1100.0, 2700.0, 1900.0, 1600.0), 700.0, 750.0, 1.0,
        ),
        "vegetable-oil": _Liquid(
            50.0, 200.0, (250.0, 400.0, 535.0, 700.0, 800.0),
            (350.0, 850.0, 2000.0, 1450.0, 1200.0), 600.0, 750.0, 0.5,
        ),
        "polymer": _Liquid(
            30.0, 60.0, (150.0, 300.0, 440.0, 600.0, 800.0),
            (1000.0, 3000.0, 3700.0, 2600.0, 1600.0), 500.0, 700.0, 1.0,
        ),
    }
)  # fmt: skip
# Convection of air beside its radiation, by motion. Published with radiation: still air 35 as a
# mean, 20 to 40 at 400 °C, 60 to 110 at 850 °C; a fan 60 to 150 (from memory). [W/(m² K)]
AIR_H = {"none": 8.0, "mild": 12.0, "moderate": 20.0, "good": 30.0, "strong": 45.0}
AIR_H["violent"] = 80.0
AIR_EMISSIVITY = 0.8
AIR_C = 20.0

# Film time at each motion over that of moderate motion, and the sd of its logarithm: a still
# bath collapses when it likes. Estimated. [-]
_FILM_SHARE = {"none": 5.0, "mild": 2.3, "moderate": 1.0, "good": 0.7, "strong": 0.4}
_FILM_SHARE["violent"] = 0.15
_FILM_LOG_SD = {"none": 0.8, "mild": 0.6, "moderate": 0.5, "good": 0.45, "strong": 0.4}
_FILM_LOG_SD["violent"] = 0.3
# Water: critical flux by temperature, 5.9, 4.8, 3.6, 2.3 MW/m² at 20, 40, 60, 80 °C (from
# memory) scales boiling; the film lasts e times longer for each 15 °C (estimated, so that
# severities at 32 and 55 °C come out), carries less and collapses at a colder surface.
_BATH_C, _FLUX = (20.0, 40.0, 60.0, 80.0, 100.0), (1.0, 0.81, 0.61, 0.39, 0.2)
_FILM_E_FOLD_C, _FILM_H_FOLD_C, _FILM_END_PER_C = 15.0, 70.0, 4.5
_WATERY = ("water", "brine")
SHORT_OF_BOILING_C = 98.0
_QUICKER_OILS = ("fast-oil", "vegetable-oil")
# Exchange of a wetted surface by motion, over that in moderate motion: the ratio of published
# severities (Metals Handbook; fast oil: handbook of quenchants, 1993; from memory), below
# moderate motion its root, as the film takes the rest; where a source leaves a motion out,
# geometrically between its neighbours.
_BY_MOTION: Mapping[str, tuple[float, ...]] = MappingProxyType(
    {
        "water": (
            0.8715242540014305, 0.9163618950827406, 1.0,
            1.1602387022306426, 1.4322297480788657, 3.2025630761017427,
        ),
        "brine": (
            0.8759844033213695, 0.8971076188658843, 1.0,
            1.2425416641748712, 1.543909531708745, 1.9183716871557397,
        ),
        "oil": (
            0.855526185871245, 0.9306048591020996, 1.0,
            1.1952286093343938, 1.6903085094570334, 2.507132682112035,
        ),
        "fast-oil": (0.7071067811865476, 0.8408965453609618, 1.0, 1.048809, 1.1, 1.5),
    }
)  # fmt: skip
# Whose gain by motion a liquid without published severities of its own has.
_MOVED_AS: Mapping[str, str] = MappingProxyType({"vegetable-oil": "fast-oil", "polymer": "oil"})


# From the heat to a bath beside the work, by a practised hand. Common practice. [s]
DELAY_S = 1.5


@dataclass(frozen=True, slots=True)
class Bath:
    """A quench bath; without a temperature it has the usual one of its medium.

    `keenness` is its severity over that of the usual bath of its medium in the same motion.
    """

    medium: Medium
    temperature_c: float | None = None
    agitation: Agitation = "moderate"
    keenness: float = 1.0


@dataclass(frozen=True, slots=True)
class Quench:
    """One quench: its bath, the spread of the bath's exchange, and the delay before it.

    `bath` is None for a medium whose boiling is not described. `severity` is Grossmann's, 1/in,
    `log_sd` the sd of its and of the exchange's logarithm.
    """

    bath: Bath | None
    severity: float
    log_sd: float
    delay_s: float = DELAY_S


@dataclass(frozen=True, slots=True, eq=False)
class BoilingCurve:
    """A bath on a hot surface: fluxes at `SURFACE_C` behind vapour and wetted, and the film."""

    film: Floats
    wet: Floats
    film_s: float
    film_log_sd: float
    bath_c: float


def bath_temperature_c(bath: Bath) -> float:
    """Return the temperature of a bath, the usual one where none is given.

    Parameters
    ----------
    bath : Bath
        The bath. [-]

    Returns
    -------
    float
        Temperature. [°C]

    Raises
    ------
    OutOfRangeError
        The medium or motion is not known, or the bath is frozen, boiling or too hot.

    References
    ----------
    .. [1] Common practice, no source.

    Examples
    --------
    >>> bath_temperature_c(Bath("oil"))
    50.0
    """
    known = (*_LIQUID, "warm-water", "air")
    if bath.medium not in known:
        rule, step = f"one of {', '.join(known)}", "Choose the nearest."
        raise OutOfRangeError(Problem("medium", rule, str(bath.medium), step))
    if bath.agitation not in get_args(Agitation):
        rule, step = f"one of {', '.join(get_args(Agitation))}", "Choose the nearest."
        raise OutOfRangeError(Problem("agitation", rule, str(bath.agitation), step))
    liquid = _LIQUID.get("water" if bath.medium == "warm-water" else bath.medium)
    usual, most = (liquid.usual_c, liquid.hottest_c) if liquid else (AIR_C, 400.0)
    if bath.medium == "warm-water":
        usual = 55.0
    given = usual if bath.temperature_c is None else bath.temperature_c
    if not 0.0 <= given <= most:
        rule = f"between 0 and {most:g} °C in {bath.medium}"
        step = "Give the temperature of the bath."
        raise OutOfRangeError(Problem("bath_temperature_c", rule, f"{given:g} °C", step))
    return float(given)


def hottest_in_use_c(medium: Medium) -> float:
    """Return how warm a small bath gets at most in use: as far as its curve is described.

    Parameters
    ----------
    medium : str
        Quenching liquid. [-]

    Returns
    -------
    float
        Temperature; short of boiling in watery baths. [°C]

    Raises
    ------
    OutOfRangeError
        The medium is not a liquid with a boiling curve.

    References
    ----------
    .. [1] Common practice, no source.

    Examples
    --------
    >>> hottest_in_use_c("oil"), hottest_in_use_c("brine")
    (200.0, 98.0)
    """
    name = "water" if medium == "warm-water" else medium
    if name not in _LIQUID:
        rule, step = f"one of {', '.join(_LIQUID)}", "Choose the nearest."
        raise OutOfRangeError(Problem("medium", rule, str(medium), step))
    hottest = _LIQUID[name].hottest_c
    return min(hottest, SHORT_OF_BOILING_C) if name in _WATERY else hottest


@lru_cache(maxsize=256)
def boiling_curve(bath: Bath) -> BoilingCurve:
    """Return how a bath takes heat from a surface, behind its vapour and wetted.

    Parameters
    ----------
    bath : Bath
        Medium, temperature, motion. [-]

    Returns
    -------
    BoilingCurve
        Fluxes by surface temperature, and how long vapour lasts away from edges. [-]

    Raises
    ------
    OutOfRangeError
        As `bath_temperature_c`.

    Notes
    -----
    The wetted curve scales with Grossmann's severity over that of moderate motion; below
    moderate motion by its root, as the film takes the rest. Polymer, whose severities are
    estimates, gains by motion as oil does, and vegetable oil as fast oil: by a table that ends
    at 0.76 m/s; but neither of these oils grips less than plain oil so moved. Level set so that
    bars of the SAE charts [1]_ come out in moderately moved water and oil. A bath keener than
    its medium usually is has all its exchange larger in proportion, as H = h / 2k [3]_; how
    long its film lasts is left as it is.

    References
    ----------
    .. [1] SAE J1268, diameters of rounds with the same as-quenched hardness (from memory).
    .. [2] M. Buczek and T. Telejko, International Journal of Heat and Fluid Flow 44, 2013,
       358-364, heat transfer coefficient during quenching in various cooling agents (read).
    .. [3] M. A. Grossmann, M. Asimow, Hardenability and quenching, Iron Age, 1940 (from
       memory).

    Examples
    --------
    >>> still, hot = (
    ...     boiling_curve(Bath("water", 20.0, "none")),
    ...     boiling_curve(Bath("water", 60.0, "none")),
    ... )
    >>> hot.film_s > 10 * still.film_s
    True
    """
    at = bath_temperature_c(bath)
    if bath.medium == "air":
        air = bath.keenness * convection(AIR_H[bath.agitation], at, AIR_EMISSIVITY)
        return BoilingCurve(air, air, 0.0, 0.0, at)
    name: Medium = "water" if bath.medium == "warm-water" else bath.medium
    liquid, motion = _LIQUID[name], bath.agitation
    level = _level(_MOVED_AS.get(name, name), motion)
    film_h, film_s = liquid.film_h, liquid.film_s * _FILM_SHARE[motion]
    film_ends = liquid.film_ends_c
    if name in _WATERY:
        level *= float(np.interp(at, _BATH_C, _FLUX))
        film_s *= math.exp((at - liquid.usual_c) / _FILM_E_FOLD_C)
        film_h *= math.exp((liquid.usual_c - at) / _FILM_H_FOLD_C)
        film_ends -= _FILM_END_PER_C * (at - liquid.usual_c)
    wet_h = level * np.interp(SURFACE_C, liquid.wet_c, liquid.wet_h)
    if name in _QUICKER_OILS:
        plain = _LIQUID["oil"]
        plain_h = _level("oil", motion) * np.interp(SURFACE_C, plain.wet_c, plain.wet_h)
        wet_h = np.maximum(wet_h, plain_h)
    # Below its end the film is gone, whatever the front does.
    holds = np.clip((SURFACE_C - film_ends + 80.0) / 80.0, 0.0, 1.0)
    hidden_h = np.minimum(wet_h, film_h * holds + wet_h * (1.0 - holds))
    film = bath.keenness * convection(hidden_h, at, AIR_EMISSIVITY)
    wet = bath.keenness * convection(wet_h, at)
    return BoilingCurve(film, wet, film_s, _FILM_LOG_SD[motion], at)


def _level(medium: str, motion: Agitation) -> float:
    """Return how a wetted surface loses heat in a motion, over that in moderate motion."""
    return _BY_MOTION[medium][get_args(Agitation).index(motion)]
