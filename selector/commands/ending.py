"""How a run ends that does not go as meant, with an exit code of its own.

0 to 2 are answers and bad input. Here are a fault of ours, which leaves its traceback in a file
and not on the terminal, and an output that takes no more: a full disk, a reader that has gone.
"""

import codecs
import errno
import os
import sys
import traceback
import unicodedata
from collections.abc import Callable
from contextlib import suppress
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, NoReturn, TextIO, cast

import typer

from selector.commands.exit_code import CLOSED, UNFORESEEN, UNWRITTEN

LOG = "errors.log"
# What the trade writes and a plain stream cannot hold.
_PLAIN = {
    "–": "-", "—": "-", "−": "-", "·": ".", "×": "x", "±": "+/-", "°": "deg ", "Ø": "dia ",
    "≤": "<=", "≥": ">=", "→": "->", "’": "'", "“": '"', "”": '"',
}  # fmt: skip


class OutputError(Exception):
    """An output takes nothing more.

    Parameters
    ----------
    stream : TextIO
        Which.
    why : OSError
        What the system says.
    """

    def __init__(self, stream: TextIO, why: OSError) -> None:
        self.stream, self.why = stream, why
        super().__init__(why.strerror)


class Output:
    """A stream whose failures are kept apart from all other errors of the system.

    Parameters
    ----------
    stream : TextIO
        What is written to.
    """

    buffer = None  # bytes would pass by the guard

    def __init__(self, stream: TextIO) -> None:
        self._stream = stream

    def write(self, text: str) -> int:
        """Write a text and return its length."""
        try:
            return self._stream.write(text)
        except OSError as error:
            raise OutputError(self._stream, error) from error

    def flush(self) -> None:
        """Write what is held back."""
        try:
            self._stream.flush()
        except OSError as error:
            raise OutputError(self._stream, error) from error

    def __getattr__(self, name: str) -> Any:  # noqa: ANN401 - whatever the stream has
        return getattr(self._stream, name)


def _in_plain_letters(error: UnicodeError) -> tuple[str, int]:
    """Return ASCII for letters that a stream cannot hold, and where to go on after them."""
    if not isinstance(error, UnicodeEncodeError):
        raise error
    text = "".join(
        _PLAIN.get(letter)
        or unicodedata.normalize("NFKD", letter).encode("ascii", "ignore").decode()
        or "?"
        for letter in error.object[error.start : error.end]
    )
    return text, error.end


codecs.register_error("plain", _in_plain_letters)


def run(command: Callable[[], object]) -> NoReturn:
    """Run the command line to its end, and leave with its exit code or one of those above.

    Parameters
    ----------
    command : callable
        The command line, which ends by SystemExit.
    """
    if sys.stdout is None:
        _say("The output is closed: nothing can be printed.")
        sys.exit(UNWRITTEN)
    if hasattr(sys.stdout, "reconfigure"):
        sys.stdout.reconfigure(errors="plain")
    sys.stdout = cast("TextIO", Output(sys.stdout))
    if sys.stderr is not None:
        sys.stderr = cast("TextIO", Output(sys.stderr))
    try:
        code = _code(command)
        sys.stdout.flush()
    except OutputError as error:
        code = _unwritten(error)
    sys.exit(code)


def _code(command: Callable[[], object]) -> int:
    """Return the exit code of a command line, that of a fault of ours included."""
    try:
        command()
    except OutputError:
        raise
    except SystemExit as ended:
        # No command reads a terminal, so an end of input is no wish of the user's.
        if isinstance(ended.__context__, typer.Abort):
            return _unforeseen(ended.__context__.__cause__ or ended.__context__)
        return ended.code if isinstance(ended.code, int) else int(ended.code is not None)
    except Exception as error:  # noqa: BLE001 - whatever nobody foresaw
        return _unforeseen(error)
    return 0


def _unwritten(error: OutputError) -> int:
    """Return the exit code of an output that fails; a reader who has gone gets no message."""
    with suppress(OSError, ValueError):
        # What is held back would fail once more when Python ends.
        os.dup2(os.open(os.devnull, os.O_WRONLY), error.stream.fileno())
    if isinstance(error.why, BrokenPipeError):
        return CLOSED
    _say(f"The output cannot be written: {error.why.strerror}.")
    return UNWRITTEN


def _unforeseen(error: BaseException) -> int:
    """Leave the traceback in a file, say so in two lines and return the exit code."""
    from catalog.text import visible  # noqa: PLC0415

    what = " ".join(f"{type(error).__name__}: {error}".split())[:300]
    trace = "".join(traceback.format_exception(error))
    entry = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S} {sys.argv[1:]}\n{trace}\n"
    try:
        details = f"The details for whoever mends it are in {_logged(visible(entry))}."
    except OSError as refused:
        frame = traceback.extract_tb(error.__traceback__)[-1]
        details = (
            f"It arose at {frame.filename}:{frame.lineno}; the rest could not be written to "
            f"{refused.filename or 'a file'} ({refused.strerror})."
        )
    _say(visible(f"An error of temperwright's own ends this run without an answer: {what}"))
    _say(visible(details))
    return UNFORESEEN


def _logged(entry: str) -> Path:
    """Add an entry to the file of errors and return where that is."""
    from catalog.user_folder import state_folder  # noqa: PLC0415

    folder = state_folder()
    if folder is None:
        raise OSError(errno.ENOENT, "this account has no home")
    folder.mkdir(parents=True, exist_ok=True)
    with (folder / LOG).open("a", encoding="utf-8", errors="backslashreplace") as log:
        log.write(entry)
    return folder / LOG


def _say(line: str) -> None:
    """Print a line on stderr, if it takes one."""
    with suppress(OutputError, OSError):
        typer.echo(line, err=True)
