"""Text with units into plain numbers; pint does the work, this file knows workshop spelling.

Bare numbers are mm, N m, N, °C, J, litre and HRC. A bare torque is asked back, because N m and
lb ft look alike on paper and differ by a third.
"""

import re
import shutil
from functools import cache
from typing import TYPE_CHECKING, Any

from catalog.user_folder import cache_folder
from selector.hardness_scale import hv_from_hb, hv_from_hrc, hv_from_tensile_mpa

if TYPE_CHECKING:
    from pint import UnitRegistry

# Our unit of each quantity, and an example for the error text.
QUANTITIES = {
    "length": ("millimeter", "12.5 mm, 1/2 in, 40 thou"),
    "temperature": ("degree_Celsius", "200 degC, 400 degF"),
    "torque": ("newton * meter", "120 N m, 90 lb ft"),
    "force": ("newton", "800 N, 180 lbf, 80 kgf"),
    "energy": ("joule", "15 J, 11 ft lb"),
    "volume": ("liter", "8 l, 2 gal"),
    "time": ("second", "90 s, 30 min, 1 h"),
    "days": ("day", "5 days, 2 weeks"),
    "mass": ("kilogram", "2 kg, 4 lb"),
    "gas flow": ("kilogram / hour", "0.8 kg/h"),
    "pressure": ("megapascal", "250 MPa, 36 ksi"),
}
# Spellings of our unit itself: nothing is converted, so pint need not be loaded for them.
OURS = {
    "length": {"mm"},
    "temperature": {"degC", "°C", "C"},
    "torque": {"N m", "Nm"},
    "force": {"N"},
    "energy": {"J"},
    "volume": {"l", "L"},
    "time": {"s"},
    "days": {"day", "days"},
    "mass": {"kg"},
    "gas flow": {"kg/h"},
    "pressure": {"MPa", "N/mm2", "N/mm²"},
}
# Workshop spellings that pint would misread; longest first.
_SPELLINGS = (
    (r"(?:ft|foot|feet)[\s\-·.]*(?:lbs?|lbf|pounds?)\b", "foot*force_pound"),
    (r"(?:lbs?|lbf|pounds?)[\s\-·.]*(?:ft|foot|feet)\b", "foot*force_pound"),
    (r"(?:lbs?|lbf|pounds?)[\s\-·.]*(?:in|inch|inches)\b", "inch*force_pound"),
    (r"(?:in|inch)[\s\-·.]*(?:lbs?|lbf)\b", "inch*force_pound"),
    (r"kgf?[\s\-·.]*m\b", "kgf*meter"),
    (r"N[\s\-·.]*mm\b", "newton*millimeter"),
    (r"N[\s\-·.]*m\b", "newton*meter"),
    (r"tonf?/in(?:ch)?[2²]", "UK_force_ton/inch**2"),
    (r"N/mm[2²]", "megapascal"),
    (r"(?:deg(?:rees?)?\s*|°\s*)?(?:C|[cC]elsius)\b", "degree_Celsius"),
    (r"(?:deg(?:rees?)?\s*|°\s*)?(?:F|[fF]ahrenheit)\b", "degree_Fahrenheit"),
    (r'(?:"|″|in\.)', "inch"),
    (r"lbs?\b", "pound"),
)
_FRACTION = re.compile(r"^\s*(?:(\d{1,6})[\s\-]+)?(\d{1,6})\s*/\s*(\d{1,6})(?=\D|$)")
# All that may be left for pint to read: letters, joints, and one 2 or 3 as a power. Powers of
# powers would keep it counting for ever.
_UNIT = re.compile(r"[A-Za-zµμ°²³\s/*·.\-]{1,30}(?:[23][A-Za-zµμ°²³\s/*·.\-]{0,30})?")
_RANGE = re.compile(r"^(?:-|–|to\b)\s*\d")
# What pint and Python's tokenizer raise on text that is no unit.
_UNREADABLE = (
    ArithmeticError,
    AssertionError,
    AttributeError,
    TypeError,
    ValueError,
    SyntaxError,
)
_NAMED = {"energy": "an energy", "days": "a number of days"}
_NUMBER = re.compile(r"^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$")


class UnitError(ValueError):
    """A text is not a quantity of the kind asked for.

    Parameters
    ----------
    rule : str
        What the text must be.
    next_step : str
        What to write instead.
    """

    def __init__(self, rule: str, next_step: str) -> None:
        self.rule, self.next_step = rule, next_step
        super().__init__(f"{rule}. {next_step}")


