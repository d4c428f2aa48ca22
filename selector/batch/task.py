"""One part of a batch as it is handed to whoever works it out: bytes, no file, no catalogue."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from selector.batch.overlay import Overlay
from selector.errors import Problem


@dataclass(frozen=True, slots=True)
class Task:
    """One part: its file and the fields of its line that are laid over it.

    `place` is the file or the line of the list, `name` the file that `content` comes from.
    `carried` are columns of the list that are no fields. With `faults` there is no content.
    """

    place: str
    name: str
    content: bytes = b""
    laid: Mapping[str, str] = field(default_factory=dict)
    carried: Mapping[str, str] = field(default_factory=dict)
    faults: tuple[Problem, ...] = ()

    def key(self, program: Mapping[str, str], overlay: Overlay) -> str:
        """Return what stands for part, catalogue and program: another key, another answer.

        Parameters
        ----------
        program : mapping of str to str
            What the answer is worked out by, as `program` says.
        overlay : Overlay
            The user's catalogue files.

        Returns
        -------
        str
            Thirty-two hexadecimal digits.
        """
        as_json = Path(self.name).suffix.lower() == ".json"
        read = hashlib.sha256(self.content).hexdigest()
        part: list[object] = [as_json, read, sorted(self.laid.items())]
        if self.faults:
            part += [self.place, *map(str, self.faults)]
        said = json.dumps([part, sorted(program.items()), overlay.digest])
        return hashlib.sha256(said.encode("utf-8", "surrogatepass")).hexdigest()[:32]


# A part that is done, with the JSON of a `PartOut` that is kept of it.
Done = tuple[Task, bytes]
