"""The user's catalogue folders as bytes, so that another machine reads what this one read."""

import hashlib
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from catalog import Catalog, load_catalog
from catalog.load import FILES

# Where a catalogue folder keeps its files.
_PLACES = ("*.toml", *(f"{kind}/*.toml" for kind in FILES))


@dataclass(frozen=True, slots=True)
class Overlay:
    """Files of the user's folders: number of the folder, path in it, content."""

    files: tuple[tuple[int, str, bytes], ...] = ()
    folders: int = 0

    @property
    def digest(self) -> str:
        """What changes with any of the files."""
        return hashlib.sha256(repr(self.files).encode()).hexdigest()


def overlay_of(folders: Sequence[Path]) -> Overlay:
    """Return the catalogue files of some folders.

    Parameters
    ----------
    folders : sequence of Path
        The user's own, in the order they are laid over the shipped catalogue.

    Returns
    -------
    Overlay
        Empty without folders.
    """
    files = tuple(
        (number, path.relative_to(folder).as_posix(), path.read_bytes())
        for number, folder in enumerate(folders)
        for place in _PLACES
        for path in sorted(folder.glob(place))
    )
    return Overlay(files, len(folders))


@cache
def catalog_of(overlay: Overlay) -> Catalog:
    """Return the shipped catalogue under an overlay, read once a process.

    Parameters
    ----------
    overlay : Overlay
        The user's files, which have passed the audit.

    Returns
    -------
    Catalog
        As `load_catalog` reads it from the folders themselves.
    """
    with tempfile.TemporaryDirectory() as place:
        folders = [Path(place) / str(number) for number in range(overlay.folders)]
        for folder in folders:
            folder.mkdir()
        for number, name, content in overlay.files:
            path = folders[number] / name
            path.parent.mkdir(exist_ok=True)
            path.write_bytes(content)
        return load_catalog(*folders)
