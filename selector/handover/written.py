"""A file written whole or not at all: an old one stays as it was until the new one is there."""

import errno
import os
import tempfile
from contextlib import suppress
from pathlib import Path

from selector.errors import Problem, RequirementError

# What the system grants a new file where the user has set nothing else.
NEW_FILE = 0o666


def write_whole(path: Path, content: bytes, field: str = "--out") -> None:
    """Write a file beside its name and put it in its place once it is complete on the disk.

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
    """Write beside a file, flush to the disk, and replace it; clear up where that fails."""
    if target.exists() and not target.is_file():
        # A folder, or a device that must never be replaced by a file.
        raise OSError(errno.EEXIST, "no plain file has this name")
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:40]}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        Path(beside).chmod(_mode(target))
        Path(beside).replace(target)
    except BaseException:
        with suppress(OSError):
            Path(beside).unlink()
        raise


def _mode(target: Path) -> int:
    """Return who may read and write a file: as before, or as new files are made here."""
    if target.exists():
        return target.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return NEW_FILE & ~mask
