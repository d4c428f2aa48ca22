"""The shipped catalogue as it was read, kept on disk: to load that takes a third of the time.

It holds as long as every file of its folder stays as it is, and what reads them. Damaged, or
closed to us, it is passed over and the files are read.
"""

import hashlib
import pickle
import sys
from collections.abc import Callable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any

import pydantic

from catalog.user_folder import cache_folder
from catalog.whole_file import put_in_place

_STAMP = hashlib.sha256().digest_size
NOTHING: Any = object()


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
    place = cache_folder()
    if place is None:
        return read()
    path, stamp = place / "catalogue", _stamp(folder)
    parts: Mapping[str, Any] = read_back(path, stamp)
    if parts is NOTHING:
        parts = read()
        write_down(path, stamp, parts)
    return parts


def read_back(path: Path, stamp: bytes = b"") -> Any:  # noqa: ANN401 - whatever was kept
    """Return what a file keeps, or NOTHING where it is not there, damaged or of another stamp.

    Parameters
    ----------
    path : Path
        In a folder that is the user's own: what lies there is run.
    stamp : bytes, optional
        What it was kept for.

    Returns
    -------
    object
        As it was written down.
    """
    try:
        held = path.read_bytes()
        start = len(stamp) + _STAMP
        if held.startswith(stamp) and _sum(held[start:]) == held[len(stamp) : start]:
            return pickle.loads(held[start:])  # noqa: S301
    except Exception:  # noqa: BLE001, S110 - to unpickle a damaged file may raise anything
        pass
    return NOTHING


def write_down(path: Path, stamp: bytes, value: object) -> int:
    """Keep a value in a file; where no folder or disk lets it be kept, it is not.

    Parameters
    ----------
    path : Path
        In a folder that is the user's own.
    stamp : bytes
        What it is kept for.
    value : object
        What can be pickled.

    Returns
    -------
    int
        Bytes written, 0 where it is not kept.
    """
    with suppress(Exception):
        body = pickle.dumps(value, pickle.HIGHEST_PROTOCOL)
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        put_in_place(path, stamp + _sum(body) + body, lasting=False)
        return len(body)
    return 0


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
