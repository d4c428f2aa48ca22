"""An answer worked out before it is asked for, while the visitor still looks at the form.

One at a time for all visitors: another one lets go of it, unless somebody waits for it.
"""

from collections.abc import Callable
from contextlib import suppress
from threading import Event, Lock, Thread
from typing import Generic, TypeVar

T = TypeVar("T")
Progress = Callable[[str, float], None]
# How often one who waits hears how far it is. [s]
_STEP_S = 0.05


class _DroppedError(Exception):
    """Nobody wants the answer any more."""


class _Work(Thread, Generic[T]):
    """One answer on its way, or there."""

    def __init__(self, asked: object, answer: Callable[[Progress], T]) -> None:
        super().__init__(daemon=True)
        self.asked = asked
        self.dropped = Event()
        self.waited_for = False
        self.at = ("Reading the requirement", 0.0)
        self.answer: T | None = None
        self._work_out = answer

    def run(self) -> None:
        """Work out the answer, until it is there, dropped or fails."""
        # A failure is met again, and shown, when the answer is asked for.
        with suppress(Exception):
            self.answer = self._work_out(self._report)

    def _report(self, text: str, fraction: float) -> None:
        """Keep how far it is."""
        self.at = (text, fraction)
        if self.dropped.is_set():
            raise _DroppedError


class Ahead(Generic[T]):
    """Holds the one answer that is worked out ahead."""

    def __init__(self) -> None:
        self._work: _Work[T] | None = None
        self._turning = Lock()

    def begin(self, asked: object, answer: Callable[[Progress], T]) -> None:
        """Begin to work out an answer, if it is not the one at hand.

        Parameters
        ----------
        asked : object
            What it answers, compared by value.
        answer : callable
            Works it out, and reports a sentence and a fraction now and then.
        """
        self.drop_but(asked)
        with self._turning:
            if self._work is None:
                self._work = _Work(asked, answer)
                self._work.start()

    def drop_but(self, asked: object) -> bool:
        """Let go of the answer at hand if it is of anything else and nobody waits for it.

        Parameters
        ----------
        asked : object
            What alone is still wanted.

        Returns
        -------
        bool
            Whether one was let go of.
        """
        with self._turning:
            work = self._work
            if work is None or work.asked == asked or work.waited_for:
                return False
            work.dropped.set()
            self._work = None
            return True

    def take(self, asked: object, progress: Progress) -> T | None:
        """Return the answer at hand, once, when it is there.

        Parameters
        ----------
        asked : object
            What it answers.
        progress : callable
            Hears how far it is; what it raises ends the wait, not the work.

        Returns
        -------
        object
            None where another one is at hand or none, or it could not be worked out.
        """
        with self._turning:
            work = self._work
            if work is None or work.asked != asked or work.waited_for:
                return None
            work.waited_for = True
        try:
            while work.is_alive():
                progress(*work.at)
                work.join(_STEP_S)
        except BaseException:
            work.waited_for = False
            raise
        with self._turning:
            self._work = None
        return work.answer
