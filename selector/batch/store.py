"""What is done of a batch, in its folder: one file a part, by part, catalogue and program.

A part that has changed has another key and is worked out anew; a file is there whole or not at
all, so a batch that was killed goes on where it stopped.
"""

import os
import re
from pathlib import Path

from pydantic import ValidationError

from selector.batch.record import NO_ANSWER, PartOut
from selector.errors import Problem, RequirementError
from selector.handover.written import write_whole

RESULTS = "results"
OPTION = "--out"
_LONGEST_NAME = 60
_KEYED = re.compile(r"^(?:.*-)?([0-9a-f]{32})\.json$")


class Store:
    """The folder that a batch is written to.

    Parameters
    ----------
    folder : Path
        Made if it is not there.
    source : Path
        The folder or list of the parts, which must be another.

    Raises
    ------
    RequirementError
        When nothing can be written there, or it is the folder of the parts.
    """

    def __init__(self, folder: Path, source: Path) -> None:
        self.folder = folder
        results = folder / RESULTS
        step = "Name a folder that takes files."
        try:
            if source.is_dir() and folder.resolve() == source.resolve():
                rule = "another folder than that of the parts"
                raise RequirementError(
                    Problem(OPTION, rule, repr(str(folder)), "Name another.")
                )
            results.mkdir(parents=True, exist_ok=True)
            if not os.access(results, os.W_OK | os.X_OK):
                raise PermissionError(13, "no permission to write")
            names = sorted(path.name for path in results.iterdir())
        except (OSError, ValueError) as error:
            why = getattr(error, "strerror", None) or str(error)
            got = f"{str(folder)!r} ({why})"
            rule = "a folder that can be written to"
            raise RequirementError(Problem(OPTION, rule, got, step)) from error
        self._names = {m[1]: name for name in names if (m := _KEYED.match(name))}

    def kept(self, key: str) -> PartOut | None:
        """Return what is kept of a part, None where it is not done; a torn file counts as none.

        Parameters
        ----------
        key : str
            Of the part.

        Returns
        -------
        PartOut or None
            An answer.
        """
        name = self._names.get(key)
        if name is None:
            return None
        try:
            part = PartOut.model_validate_json((self.folder / RESULTS / name).read_bytes())
        except (OSError, ValidationError):
            return None
        return part if part.key == key else None

    def keep(self, content: bytes, place: str) -> PartOut:
        """Keep what became of a part, if it is an answer, and return it.

        Parameters
        ----------
        content : bytes
            JSON of a `PartOut`.
        place : str
            Of the part, for the name of its file.

        Returns
        -------
        PartOut
            The same; faults are not kept, and looked at again the next time.
        """
        part = PartOut.model_validate_json(content)
        if part.reason not in NO_ANSWER:
            name = self._names.setdefault(part.key, f"{_plain(place)}-{part.key}.json")
            write_whole(self.folder / RESULTS / name, content, OPTION)
        return part

    def file_of(self, part: PartOut) -> str | None:
        """Return the file of an answer from the folder of the batch, None where it has none."""
        name = self._names.get(part.key)
        return None if name is None or part.reason in NO_ANSWER else f"{RESULTS}/{name}"

    def write(self, name: str, content: bytes) -> Path:
        """Write a file of the summary whole and return where it is.

        Parameters
        ----------
        name : str
            Of the file.
        content : bytes
            What.

        Returns
        -------
        Path
            In the folder of the batch.
        """
        path = self.folder / name
        write_whole(path, content, OPTION)
        return path


def _plain(place: str) -> str:
    """Return the name of a part as any file may be called."""
    plain = re.sub(
        r"[^a-z0-9]+", "-", Path(place).stem.lower() if "." in place else place.lower()
    )
    return plain.strip("-")[:_LONGEST_NAME].strip("-") or "part"
