"""The shipped catalogue as it was read, kept on disk: to load that takes a third of the time.

It holds as long as every file of its folder stays as it is, and what reads them. Damaged, or
closed to us, it is passed over and the files are read.
"""

import hashlib
import os
import pickle
import sys
import tempfile
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

import pydantic
from platformdirs import user_cache_path

_STAMP = hashlib.sha256().digest_size


def kept(folder: Path, read: Callable[[], Mapping[str, Any]]) -> Mapping[str, Any]:
    """Return what was read from a folder before, or read it and keep that.

    Parameters
    ----------
    folder : Path
        Holds the files and the code that reads them.
    read : callable
        Reads them.

    Returns
    -------
    mapping of str to object
        What `read` returns.
    """
    stamp = _stamp(folder)
    try:
        held = _path().read_bytes()
        if held[:_STAMP] == stamp and _sum(held[2 * _STAMP :]) == held[_STAMP : 2 * _STAMP]:
            # Only this user writes there: see `_path`.
            again: Mapping[str, Any] = pickle.loads(held[2 * _STAMP :])  # noqa: S301
            return again
    except Exception:  # noqa: BLE001, S110 - to unpickle a damaged file may raise anything
        pass
    parts = read()
    with suppress(Exception):  # no folder, disk full, no home: it is read again next time
        body = pickle.dumps(parts, pickle.HIGHEST_PROTOCOL)
        _write(_path(), stamp + _sum(body) + body)
    return parts


def _path() -> Path:
    """Return where it is kept, in a folder that is the user's own."""
    return user_cache_path("temperwright", appauthor=False) / "catalogue"


def _sum(body: bytes) -> bytes:
    """Return the checksum of what is kept."""
    return hashlib.sha256(body).digest()


def _stamp(folder: Path) -> bytes:
    """Return what changes when a file does, or what reads it."""
    files = sorted(p for p in folder.rglob("*") if p.suffix in {".toml", ".py"})
    stamp = hashlib.sha256(f"{sys.version} {pydantic.VERSION} {folder}".encode())
    for path in files:
        stamp.update(f"\0{path.relative_to(folder)}\0".encode())
        stamp.update(path.read_bytes())
    return stamp.digest()


def _write(path: Path, held: bytes) -> None:
    """Write a file whole or not at all, so that no other process finds half of it."""
    path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(dir=path.parent)
    with os.fdopen(handle, "wb") as file:
        file.write(held)
    Path(name).replace(path)
