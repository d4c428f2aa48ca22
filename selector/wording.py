"""Hardness and temper in words: HRC from 20 up, Brinell below, where Rockwell means nothing."""

import math

from selector.hardness_scale import LOWEST_HRC, hb_from_hv, hv_from_hrc
from selector.record import Spread, TemperOut


def shown(hrc: float) -> str:
    """Return a hardness for the reader.

    Parameters
    ----------
    hrc : float
        Hardness on the C scale, carried on below 20.

    Returns
    -------
    str
        For instance "58 HRC" or "180 HB".
    """
    if math.isnan(hrc):
        return "unknown"
    if hrc >= LOWEST_HRC:
        return f"{hrc:.0f} HRC"
    hv = float(hv_from_hrc(hrc, outside="extend"))
    return f"{float(hb_from_hv(hv, outside='extend')):.0f} HB"


def shown_range(low: float, high: float) -> str:
    """Return a range of hardness for the reader.

    Parameters
    ----------
    low, high : float
        Ends on the C scale, carried on below 20.

    Returns
    -------
    str
        For instance "56 to 60 HRC" or "160 to 200 HB".
    """
    first, last = shown(low), shown(high)
    if first == last:
        return first
    if first.split()[-1] == last.split()[-1]:
        return f"{first.split()[0]} to {last}"
    return f"{first} to {last}"


def shown_spread(spread: Spread) -> str:
    """Return a hardness with its range for the reader.

    Parameters
    ----------
    spread : Spread
        Hardness on the C scale.

    Returns
    -------
    str
        For instance "55 HRC (52 to 58 HRC)"; "196 HB" where the range rounds to the same.
    """
    if spread.p50 is None or spread.p05 is None or spread.p95 is None:
        return "unknown"
    middle, span = shown(spread.p50), shown_range(spread.p05, spread.p95)
    return middle if span == middle else f"{middle} ({span})"


def temper_words(found: TemperOut) -> str:
    """Return a temper for the reader.

    Parameters
    ----------
    found : TemperOut
        The temper of an option.

    Returns
    -------
    str
        For instance "250 °C, torch, 5 min (200 to 250 °C serves); shows brown".
    """
    if found.temperature_c is None:
        return "none"
    text = f"{found.temperature_c:.0f} °C, {found.means}"
    if found.time_min is not None and found.means != "residual":
        text += f", {found.time_min:.0f} min" + (f" × {found.cycles}" * (found.cycles > 1))
    if found.band_c and found.band_c[0] < found.band_c[1]:
        text += f" ({found.band_c[0]:.0f} to {found.band_c[1]:.0f} °C serves)"
    return text + (f"; shows {found.colour}" if found.colour else "")
