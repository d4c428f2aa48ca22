"""A file written whole or not at all: an old one stays as it was until the new one is there."""

import errno
import os
from pathlib import Path

from catalog.whole_file import put_in_place
from selector.errors import Problem, RequirementError

# What the system grants a new file where the user has set nothing else.
NEW_FILE = 0o666


def write_whole(path: Path, content: bytes, field: str = "--out") -> None:
    """Write a file whole, or refuse the place that does not take it.

    Parameters
    ----------
    path : Path
        Where to.
    content : bytes
        What.
    field : str
        Which option of the command names the file.

    Raises
    ------
    RequirementError
        When it cannot be written; what was there before is left as it was.
    """
    try:
        # A link stays a link: what it leads to is replaced.
        target = Path(os.path.realpath(path))
        _replace(target, content)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error)
        rule, step = "a file that can be written", "Name a file in a folder that takes it."
        got = f"{str(path)!r} ({why})"
        raise RequirementError(Problem(field, rule, got, step)) from error


def _replace(target: Path, content: bytes) -> None:
    """Put a file in the place of what may be replaced: a file, or nothing yet."""
    if target.exists() and not target.is_file():
        # A folder, or a device that must never be replaced by a file.
        raise OSError(errno.EEXIST, "no plain file has this name")
    put_in_place(target, content, mode=_mode(target))


def _mode(target: Path) -> int:
    """Return who may read and write a file: as before, or as new files are made here."""
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return NEW_FILE & ~mask
