"""What a changed requirement asks otherwise, as answers that the form could hold."""

from collections.abc import Iterator
from typing import Any

from selector import Requirement
from selector.requirement.question import question

# How a bare number of ours is written where its unit must be said.
_UNITS = {"torque": "N m", "hardness": "HV"}


def edits(before: Requirement, after: Requirement) -> list[tuple[str, Any]]:
    """Return the answers that lead from one requirement to another.

    Parameters
    ----------
    before, after : Requirement
        The same part with some answers changed.

    Returns
    -------
    list
        Place and answer of each; a list that grew or shrank is answered whole.
    """
    old = before.model_dump(mode="json", exclude_none=True)
    new = after.model_dump(mode="json", exclude_none=True)
    return list(_apart("", old, new))


def _apart(path: str, old: Any, new: Any) -> Iterator[tuple[str, Any]]:  # noqa: ANN401
    """Yield where two parts of a requirement differ."""
    if isinstance(old, dict) and isinstance(new, dict):
        for key in {**old, **new}:
            yield from _apart(f"{path}.{key}" if path else key, old.get(key), new.get(key))
    elif isinstance(old, list) and isinstance(new, list) and len(old) == len(new):
        for number, (one, other) in enumerate(zip(old, new, strict=True), start=1):
            yield from _apart(f"{path}.{number}", one, other)
    elif old != new:
        yield path, _written(path, new)


def _written(path: str, value: Any) -> Any:  # noqa: ANN401
    """Return a value as it would be typed, each number with its unit where it wants one."""
    if isinstance(value, dict):
        return {key: _written(f"{path}.{key}", inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [_written(path, inner) for inner in value]
    asked = question(path)
    unit = _UNITS.get(asked.unit_kind or "") if asked else None
    if unit is None or isinstance(value, bool) or not isinstance(value, int | float):
        return value
    return f"{value:.4g} {unit}"
