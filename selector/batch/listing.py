"""The parts of a batch: the files of a folder, or the lines of a list."""

import csv
import os
import stat
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path
from typing import NoReturn

from catalog.csv_text import csv_lines
from catalog.text import visible
from selector.batch.laid import FILE, carried_columns, faulty_columns
from selector.batch.task import Task
from selector.errors import Problem, RequirementError
from selector.requirement.read import content_of

KINDS = frozenset({".toml", ".json"})
# Lies beside the parts and says who writes to the customer.
NO_PART = frozenset({"workshop.toml"})
_LARGEST = 50_000_000


def listed(source: Path, base: Path | None = None) -> tuple[Task, ...]:
    """Return the parts of a folder or of a list.

    Parameters
    ----------
    source : Path
        A folder, whose `.toml` and `.json` files are one part each, or a CSV file, whose lines
        are.
    base : Path, optional
        The part file under each line that names none.

    Returns
    -------
    tuple of Task
        In the order of their names, or of the list; one that cannot be read carries its faults.

    Raises
    ------
    RequirementError
        When there is no such folder or list, it holds no part, or a column is unknown.
    """
    try:
        is_folder, is_file = source.is_dir(), source.is_file()
    except (OSError, ValueError):  # a name that no file can have
        is_folder = is_file = False
    if is_folder:
        tasks = _of_folder(source)
    elif is_file and source.suffix.lower() in KINDS:
        step = "`temperwright advise` takes one part."
        _refuse("PARTS", "a folder of part files or a list as CSV", _quoted(source), step)
    elif is_file:
        tasks = _of_list(source, base)
    else:
        step = "Name a folder of part files, or a list of them as CSV."
        _refuse("PARTS", "a folder or a CSV file that exists", _quoted(source), step)
    if not tasks:
        step = "`temperwright example` prints a part to start from."
        _refuse("PARTS", "a list of at least one part", f"none in {_quoted(source)}", step)
    return tasks


def _refuse(field: str, rule: str, got: str, step: str) -> NoReturn:
    """Refuse what the command line names."""
    raise RequirementError(Problem(field, rule, got, step))


def _quoted(path: Path) -> str:
    """Return a path for a message."""
    return repr(name_of(str(path)))


def name_of(name: str) -> str:
    """Return a file's name as text: bytes that are no letters are written as escapes."""
    return visible(os.fsencode(name).decode("utf-8", "backslashreplace"))


def _of_folder(folder: Path) -> tuple[Task, ...]:
    """Return the part files of a folder, those of folders within it not."""
    try:
        paths = sorted(folder.iterdir())
    except OSError as error:
        got = f"{_quoted(folder)} ({error.strerror})"
        raise RequirementError(
            Problem("PARTS", "a folder that can be read", got, "Check who may read it.")
        ) from error
    return tuple(
        _read(path, name_of(path.name))
        for path in paths
        if path.suffix.lower() in KINDS and path.name not in NO_PART and not path.is_dir()
    )


def _read(path: Path, place: str) -> Task:
    """Return a part file; one that cannot be read carries its fault."""
    name = name_of(path.name)
    try:
        if _is_special(path):
            _refuse(f"file {name}", "a plain file", "something else", "Check the path.")
        return Task(place, name, content_of(path))
    except RequirementError as error:
        return Task(place, name, faults=error.problems)


def _is_special(path: Path) -> bool:
    """Return whether something is there that is no plain file: a pipe would never end."""
    with suppress(OSError, ValueError):
        return not stat.S_ISREG(path.stat().st_mode)
    return False


def _of_list(source: Path, base: Path | None) -> tuple[Task, ...]:
    """Return the lines of a list, each laid over the part file it names or over the base."""
    heads, rows = _rows(source)
    if FILE not in heads and base is None:
        step = "Add a column file that names part files, or name one for all with --base."
        _refuse(
            f"{name_of(source.name)} line 1", "heads with a column file", _said(heads), step
        )
    faults = faulty_columns(heads, name_of(source.name))
    if faults:
        raise RequirementError(*faults)
    free = carried_columns(heads)
    files: dict[Path, Task] = {}
    if base is not None:
        files[base] = _read(base, name_of(base.name))
        if files[base].faults:
            raise RequirementError(*files[base].faults)
    tasks = []
    for number, row in rows:
        place = f"{name_of(source.name)} line {number}"
        named = row.get(FILE, "")
        path = source.parent / named if named else base
        tasks.append(_line(place, path, row, free, files))
    return tuple(tasks)


def _line(
    place: str,
    path: Path | None,
    row: Mapping[str, str],
    free: tuple[str, ...],
    files: dict[Path, Task],
) -> Task:
    """Return one line of a list; a file that many lines name is read once."""
    carried = {name: visible(row.get(name, "")) for name in free}
    if path is None or "\0" in str(path):
        fault = Problem(f"{place} file", "the name of a part file", "nothing", "Name one.")
        return Task(place, "", carried=carried, faults=(fault,))
    if path not in files:
        files[path] = _read(path, place)
    read = files[path]
    laid = {
        name: cell for name, cell in row.items() if cell and name != FILE and name not in free
    }
    return Task(place, read.name, read.content, laid, carried, read.faults)


def _rows(source: Path) -> tuple[list[str], list[tuple[int, dict[str, str]]]]:
    """Return the heads of a list and its lines with their numbers, blank ones left out."""
    name = name_of(source.name)
    rule, step = "a CSV file in UTF-8, under 50 MB", "Save the list as CSV UTF-8."
    try:
        if source.stat().st_size > _LARGEST:
            _refuse(name, rule, f"{source.stat().st_size} bytes", step)
        lines = csv_lines(source.read_text(encoding="utf-8-sig"))
    except (OSError, UnicodeDecodeError, csv.Error) as error:
        raise RequirementError(Problem(name, rule, str(error), step)) from error
    if not lines:
        return [FILE], []
    # The path of a field is written as the schema has it: an analysis has C and Cr.
    heads = [head if "." in head else head.casefold() for head in lines[0][1]]
    twice = sorted({head for head in heads if head and heads.count(head) > 1})
    if twice:
        _refuse(f"{name} line 1", "heads of which each stands once", _said(twice), "Drop one.")
    for number, cells in lines[1:]:
        if len(cells) > len(heads) and any(cells[len(heads) :]):
            rule = f"at most {len(heads)} cells, as many as heads"
            step = "Put a cell with a comma in quotes."
            _refuse(f"{name} line {number}", rule, f"{len(cells)}", step)
    return heads, [
        (number, {h: c for h, c in zip(heads, cells, strict=False) if h})
        for number, cells in lines[1:]
    ]


def _said(heads: list[str]) -> str:
    """Return heads for a message, short enough for one line."""
    text = ", ".join(head for head in heads if head) or "nothing"
    return visible(text if len(text) <= 60 else text[:57] + "...")
