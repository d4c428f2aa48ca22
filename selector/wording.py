"""Hardness, chances, movement and temper in words.

Hardness is in HRC from 20 to 68, in Brinell below and in Vickers above, where Rockwell C is
not defined.
"""

import math
from collections.abc import Iterable

from selector.hardness_scale import LOWEST_HRC, hb_from_hv, hv_from_hrc
from selector.record import LayerOut, Spread, TemperOut

# A range from below 20 HRC that ends here or lower reads better in Brinell throughout. [HRC]
_BRINELL_TOP_HRC = 25.0
# Rockwell C is not defined above it: skins are read in Vickers. [HRC]
HIGHEST_HRC = 68.0
# Files: as they are sold; mild steel lies below where the scale begins. Common practice.
HRC_IN_WORDS = (
    "HRC is the scale of hardness of the trade: mild steel is under 20, a new file about 65"
)


def _vickers(hrc: float) -> str:
    """Return a hardness on the C scale as a Vickers number, to ten."""
    return f"{10 * round(float(hv_from_hrc(hrc, outside='extend')) / 10):.0f}"


def _brinell(hrc: float) -> str:
    """Return a hardness on the C scale as a Brinell number."""
    hv = float(hv_from_hrc(hrc, outside="extend"))
    return f"{float(hb_from_hv(hv, outside='extend')):.0f}"


def shown(hrc: float) -> str:
    """Return a hardness for the reader, such as "58 HRC" or "180 HB"."""
    if math.isnan(hrc):
        return "unknown"
    if hrc > HIGHEST_HRC:
        return f"{_vickers(hrc)} HV"
    return f"{hrc:.0f} HRC" if hrc >= LOWEST_HRC else f"{_brinell(hrc)} HB"


def shown_range(low: float, high: float, *, brinell: bool | None = None) -> str:
    """Return a range of hardness for the reader, in one scale.

    Parameters
    ----------
    low, high : float
        Ends on the C scale, carried on below 20.
    brinell : bool, optional
        Which scale a range takes that reaches from below 20 HRC to above; chosen by its upper
        end if left out.

    Returns
    -------
    str
        For instance "56 to 60 HRC", "160 to 200 HB" or "under 20 to 54 HRC".
    """
    if math.isnan(low) or math.isnan(high):
        return "unknown"
    if high > HIGHEST_HRC:
        first, last = _vickers(low), _vickers(high)
        return f"{last} HV" if first == last else f"{first} to {last} HV"
    across = low < LOWEST_HRC <= high
    if brinell is None:
        brinell = high <= _BRINELL_TOP_HRC
    if high < LOWEST_HRC or (across and brinell):
        first, last, unit = _brinell(low), _brinell(high), "HB"
    else:
        first, last, unit = "under 20" if across else f"{low:.0f}", f"{high:.0f}", "HRC"
    return f"{last} {unit}" if first == last else f"{first} to {last} {unit}"


def shown_spread(spread: Spread) -> str:
    """Return a hardness with its range in one scale: "55 HRC (52 to 58 HRC)"."""
    if spread.p50 is None or spread.p05 is None or spread.p95 is None:
        return "unknown"
    middle = shown(spread.p50)
    span = shown_range(spread.p05, spread.p95, brinell=spread.p50 < LOWEST_HRC)
    return middle if span == middle else f"{middle} ({span})"


def in_sentence(name: str) -> str:
    """Return a name of the catalogue as it stands within a sentence, its initial small."""
    return name[:1].lower() + name[1:]


_CONDITIONS = {"hard-element": "bought ready hard", "prehard": "pre-hardened"}
# How a temper is given, in the words of the bench.
_BY_MEANS = {
    "oven": "in the oven",
    "furnace": "in the furnace",
    "plate": "on a plate heated from below",
    "torch": "by torch",
    "blaze": "by blazing off the oil",
    "sand": "in hot sand over the fire",
    "residual": "by the heat left behind",
    "salt": "in the salt",
}


def condition_words(condition: str) -> str:
    """Return a supply condition as the trade says it."""
    return _CONDITIONS.get(condition, condition)


def in_bath(route: str, medium: str | None) -> str:
    """Return a route with its bath: "Local flame hardening, quenched in oil"."""
    if medium is None:
        return route
    how = "cooled" if medium == "air" else "quenched"
    return f"{route}, {how} in {medium.replace('-', ' ')}"


def quenched_words(medium: str, what: str = "") -> str:
    """Return a quench as an instruction: "quench in warm water", "cool in air".

    Parameters
    ----------
    medium : str
        Slug of the bath.
    what : str
        What goes into it; nothing where it is plain.

    Returns
    -------
    str
        Without a capital or a stop.
    """
    verb = "cool" if medium in {"air", "plates"} else "quench"
    where = "between plates" if medium == "plates" else f"in {medium.replace('-', ' ')}"
    return f"{verb} {what} {where}" if what else f"{verb} {where}"


def chance_words(right: float, within_budget: float | None) -> str:
    """Return how often it comes out right and inside the budget, short: "right 99 in 100".

    Parameters
    ----------
    right, within_budget : float
        Shares of the sample; the second None without a budget. [-]

    Returns
    -------
    str
        For instance "right 99 in 100, inside the budget 40 in 100".
    """
    text = f"right {in_100(right)}"
    return (
        text if within_budget is None else f"{text}, inside the budget {in_100(within_budget)}"
    )


