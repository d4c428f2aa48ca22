"""Data made safe to set: nothing in a name steers what shows it."""

import math
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from catalog.text import visible

# What stands where a figure is not a number: nothing is better than a wrong figure.
UNKNOWN = None


def harmless(data: Any) -> Any:  # noqa: ANN401 - whatever JSON holds
    """Return data of JSON's kinds with control characters and turned reading order as escapes.

    Markup needs no care here: sheets take texts as data, never as markup.

    Parameters
    ----------
    data : object
        Mappings, sequences, texts, numbers; a path becomes its text.

    Returns
    -------
    object
        The same, of dicts and lists; a number that is not finite is None.
    """
    if isinstance(data, str | Path):
        # Half of a pair of code units is no letter and no file can hold it.
        return visible(str(data)).encode("utf-8", "replace").decode()
    if isinstance(data, Mapping):
        return {harmless(str(key)): harmless(value) for key, value in data.items()}
    if isinstance(data, list | tuple):
        return [harmless(value) for value in data]
    if isinstance(data, float) and not math.isfinite(data):
        return UNKNOWN
    return data
