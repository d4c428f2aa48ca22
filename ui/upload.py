"""A file the visitor hands over, as plain data."""

import json
import tomllib
from pathlib import PurePath
from typing import Any

from selector.errors import Problem, RequirementError


def _answered(table: dict[str, Any]) -> dict[str, Any]:
    """Return a table without its nulls."""
    return {key: value for key, value in table.items() if value is not None}


def parsed(name: str, content: bytes) -> dict[str, Any]:
    """Return the contents of a requirement file, not yet checked; a JSON null is no answer.

    Parameters
    ----------
    name : str
        Its name; `.json` is read as JSON, any other as TOML.
    content : bytes
        What it holds.

    Returns
    -------
    dict
        Plain data.

    Raises
    ------
    RequirementError
        When it is no such file.
    """
    kind = "JSON" if PurePath(name).suffix.lower() == ".json" else "TOML"
    try:
        text = content.decode("utf-8-sig")
        data = (
            json.loads(text, object_hook=_answered) if kind == "JSON" else tomllib.loads(text)
        )
    except (ValueError, RecursionError) as fault:
        problem = Problem(f"file {name}", f"valid {kind}", str(fault), "Mend what it names.")
        raise RequirementError(problem) from fault
    if not isinstance(data, dict) or not data:
        problem = Problem(
            f"file {name}", "a requirement", "other contents", "Start from an example."
        )
        raise RequirementError(problem)
    return data