def either(names: Iterable[str]) -> str:
    """Return things of which one is needed: "furnace, kiln or forge"."""
    *first, last = dict.fromkeys(names)
    return f"{', '.join(first)} or {last}" if first else last


def in_100(share: float) -> str:
    """Return a chance for the reader, whole and never nil or certain: "23 in 100"."""
    whole = round(100 * share)
    if whole < 1:
        return "under 1 in 100"
    return "over 99 in 100" if whole > 99 else f"{whole} in 100"


def times_in_100(share: float) -> str:
    """Return how often something happens, whole and never nil: "23 times in 100"."""
    whole = round(100 * share)
    if whole < 1:
        return "less than once in 100"
    if whole == 1:
        return "once in 100"
    return "over 99 times in 100" if whole > 99 else f"{whole} times in 100"


def right_words(right: float, within_budget: float | None) -> str:
    """Return how often an option comes out right, and how often inside the budget.

    Parameters
    ----------
    right, within_budget : float
        Shares of the sample; the second None without a budget. [-]

    Returns
    -------
    str
        For instance "comes out right 99 times in 100; inside the budget 40 times in 100".
    """
    text = f"comes out right {times_in_100(right)}"
    if within_budget is None:
        return text
    return f"{text}; inside the budget {times_in_100(within_budget)}"


def minutes_words(time_s: float) -> str:
    """Return a time for the reader, in whole minutes from two on: "45 s", "20 min", "2 h"."""
    if time_s < 120:
        return f"{time_s:.0f} s"
    minutes = round(time_s / 60)
    return f"{minutes} min" if minutes < 120 else f"{minutes / 60:.1f} h".replace(".0 h", " h")


def shown_mm(length_mm: float) -> str:
    """Return a movement for the reader: "0.05 mm", or "under 0.01 mm"."""
    # Rounded as in the record first, so that page and record say the same.
    rounded_mm = round(length_mm, 3)
    if rounded_mm < 0.01:
        return "under 0.01 mm"
    return f"{rounded_mm:.2f} mm" if rounded_mm < 10.0 else f"{rounded_mm:.1f} mm"


def shown_limit(length_mm: float) -> str:
    """Return a limit as it is asked, to the micron where it is that fine: "0.005 mm"."""
    fine = abs(length_mm - round(length_mm, 2)) > 1e-6
    return f"{length_mm:.3f} mm" if fine else f"{length_mm:.2f} mm"


def beside(value: float, limit: float, digits: int) -> str:
    """Return a figure as it is set beside its limit, with digits enough to tell the side.

    Parameters
    ----------
    value, limit : float
        In one unit.
    digits : int
        After the point; up to two more where the figure would read as the limit.

    Returns
    -------
    str
        Without a unit.
    """
    texts = [f"{value:.{digits + more}f}" for more in range(3)]
    if value == limit:
        return texts[0]
    return next((t for t in texts if float(t) != round(limit, digits)), texts[-1])


def layer_words(layer: LayerOut) -> str:
    """Return how a layer is grown: "0.86 mm for the 0.5 mm asked: energised pack, 4.0 h …"."""
    named = {
        "charcoal": "charcoal pack",
        "energised": "energised pack",
        "gas": "gas carburising",
        "nitrocarburising": "nitrocarburising, compound layer",
    }
    asked = f" for the {layer.asked_mm:g} mm asked" if layer.asked_mm else ""
    ground = f", {layer.removed_mm:g} mm ground off" if layer.removed_mm else ""
    how = f"{named.get(layer.medium, layer.medium)}, {hours_words(layer.hours)}"
    return f"{layer.depth_mm:.2f} mm{asked}{ground}: {how} at {layer.temperature_c:.0f} °C"


def hours_words(hours: float) -> str:
    """Return a time at heat for the reader: "25 min", "5.5 h" or "43 h"."""
    if hours < 1.0:
        return f"{60.0 * hours:.0f} min"
    return f"{hours:.1f} h" if hours < 10.0 else f"{hours:.0f} h"


def days_words(days: float) -> str:
    """Return a wait in words, for instance "1 day", "2.5 days"."""
    return f"{days:g} {'day' if days == 1 else 'days'}"


def shown_time(seconds: float) -> str:
    """Return a time at the bench for the reader: "40 s", "25 min" or "6 h"."""
    if seconds < 90.0:
        return f"{max(round(seconds), 1)} s"
    minutes = seconds / 60.0
    if minutes < 120.0:
        return f"{minutes:.1f} min" if minutes < 5.0 and minutes % 1 else f"{minutes:.0f} min"
    return f"{minutes / 60.0:.1f} h".replace(".0 h", " h")


def means_words(means: str) -> str:
    """Return the means of a temper as the bench says it: "in the oven", "by torch"."""
    return _BY_MEANS.get(means, f"by {means}")


def temper_words(temper: TemperOut) -> str:
    """Return a temper for the reader: "250 °C by torch, 5 min (…); shows brown"."""
    if temper.temperature_c is None:
        return "none"
    text = f"{temper.temperature_c:.0f} °C {means_words(temper.means)}"
    if temper.time_min is not None and temper.means != "residual":
        text += f", {temper.time_min:.0f} min" + (f" × {temper.cycles}" * (temper.cycles > 1))
    if temper.band_c and temper.band_c[0] < temper.band_c[1]:
        text += f" ({temper.band_c[0]:.0f} to {temper.band_c[1]:.0f} °C serves)"
    return text + (f"; shows {temper.colour}" if temper.colour else "")
