"""The fonts that sheets are set in: free, from packages, so that every machine sets alike."""

from dataclasses import dataclass
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import typst

# Package and the family in it.
FAMILIES = {
    "font_source_sans_pro": "Source Sans Pro",
    "font_source_serif_pro": "Source Serif Pro",
}


@dataclass(frozen=True, slots=True)
class Fonts:
    """Folders of the fonts that are there, and what is said where one is not."""

    folders: tuple[Path, ...]
    remark: str | None = None


def fonts() -> Fonts:
    """Return where the fonts of the sheets lie.

    Returns
    -------
    Fonts
        A family that is not installed is named in the remark; a sheet is then set in the
        letters that the typesetter brings, its lines a little longer.
    """
    folders = {name: _folder(package) for package, name in FAMILIES.items()}
    there = tuple(folder for folder in folders.values() if folder is not None)
    missing = [name for name, folder in folders.items() if folder is None]
    if not missing:
        return Fonts(there)
    packages = ", ".join(k.replace("_", "-") for k, name in FAMILIES.items() if name in missing)
    return Fonts(
        there,
        f"{' and '.join(missing)} not found: the sheet is set in other letters. "
        f"Install {packages}.",
    )


@cache
def read(folders: tuple[Path, ...] = (), *, system: bool = False) -> "typst.Fonts":
    """Return fonts as the typesetter reads them, which takes longer than to set a page.

    Parameters
    ----------
    folders : tuple of Path, optional
        Where they lie, besides those that the typesetter brings.
    system : bool, optional
        Whether those of the machine are read too.

    Returns
    -------
    typst.Fonts
        Read once a process.
    """
    import typst  # noqa: PLC0415 - slow to load

    return typst.Fonts(include_system_fonts=system, font_paths=list(folders))


def _folder(package: str) -> Path | None:
    """Return the folder of a font package, None where it holds no font."""
    spec = find_spec(package)
    if spec is None or spec.origin is None:
        return None
    folder = Path(spec.origin).parent / "files"
    return folder if any(folder.glob("*.ttf")) else None
