"""Colours of hot and of tempered steel, with the disagreement of the printed tables as error.

A colour is read with an eye, in a light; the tables differ by 200 °C for "cherry red". It is a
check beside a thermometer or a magnet, not a measurement.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from selector.errors import OutOfRangeError, Problem

MAGNET_LOST_C = 770.0  # Curie point of iron: a floor for hardening, never a target

_LIGHT_SD_C = 20.0  # the same eye from shade to daylight (estimated; first red moves by 180 °C)
_OVEN_SHIFT_C = 50.0  # the same colour comes about 40 to 60 °C lower in 1 h than in 8 minutes
_SHORT_S, _OVEN_S = 480.0, 3600.0


@dataclass(frozen=True, slots=True)
class Colour:
    """A colour: mean of the printed tables, their standard deviation, lowest and highest."""

    name: str
    temperature_c: float
    sd_c: float
    low_c: float
    high_c: float


def _table(*rows: tuple[str, float, float, float, float]) -> Mapping[str, Colour]:
    """Index the rows by name, coldest first."""
    return MappingProxyType({row[0]: Colour(*row) for row in rows})


# Mean, sd, lowest and highest of 5 to 7 tables: Dooley, Applied Science for Metal Workers,
# 1919; Workshop Technology part 1, 5th ed., 1972; A Book of Steam for Engineers, 1905; a UK
# model engineering page on silver steel; a stove users' table; ASME Trans. 1899 and Howe 1900
# (the last two from memory). Ranges enter by their middle; colour words grouped by us.
HEAT_COLOURS = _table(
    ("faint red", 520.0, 25.0, 475.0, 550.0),
    ("dull red", 650.0, 60.0, 565.6, 700.0),
    ("dark cherry", 753.0, 65.0, 635.0, 800.0),
    ("cherry", 825.0, 82.0, 700.0, 901.7),
    ("bright cherry", 927.0, 80.0, 843.3, 1021.1),
    ("orange", 1035.0, 83.0, 898.9, 1100.0),
    ("yellow", 1071.0, 81.0, 975.0, 1176.0),
    ("white", 1253.0, 65.0, 1150.0, 1315.0),
)

# Mean, sd (not below 5), lowest and highest of 3 to 7 tables for bright carbon steel after a
# short heating: Sheffield Gauge Plate; Dooley 1919; a UK silver steel page; an encyclopaedia of
# about 1900; a UK spring strip note; an encyclopaedia article on smithing; an engineering
# dictionary. Brown-purple and grey-blue, with few rows, are left in their neighbours.
TEMPER_COLOURS = _table(
    ("pale yellow", 213.0, 19.0, 176.0, 230.0),
    ("straw", 224.0, 13.0, 205.0, 237.8),
    ("dark straw", 240.0, 8.0, 226.0, 248.9),
    ("brown", 256.0, 5.0, 250.0, 260.0),
    ("purple", 275.0, 5.0, 270.0, 282.0),
    ("violet", 283.0, 5.0, 280.0, 287.8),
    ("blue", 297.0, 6.0, 288.0, 304.0),
    ("dark blue", 305.0, 10.0, 290.0, 316.0),
    ("light blue", 323.0, 14.0, 310.0, 337.0),
    ("grey", 331.0, 20.0, 320.0, 371.0),
)


def _nearest(table: Mapping[str, Colour], temperature_c: float, what: str) -> Colour:
    """Return the colour whose mean lies nearest, refusing what no table shows."""
    colours = list(table.values())
    low, high = colours[0].low_c, colours[-1].high_c
    if not low <= temperature_c <= high:
        rule = f"between {low:g} and {high:g} °C to show a {what}"
        step = "Use a thermocouple or a crayon there."
        raise OutOfRangeError(Problem("temperature_c", rule, f"{temperature_c:g} °C", step))
    return min(colours, key=lambda colour: abs(colour.temperature_c - temperature_c))


def _named(table: Mapping[str, Colour], name: str) -> Colour:
    """Return the colour of a name, refusing an unknown one."""
    if name not in table:
        rule = f"one of {', '.join(table)}"
        raise OutOfRangeError(Problem("name", rule, name, "Choose the nearest."))
    return table[name]


def heat_colour(temperature_c: float) -> Colour:
    """Return the colour of hot steel at a temperature.

    Parameters
    ----------
    temperature_c : float
        Temperature of the surface. [°C]

    Returns
    -------
    Colour
        Name, with mean, standard deviation and range of the tables. [°C]

    Notes
    -----
    The tables differ by up to 200 °C for one word [1]_ [2]_; light adds to it.
    Range: 475 to 1315 °C.

    References
    ----------
    .. [1] Workshop Technology, part 1, 5th ed., 1972.
    .. [2] W. H. Dooley, Applied Science for Metal Workers, 1919, section Tempering.

    Examples
    --------
    >>> heat_colour(800.0).name
    'cherry'
    """
    return _nearest(HEAT_COLOURS, temperature_c, "colour of heat")


def heat_colour_named(name: str) -> Colour:
    """Return the temperature that a colour of hot steel stands for.

    Parameters
    ----------
    name : str
        Colour. [-]

    Returns
    -------
    Colour
        Mean, standard deviation (the eye in changing light added) and range. [°C]

    Notes
    -----
    The spread of the tables and 20 °C for changing light, added in squares.

    References
    ----------
    .. [1] As `heat_colour`.
    """
    colour = _named(HEAT_COLOURS, name)
    sd = math.hypot(colour.sd_c, _LIGHT_SD_C)
    return Colour(colour.name, colour.temperature_c, sd, colour.low_c, colour.high_c)


def _time_shift_c(hold_s: float) -> float:
    """Return by how much a hold longer than a short heating brings a colour forward."""
    return (
        _OVEN_SHIFT_C
        * math.log(max(hold_s, _SHORT_S) / _SHORT_S)
        / math.log(_OVEN_S / _SHORT_S)
    )


def temper_colour(temperature_c: float, hold_s: float = _SHORT_S) -> Colour:
    """Return the temper colour of bright carbon steel after a hold.

    Alloy and stainless steel colour later, dirt and oil change the colour; the tables do not
    hold for them.

    Parameters
    ----------
    temperature_c : float
        Tempering temperature. [°C]
    hold_s : float, optional
        Time at it; the tables hold for some minutes. [s]

    Returns
    -------
    Colour
        Name, with mean, standard deviation and range *for that hold*. [°C]

    Notes
    -----
    The same colour comes about 50 °C lower after 1 h than after 8 minutes, an order of
    magnitude only [2]_; half of the shift is added to the error.
    Range: 176 to 371 °C, 1 min to 1 h.

    References
    ----------
    .. [1] Sheffield Gauge Plate, temper colour chart.
    .. [2] US tool steel text with columns for 8 min and 1 h (from memory).

    Examples
    --------
    >>> temper_colour(224.0).name
    'straw'
    """
    shift = _time_shift_c(hold_s)
    nearest = _nearest(TEMPER_COLOURS, temperature_c + shift, "temper colour")
    return _shifted(nearest, shift)


def temper_colour_named(name: str, hold_s: float = _SHORT_S) -> Colour:
    """Return the tempering temperature that a temper colour stands for after a hold.

    Parameters
    ----------
    name : str
        Colour. [-]
    hold_s : float, optional
        Time at temperature. [s]

    Returns
    -------
    Colour
        Mean, standard deviation and range for that hold. [°C]

    References
    ----------
    .. [1] As `temper_colour`.
    """
    return _shifted(_named(TEMPER_COLOURS, name), _time_shift_c(hold_s))


def _shifted(colour: Colour, shift_c: float) -> Colour:
    """Return the colour moved down by the time effect, its error widened."""
    sd = math.hypot(colour.sd_c, shift_c / 2)
    low, mean, high = (
        value - shift_c for value in (colour.low_c, colour.temperature_c, colour.high_c)
    )
    return Colour(colour.name, mean, sd, low, high)
