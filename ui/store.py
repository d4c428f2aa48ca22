"""What is kept in the user's folder: his parts, each by the id in its address, and workshops.

A folder that cannot be written keeps nothing beyond the run; the page goes on without it.
"""

import errno
import json
import os
import re
from datetime import datetime
from pathlib import Path
from secrets import token_hex
from typing import Any

from catalog.user_folder import data_folder
from catalog.whole_file import put_in_place

Table = dict[str, Any]
_ID = re.compile(r"[0-9a-f]{12}")
_MOST_PARTS = 200
# What could not be written, by file name; lost when the page stops.
_unwritten: dict[str, str] = {}


def new_id() -> str:
    """Return an id that no other part has."""
    return token_hex(6)


def is_id(text: str) -> bool:
    """Return whether a text of an address can be the id of a part."""
    return _ID.fullmatch(text) is not None


def part(key: str) -> Table | None:
    """Return what is kept of a part; None where nothing is, or nothing that can be read.

    Parameters
    ----------
    key : str
        Its id.

    Returns
    -------
    dict or None
        As it was kept.
    """
    return _read(f"part-{key}.json") if is_id(key) else None


def keep_part(key: str, kept: Table) -> None:
    """Keep a part.

    Parameters
    ----------
    key : str
        Its id.
    kept : dict
        Plain data.
    """
    _write(f"part-{key}.json", kept)


def changed_at(key: str) -> datetime | None:
    """Return when a part was changed last; None where it stands in no file."""
    try:
        seconds = (_folder() / f"part-{key}.json").stat().st_mtime
    except OSError:
        return None
    return datetime.fromtimestamp(seconds).astimezone()


def latest_parts(count: int) -> list[tuple[str, Table]]:
    """Return the parts that were changed last, newest first; the oldest of too many go.

    Parameters
    ----------
    count : int
        How many at most.

    Returns
    -------
    list
        Of each its id and what is kept.
    """
    try:
        files = sorted(_folder().glob("part-*.json"), key=lambda file: -file.stat().st_mtime)
        for old in files[_MOST_PARTS:]:
            old.unlink(missing_ok=True)
    except OSError:
        return []
    keys = [file.stem.removeprefix("part-") for file in files[: 2 * count]]
    found = ((key, part(key)) for key in keys)
    return [(key, kept) for key, kept in found if kept is not None][:count]


def workshops() -> dict[str, Table]:
    """Return the workshops by name, the one used last first."""
    kept = _read("workshops.json") or {}
    return {name: table for name, table in kept.items() if isinstance(table, dict)}


def keep_workshop(name: str, table: Table) -> None:
    """Keep a workshop under its name, as the one used last.

    Parameters
    ----------
    name : str
        What the user calls it.
    table : dict
        Plain data, in the shape of a requirement file.
    """
    others = {other: kept for other, kept in workshops().items() if other != name}
    _write("workshops.json", {name: table, **others})


def forget_workshop(name: str) -> None:
    """Forget the workshop of a name."""
    _write("workshops.json", {k: kept for k, kept in workshops().items() if k != name})


def letterhead(shop: str) -> Table:
    """Return the letterhead of a workshop; that of no workshop by name where it has none."""
    kept = _read("letterheads.json") or {}
    found = kept.get(shop, kept.get("", {}))
    return found if isinstance(found, dict) else {}


def keep_letterhead(shop: str, table: Table) -> None:
    """Keep the letterhead of a workshop.

    Parameters
    ----------
    shop : str
        Its name; empty where it has none.
    table : dict
        Plain data, by field.
    """
    _write("letterheads.json", {**(_read("letterheads.json") or {}), shop: table})


def _folder() -> Path:
    """Return the user's folder; without a home there is none to read or write."""
    folder = data_folder()
    if folder is None:
        raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT))
    return folder


def _read(name: str) -> Table | None:
    """Return the table in a file, None where there is none or it is damaged."""
    try:
        text = _unwritten.get(name) or (_folder() / name).read_text(encoding="utf-8")
        table = json.loads(text)
    except (OSError, ValueError, RecursionError):
        return None
    return table if isinstance(table, dict) else None


def _write(name: str, table: Table) -> None:
    """Write a file whole or not at all."""
    text = json.dumps(table, default=str)
    try:
        folder = _folder()
        folder.mkdir(parents=True, exist_ok=True)
        put_in_place(folder / name, text.encode())
    except OSError:
        _unwritten[name] = text
    else:
        _unwritten.pop(name, None)