@cache
def _registry() -> "UnitRegistry[Any]":
    """Return the unit registry; built on first use because it takes a while."""
    from pint import UnitRegistry  # noqa: PLC0415

    # Its definitions, read once and kept, load ten times as fast. In a folder of our own, which
    # may be thrown away.
    place = cache_folder()
    if place is None:
        return UnitRegistry()
    folder = place / "units"
    try:
        return UnitRegistry(cache_folder=folder)
    except Exception:  # noqa: BLE001 - to unpickle a damaged file may raise anything
        # Damaged, half written by another process, or there is no place. The next run makes it
        # anew.
        shutil.rmtree(folder, ignore_errors=True)
        return UnitRegistry()


def _decimal(text: str) -> str:
    """Return `text` with a leading workshop fraction ("1 3/8 in") written as a decimal."""
    match = _FRACTION.match(text)
    if not match or int(match[3]) == 0:
        return text
    whole, top, bottom = int(match[1] or 0), int(match[2]), int(match[3])
    return f"{whole + top / bottom} {text[match.end() :]}"


def quantity(text: str, kind: str) -> float:
    """Return `text` as a number in our unit of `kind`.

    Parameters
    ----------
    text : str
        Number and unit, fractions of an inch included.
    kind : str
        A key of `QUANTITIES`.

    Returns
    -------
    float
        Value in our unit.

    Raises
    ------
    UnitError
        When the number or the unit is missing, unknown, or of another kind.
    """
    unit, example = QUANTITIES[kind]
    what, step = _NAMED.get(kind, f"a {kind}"), f"Write for instance {example}."
    match = _NUMBER.match(_decimal(text.strip()))
    if not match:
        raise UnitError(f"{what} written as number and unit", step)
    number, spelling = float(match[1]), match[2].strip()
    if not spelling:
        raise UnitError(f"{what} with its unit", step)
    if _RANGE.match(spelling):
        raise UnitError(f"{what} as one figure, not a range", f"Choose one figure. {step}")
    if spelling in OURS[kind]:
        return number
    import pint  # noqa: PLC0415 - slow to load

    known = _registry()
    try:
        return float(known.Quantity(number, _spelt(spelling)).to(unit).magnitude)
    except (pint.PintError, *_UNREADABLE) as fault:
        raise UnitError(f"{what} in a unit of {kind}", step) from fault


def _spelt(spelling: str) -> str:
    """Return a unit in pint's spelling, refusing text that no unit is written in."""
    for pattern, name in _SPELLINGS:
        if re.fullmatch(pattern, spelling):
            return name
    if not _UNIT.fullmatch(spelling):
        msg = f"{spelling!r} is no unit"
        raise ValueError(msg)
    return spelling


# Where the table of Brinell beside Vickers ends, and the softest that anything runs on. [HB]
_TABLE_ENDS_HB, _SOFTEST_HB = 76.0, 10.0

_HARDNESS = re.compile(r"^\s*(\d+\.?\d*)\s*(HRC|HRc|HV\d*|HB[WS]?|N/mm2|N/mm²|MPa|ksi)?\s*$")


def hardness_hv(value: float | str) -> float:
    """Return a hardness as Vickers number.

    Parameters
    ----------
    value : float or str
        "50 HRC", "294 HB", "600 HV", a tensile strength "1000 MPa"; a bare number is HRC.

    Returns
    -------
    float
        Hardness. [HV]

    Raises
    ------
    UnitError
        When it is no hardness, or HRC below 20, where the Rockwell C scale means nothing.
    """
    match = _HARDNESS.match(str(value))
    if not match:
        raise UnitError("a hardness", "Write for instance 50 HRC, 294 HB or 600 HV.")
    number, scale = float(match[1]), (match[2] or "HRC").upper()
    if scale == "HRC" and number < 20:
        raise UnitError(
            "20 HRC or more on the C scale", "Give it in HB or HV instead, for instance 200 HB."
        )
    return _to_hv(number, scale)


def _to_hv(number: float, scale: str) -> float:
    """Convert by scale, turning a table's end into a unit error."""
    from selector.errors import OutOfRangeError  # noqa: PLC0415

    try:
        if scale == "HRC":
            return float(hv_from_hrc(number))
        if scale.startswith("HB"):
            # White metal, copper and the like, as mates, lie below the table, which
            # ends at 80 HV for 76 HB: the same share holds.
            soft = _SOFTEST_HB <= number < _TABLE_ENDS_HB
            return float(hv_from_hb(number, outside="extend" if soft else "raise"))
        if scale in {"MPA", "N/MM2", "N/MM²"}:
            return float(hv_from_tensile_mpa(number))
        if scale == "KSI":
            return float(hv_from_tensile_mpa(number * 6.894757))
    except OutOfRangeError as fault:
        raise UnitError("inside the conversion table", str(fault)) from fault
    if not 10 <= number <= 1500:
        raise UnitError("between 10 and 1500 HV", "Check the figure and its scale.")
    return number
