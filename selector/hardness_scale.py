"""Rockwell C, Vickers, Brinell and tensile strength, by the two standard conversion tables.

Straight lines between the rows of ASTM E140 Table 1 and ISO 18265 Table A.1. Outside its rows a
table knows nothing: a function then raises (the default, for a figure somebody typed), returns
NaN (`outside="nan"`), or goes on along the bracketed rows below 20 HRC and the last slope
(`outside="extend"`, for arithmetic in the middle of a chain, never for display).
"""

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Literal, NoReturn

import numpy as np
import tomli
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.errors import OutOfRangeError, Problem

Scale = Literal["ASTM E140", "ISO 18265"]
Outside = Literal["raise", "nan", "extend"]
Floats = NDArray[np.float64]

# So few values are read off quicker by searching the rows. [-]
FEW = 64
# Below this the Rockwell C cone reads too deep to mean anything (ASTM E18).
LOWEST_HRC = 20.0


@cache
def _tables() -> Mapping[str, Mapping[str, Floats]]:
    """Return the columns of both tables, and the bracketed rows, by name."""
    data = tomli.loads(Path(__file__).with_suffix(".toml").read_text(encoding="utf-8"))
    data["bracketed"] = data["ASTM E140"].pop("bracketed")
    return {
        name: {key: np.array(v, dtype=float) for key, v in table.items() if isinstance(v, list)}
        for name, table in data.items()
    }


@cache
def _columns(scale: str, given: str, wanted: str) -> tuple[Floats, Floats]:
    """Return the rows of `scale` that hold both columns; a short HRC column ends with HV."""
    table = _tables()[scale]
    rows = table["hv"].size

    def placed(name: str) -> Floats:
        column = table[name]
        gap = np.full(rows - column.size, np.nan)
        return np.concatenate([gap, column] if name == "hrc" else [column, gap])

    pair = np.stack([placed(given), placed(wanted)])
    x, y = pair[:, ~np.isnan(pair).any(axis=0)]
    return x, y


@cache
def _extended(scale: str, given: str, wanted: str) -> tuple[Floats, Floats]:
    """Return the rows with the bracketed ones added and the end slopes carried on."""
    x, y = _columns(scale, given, wanted)
    if scale == "ASTM E140" or {given, wanted} == {"hrc", "hv"}:
        low = _tables()["bracketed"]
        x, y = np.concatenate([low[given], x]), np.concatenate([low[wanted], y])
    reach = x[-1] - x[0]
    first, last = (y[1] - y[0]) / (x[1] - x[0]), (y[-1] - y[-2]) / (x[-1] - x[-2])
    return (
        np.concatenate([[x[0] - reach], x, [x[-1] + reach]]),
        np.concatenate([[y[0] - first * reach], y, [y[-1] + last * reach]]),
    )


@cache
def _laid_out(scale: str, given: str, wanted: str) -> tuple[Floats, Floats] | None:
    """Return height and slope of the extended rows for each whole number, if all rows are."""
    # A value is carried to height + slope × value, both at its whole number.
    x, y = _extended(scale, given, wanted)
    if not np.array_equal(x, np.rint(x)):
        return None
    row = np.searchsorted(x, np.arange(x[0], x[-1]), side="right") - 1
    slope = np.diff(y)[row] / np.diff(x)[row]
    # The last number closes the last row.
    row, slope = np.append(row, row[-1]), np.append(slope, slope[-1])
    return y[row] - slope * x[row], slope


def _refuse(scale: str, name: str, given: Floats, x: Floats) -> NoReturn:
    """Raise the error that names the table, the limit and the value."""
    unit = {"hrc": "HRC", "hv": "HV", "hb": "HB", "tensile_mpa": "MPa"}[name]
    worst = given[(given < x[0]) | (given > x[-1])].flat[0]
    rule = f"between {x[0]:g} and {x[-1]:g} {unit} (limit of {scale})"
    step = "Give the hardness on another scale."
    raise OutOfRangeError(Problem(name, rule, f"{worst:g} {unit}", step))


def _convert(
    value: ArrayLike, scale: Scale, given: str, wanted: str, outside: Outside
) -> Floats:
    """Return `value` carried from one column of a table to another."""
    array = np.asarray(value, dtype=float)
    if outside == "extend":
        return _read_on(array, (scale, given, wanted))
    x, y = _columns(scale, given, wanted)
    if outside == "raise" and bool(((array < x[0]) | (array > x[-1])).any()):
        _refuse(scale, given, array, x)
    return np.asarray(np.interp(array, x, y, left=np.nan, right=np.nan))


def _read_on(array: Floats, columns: tuple[str, str, str]) -> Floats:
    """Return values carried along the extended rows."""
    x, y = _extended(*columns)
    rows = _laid_out(*columns) if array.size > FEW else None
    if rows is None or not np.isfinite(array.sum()):
        return np.asarray(np.interp(array, x, y))
    # Rows at whole numbers need no search: a third of the time, on what the samples ask most.
    held = bounded(array, x[0], x[-1])
    place = (held - x[0]).astype(np.intp)
    return np.asarray(rows[0].take(place) + rows[1].take(place) * held)


