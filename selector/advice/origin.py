"""Where each number of a record comes from: relation, inputs, source, left limits."""

from collections.abc import Iterator, Mapping
from typing import Any

from pydantic import BaseModel

from catalog.values import SEEN_WORDS
from selector.record import Spread
from selector.wording import shown_spread


def origins(record: BaseModel) -> tuple[str, ...]:
    """Return every figure of a record with its place and what it rests on, one a line."""
    return tuple(_lines(record.model_dump(mode="json"), ""))


def _lines(value: Any, place: str) -> Iterator[str]:  # noqa: ANN401 - plain data of any shape
    """Yield the figures at and below one place of plain data."""
    if isinstance(value, Mapping):
        if "relation" in value:
            yield f"{place}: {_predicted(value)}"
        elif "source" in value and "at" in value:
            yield f"{place}: {_catalogued(value)}"
        else:
            for key, part in value.items():
                yield from _lines(part, f"{place}.{key}" if place else str(key))
    elif isinstance(value, list):
        for number, part in enumerate(value, start=1):
            yield from _lines(part, f"{place} {number}")


def _predicted(figure: Mapping[str, Any]) -> str:
    """Return a predicted figure: value and range, relation, inputs, source, limits left."""
    inputs = ", ".join(f"{name} {_plain(given)}" for name, given in figure["inputs"].items())
    parts = (
        _value(figure),
        f"by {figure['relation']}",
        f"from {inputs}" if inputs else "",
        f"source: {figure['source']}" if figure["source"] else "",
        f"outside its range: {'; '.join(figure['validity'])}" if figure["validity"] else "",
    )
    return "; ".join(part for part in parts if part)


def _plain(given: float | str) -> str:
    """Return an input for the reader."""
    return f"{given:.4g}" if isinstance(given, float) else str(given)


def _value(figure: Mapping[str, Any]) -> str:
    """Return the value of a figure with its range, hardness in its own words."""
    if figure["p50"] is None:
        return "unknown"
    if figure["unit"] == "HRC":
        return shown_spread(Spread.model_validate(figure))
    low, middle, high = (f"{figure[end]:.4g}" for end in ("p05", "p50", "p95"))
    unit = "" if figure["unit"] == "-" else f" {figure['unit']}"
    return f"{middle}{unit} ({low} to {high})"


def _catalogued(value: Mapping[str, Any]) -> str:
    """Return a catalogue value: its numbers, source, place, basis, and how it was seen."""
    own = {k: v for k, v in value.items() if k not in {"source", "at", "basis", "seen"}}
    numbers = ", ".join(f"{name} {given}" for name, given in own.items() if given is not None)
    how = SEEN_WORDS[value["seen"]]
    return (
        f"{numbers}; {value.get('basis', '')}; source: {value['source']}, {value['at']}, {how}"
    )
