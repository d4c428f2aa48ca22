"""A quantity as the other half of the trade writes it: mm in inches, HRC in Vickers."""

from selector.hardness_scale import LOWEST_HRC, hb_from_hv, hrc_from_hv
from selector.requirement.units import QUANTITIES, UnitError, hardness_hv, quantity

# Of each kind: our unit, the other one, how much of it one of ours is, from where on, digits.
_OTHER: dict[str, tuple[str, str, float, float, int]] = {
    "length": ("mm", "in", 1 / 25.4, 0.0, 3),
    "torque": ("N m", "lb ft", 0.737562, 0.0, 0),
    "force": ("N", "lbf", 0.224809, 0.0, 0),
    "energy": ("J", "ft lb", 0.737562, 0.0, 1),
    "volume": ("l", "US gal", 0.264172, 0.0, 1),
    "temperature": ("°C", "°F", 1.8, 32.0, 0),
    "gas flow": ("kg/h", "lb/h", 2.20462, 0.0, 2),
}
# How a figure in the other unit ends.
_OTHERWISE = (
    "in",
    '"',
    "″",
    "thou",
    "mil",
    "ft",
    "lb",
    "lbf",
    "gal",
    "f",
    "pound",
    "inch",
    "foot",
)


def echo(value: object, kind: str) -> str:
    """Return a quantity in the unit that it was not typed in.

    Parameters
    ----------
    value : object
        A number in our unit, or a text with its unit.
    kind : str
        Kind of quantity.

    Returns
    -------
    str
        For instance "1.102 in" of "28 mm"; empty where the text is no such quantity.
    """
    if (
        value in {None, ""}
        or isinstance(value, bool)
        or not isinstance(value, int | float | str)
    ):
        return ""
    try:
        return _hardness(value) if kind == "hardness" else _quantity(value, kind)
    except (UnitError, OverflowError):
        return ""


def _quantity(value: float | str, kind: str) -> str:
    """Return any quantity but a hardness in its other unit."""
    if kind not in _OTHER or kind not in QUANTITIES:
        return ""
    ours, other, scale, start, digits = _OTHER[kind]
    number = quantity(value, kind) if isinstance(value, str) else float(value)
    if isinstance(value, str) and value.strip().casefold().endswith(_OTHERWISE):
        return f"{number:.4g} {ours}"
    return f"{number * scale + start:.{digits}f} {other}"


def _hardness(value: float | str) -> str:
    """Return a hardness in Vickers, or on the C scale where it was given otherwise."""
    hv = hardness_hv(value)
    if isinstance(value, str) and not value.strip().upper().endswith("HRC"):
        hrc = float(hrc_from_hv(hv, outside="extend"))
        if hrc >= LOWEST_HRC:
            return f"{hrc:.0f} HRC"
        return f"{float(hb_from_hv(hv, outside='extend')):.0f} HB"
    return f"{hv:.0f} HV"
