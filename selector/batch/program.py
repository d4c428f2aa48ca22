"""What an answer is worked out by: program, catalogue and libraries, each as a short text."""

import hashlib
import platform
from functools import cache
from pathlib import Path

from selector.handover.version import PROGRAM, version_of

_ROOT = Path(__file__).parents[2]
_ROOMS, _KINDS = ("catalog", "selector"), frozenset({".py", ".toml", ".npy"})
# Libraries that the last digit of a figure may hang on.
_LIBRARIES = ("numpy", "scipy", "numba", "pint", "pydantic")


@cache
def program() -> dict[str, str]:
    """Return what an answer is worked out by.

    Returns
    -------
    dict of str to str
        Versions, and a digest of the files of program and shipped catalogue: a release number
        alone would hide a change in between.
    """
    versions = {"python": ".".join(platform.python_version_tuple()[:2]), "files": _digest()}
    return versions | {name: version_of(name) for name in (PROGRAM, *_LIBRARIES)}


def differing(here: dict[str, str], there: dict[str, str]) -> str:
    """Return in what two programs differ, in words; nothing where they are alike."""
    return ", ".join(
        f"{name} {there.get(name, 'absent')[:12]} instead of {mine[:12]}"
        for name, mine in here.items()
        if there.get(name) != mine
    )


def _digest() -> str:
    """Return what changes with any file of program or shipped catalogue."""
    digest = hashlib.sha256()
    for room in _ROOMS:
        for path in sorted((_ROOT / room).rglob("*")):
            if path.suffix in _KINDS:
                digest.update(path.relative_to(_ROOT).as_posix().encode() + b"\0")
                digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()
