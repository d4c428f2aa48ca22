"""Writing a file whole or not at all, so that nobody reads half of one."""

import os
import tempfile
from contextlib import suppress
from pathlib import Path


def put_in_place(
    target: Path, content: bytes, *, mode: int = 0o600, lasting: bool = True
) -> None:
    """Write beside a file, and replace it once what is written is complete.

    Parameters
    ----------
    target : Path
        Where to, in a folder that is there; what was there before stays until it is replaced.
    content : bytes
        What.
    mode : int, optional
        Who may read and write the new file.
    lasting : bool, optional
        Whether it must be on the disk first, so that no power cut takes both old and new.

    Raises
    ------
    OSError
        When it cannot be written; nothing is left beside the file then.
    """
    handle, beside = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name[:40]}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            if lasting:
                os.fsync(file.fileno())
        Path(beside).chmod(mode)
        Path(beside).replace(target)
    except BaseException:
        with suppress(OSError):
            Path(beside).unlink()
        raise