def hv_from_hrc(
    hrc: ArrayLike, scale: Scale = "ASTM E140", outside: Outside = "raise"
) -> Floats:
    """Return the Vickers hardness that a table gives beside a Rockwell C hardness.

    Parameters
    ----------
    hrc : array_like
        Rockwell C hardness. [HRC]
    scale : {"ASTM E140", "ISO 18265"}
        Table. [-]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Vickers hardness. [HV]

    Raises
    ------
    OutOfRangeError
        Outside 20 to 68 HRC (ASTM E140) or 20.3 to 68 HRC (ISO 18265).

    Notes
    -----
    Conversion is an average over many steels; the standards warn of some ±2 HRC. `extend` uses
    the bracketed rows of SAE J417 from 0 to 20 HRC.

    References
    ----------
    .. [1] ASTM E140, Standard hardness conversion tables for metals, Table 1.
    .. [2] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hv_from_hrc(50))
    513.0
    """
    return _convert(hrc, scale, "hrc", "hv", outside)


def hrc_from_hv(
    hv: ArrayLike, scale: Scale = "ASTM E140", outside: Outside = "raise"
) -> Floats:
    """Return the Rockwell C hardness that a table gives beside a Vickers hardness.

    Parameters
    ----------
    hv : array_like
        Vickers hardness. [HV]
    scale : {"ASTM E140", "ISO 18265"}
        Table. [-]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Rockwell C hardness. [HRC]

    Raises
    ------
    OutOfRangeError
        Outside 238 to 940 HV (ASTM E140) or 240 to 940 HV (ISO 18265).

    References
    ----------
    .. [1] ASTM E140, Standard hardness conversion tables for metals, Table 1.
    .. [2] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hrc_from_hv(513))
    50.0
    """
    return _convert(hv, scale, "hv", "hrc", outside)


def hrc_from_hb(
    hb: ArrayLike, scale: Scale = "ASTM E140", outside: Outside = "raise"
) -> Floats:
    """Return the Rockwell C hardness that a table gives beside a Brinell hardness.

    Parameters
    ----------
    hb : array_like
        Brinell hardness, 10 mm ball and 3000 kgf. [HB]
    scale : {"ASTM E140", "ISO 18265"}
        Table. [-]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Rockwell C hardness. [HRC]

    Raises
    ------
    OutOfRangeError
        Outside 226 to 739 HB (ASTM E140) or 228 to 618 HB (ISO 18265).

    References
    ----------
    .. [1] ASTM E140, Standard hardness conversion tables for metals, Table 1.
    .. [2] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hrc_from_hb(294))
    31.0
    """
    return _convert(hb, scale, "hb", "hrc", outside)


def hb_from_hv(hv: ArrayLike, scale: Scale = "ISO 18265", outside: Outside = "raise") -> Floats:
    """Return the Brinell hardness that a table gives beside a Vickers hardness.

    Parameters
    ----------
    hv : array_like
        Vickers hardness. [HV]
    scale : {"ASTM E140", "ISO 18265"}
        Table. [-]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Brinell hardness, 10 mm ball and 3000 kgf; above 450 HB a carbide ball. [HB]

    Raises
    ------
    OutOfRangeError
        Outside 238 to 832 HV (ASTM E140) or 80 to 650 HV (ISO 18265).

    References
    ----------
    .. [1] ASTM E140, Standard hardness conversion tables for metals, Table 1.
    .. [2] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hb_from_hv(300))
    285.0
    """
    return _convert(hv, scale, "hv", "hb", outside)


def hv_from_hb(hb: ArrayLike, scale: Scale = "ISO 18265", outside: Outside = "raise") -> Floats:
    """Return the Vickers hardness that a table gives beside a Brinell hardness.

    Parameters
    ----------
    hb : array_like
        Brinell hardness, 10 mm ball and 3000 kgf. [HB]
    scale : {"ASTM E140", "ISO 18265"}
        Table. [-]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Vickers hardness. [HV]

    Raises
    ------
    OutOfRangeError
        Outside 226 to 739 HB (ASTM E140) or 76 to 618 HB (ISO 18265).

    References
    ----------
    .. [1] ASTM E140, Standard hardness conversion tables for metals, Table 1.
    .. [2] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hv_from_hb(285))
    300.0
    """
    return _convert(hb, scale, "hb", "hv", outside)


def tensile_mpa_from_hv(hv: ArrayLike, outside: Outside = "raise") -> Floats:
    """Return the tensile strength that ISO 18265 gives beside a Vickers hardness.

    Parameters
    ----------
    hv : array_like
        Vickers hardness. [HV]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Tensile strength. [MPa]

    Raises
    ------
    OutOfRangeError
        Outside 80 to 650 HV.

    References
    ----------
    .. [1] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(tensile_mpa_from_hv(300))
    965.0
    """
    return _convert(hv, "ISO 18265", "hv", "tensile_mpa", outside)


def hv_from_tensile_mpa(tensile_mpa: ArrayLike, outside: Outside = "raise") -> Floats:
    """Return the Vickers hardness that ISO 18265 gives beside a tensile strength.

    Parameters
    ----------
    tensile_mpa : array_like
        Tensile strength. [MPa]
    outside : {"raise", "nan", "extend"}
        What to do outside the table. [-]

    Returns
    -------
    ndarray
        Vickers hardness. [HV]

    Raises
    ------
    OutOfRangeError
        Outside 255 to 2180 MPa.

    References
    ----------
    .. [1] ISO 18265:2013, Metallic materials, conversion of hardness values, Table A.1.

    Examples
    --------
    >>> float(hv_from_tensile_mpa(965))
    300.0
    """
    return _convert(tensile_mpa, "ISO 18265", "tensile_mpa", "hv", outside)
