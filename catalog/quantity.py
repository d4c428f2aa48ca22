"""The sourced values inside a record, and the bounds within which each can be real.

The bounds catch a slip of ten or a hundred, a swapped unit or a misplaced figure. They are
wide on purpose: a sound but unusual steel must pass.
"""

from collections.abc import Iterator
from types import MappingProxyType

from catalog.values import Curve, Number, Record, Sourced, Span

# Most of each element any steel of the trade holds. [wt %]
ELEMENT_MOST_WT_PCT = MappingProxyType(
    {
        "C": 2.5, "Si": 4.0, "Mn": 20.0, "P": 0.2, "S": 0.5, "Cr": 30.0, "Mo": 12.0,
        "Ni": 40.0, "V": 10.0, "W": 20.0, "Co": 20.0, "Cu": 6.0, "Al": 6.0, "Ti": 3.0,
        "Nb": 3.0, "N": 1.0, "B": 0.02, "Pb": 0.5,
    }
)  # fmt: skip

# Lowest and highest credible value by key; a key that is not named goes by its unit.
BY_KEY = MappingProxyType(
    {
        "ac1": (600.0, 900.0),
        "ac3": (650.0, 1050.0),
        "ms": (-150.0, 560.0),
        "anneal": (500.0, 1000.0),
        "normalise": (750.0, 1050.0),
        "transition": (-200.0, 100.0),
        "flash_point_c": (60.0, 400.0),
        "ceiling_c": (100.0, 1600.0),
        "severity_per_in": (0.01, 10.0),
        "labour_h": (0.0, 24.0),
        "days": (0.0, 60.0),
        "movement_factor": (0.0, 3.0),
        "time_h": (0.0, 120.0),
        "cycles": (1.0, 4.0),
        "power_w": (50.0, 100_000.0),
        "gas_per_h_kg": (0.01, 10.0),
        "machinability_pct": (5.0, 300.0),
        "carbide_vol_pct": (0.1, 40.0),
        "share": (0.01, 1.0),
    }
)
BY_UNIT = MappingProxyType(
    {
        "_c": (-80.0, 1350.0),
        "_mm": (0.005, 500.0),
        "_min": (0.1, 1500.0),
        "_hrc": (10.0, 70.0),
        "_hb": (60.0, 700.0),
        "_hv": (80.0, 1500.0),
        "_mpa": (200.0, 3500.0),
    }
)
TEMPERING_C = (20.0, 750.0)


def sourced(value: object, key: str = "") -> Iterator[tuple[str, Sourced]]:
    """Yield every sourced value inside `value` with its dotted key.

    Parameters
    ----------
    value : object
        A record, or a mapping or tuple of them.
    key : str
        Where `value` itself stands.

    Yields
    ------
    tuple of str and Sourced
        Dotted key and value; list entries are counted from 1.
    """
    if isinstance(value, Sourced):
        yield key, value
        return
    if isinstance(value, Record):
        inner = list(value)
    elif isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, tuple):
        inner = [(str(place), entry) for place, entry in enumerate(value, start=1)]
    else:
        return
    for name, entry in inner:
        yield from sourced(entry, f"{key}.{name}" if key else name)


def implausible(record: Record) -> Iterator[tuple[str, str, str]]:
    """Yield each value of `record` that no steel, bath or workshop can have.

    Parameters
    ----------
    record : Record
        A steel, route, medium or heat source.

    Yields
    ------
    tuple of str
        Dotted key, the rule it breaks and what stands there.
    """
    for key, value in sourced(record):
        table, _, element = key.rpartition(".")
        if table == "composition_wt_pct" and element not in ELEMENT_MOST_WT_PCT:
            yield key, f"must be one of {', '.join(ELEMENT_MOST_WT_PCT)}", element
        elif isinstance(value, Curve):
            yield from _outside(key, TEMPERING_C, *(x for x, _ in value.points))
            yield from _outside(key, _bounds(key), *(y for _, y in value.points))
        elif isinstance(value, Number):
            yield from _outside(key, _bounds(key), value.value)
        elif isinstance(value, Span):
            yield from _outside(key, _bounds(key), value.min, value.max)


def _bounds(key: str) -> tuple[float, float]:
    """Return the bounds of a dotted key: its own, those of its table, or those of its unit."""
    parts = key.split(".")[::-1]
    if "composition_wt_pct" in parts:
        return 0.0, ELEMENT_MOST_WT_PCT[parts[0]]
    for part in parts:
        if part in BY_KEY:
            return BY_KEY[part]
    return next(
        bounds for part in parts for unit, bounds in BY_UNIT.items() if part.endswith(unit)
    )


def _outside(
    key: str, bounds: tuple[float, float], *values: float | None
) -> Iterator[tuple[str, str, str]]:
    """Yield those of `values` that lie outside `bounds`."""
    low, high = bounds
    for value in values:
        if value is not None and not low <= value <= high:
            yield key, f"must be between {low:g} and {high:g}", f"{value:g}"
