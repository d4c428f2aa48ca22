"""A commented file to fill in, for a steel of one's own."""

import re
from pathlib import Path
from typing import get_args

from catalog.load import CatalogError
from catalog.steel import SteelClass
from catalog.text import is_steady

TEMPLATE = Path(__file__).parent / "template.toml"


def write_template(name: str, folder: Path) -> Path:
    """Write the template for a steel into a catalogue folder and return its path.

    Parameters
    ----------
    name : str
        What the bar is called.
    folder : Path
        The user's own catalogue folder; made where it is not there.

    Returns
    -------
    Path
        A file under `steels/`, named after the bar.

    Raises
    ------
    CatalogError
        When the name gives no file name, the file is there already, or the folder takes none.
    """
    slug = re.sub(r"[^0-9a-z.]+", "-", name.casefold()).strip("-.")
    path = folder / "steels" / f"{slug}.toml"
    if not slug or not is_steady(name) or '"' in name or "\\" in name:
        rule = "must be a name with a letter or figure in it, without quotes"
        raise CatalogError((f"--new: {rule} (got {name!r:.80})",))
    text = TEMPLATE.read_text(encoding="utf-8")
    kinds = ", ".join(get_args(SteelClass))
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with path.open("x", encoding="utf-8") as file:
            file.write(text.format(name=name, kinds=f"One of: {kinds}."))
    except OSError as error:
        if isinstance(error, FileExistsError) and path.exists():
            rule = "the file must not be there yet"
            raise CatalogError((f"--new: {rule} (got {path})",)) from error
        rule = "must be a folder that takes files"
        raise CatalogError((f"--into: {rule} (got {folder}: {error.strerror})",)) from error
    return path
