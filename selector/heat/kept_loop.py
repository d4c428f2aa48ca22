"""The compiled loop on disk: which sources it holds for, and that a damaged file ends no run.

The compiler's own cache, changed in three ways. It holds as long as every file of this room
stays as it is, because the loop is compiled from several and the compiler looks at one only.
What it keeps carries a checksum: a torn file is thrown away and made anew. Where nothing can be
kept the loop is compiled for the one run, in no shared folder: loading from there would run
what others put into it.
"""

import hashlib
import pickle
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path
from typing import Any

from numba.core.caching import CompileResultCacheImpl, FunctionCache, IndexDataCacheFile
from numba.core.serialize import dumps


def _stamp() -> bytes:
    """Return what changes when any source of this room does."""
    texts = (path.read_bytes() for path in sorted(Path(__file__).parent.glob("*.py")))
    return hashlib.sha256(b"\0".join(texts)).digest()


class _Checked(CompileResultCacheImpl):
    """Compiled code as bytes with their checksum."""

    def reduce(self, data: Any) -> tuple[bytes, bytes]:  # noqa: ANN401 - the compiler's own
        code = dumps(super().reduce(data))
        return hashlib.sha256(code).digest(), code

    def rebuild(self, target_context: Any, reduced: tuple[bytes, bytes]) -> Any:  # noqa: ANN401
        checksum, code = reduced
        if hashlib.sha256(code).digest() != checksum:
            msg = "the compiled loop is damaged"
            raise ValueError(msg)
        # Only this user writes there: see the folders the compiler looks for.
        return super().rebuild(target_context, pickle.loads(code))  # noqa: S301


class KeptLoop(FunctionCache):
    """The cache of one compiled function.

    Parameters
    ----------
    function : callable
        As it is written, not compiled.
    """

    _impl_class = _Checked

    def __init__(self, function: Callable[..., object]) -> None:
        super().__init__(function)
        self._cache_file = IndexDataCacheFile(
            self._cache_path, self._impl.filename_base, _stamp()
        )

    def holds(self) -> bool:
        """Return whether code compiled from these sources is there."""
        try:
            return bool(self._cache_file._load_index())  # noqa: SLF001 - no public view
        except Exception:  # noqa: BLE001 - as below
            return False

    def load_overload(self, sig: Any, target_context: Any) -> Any:  # noqa: ANN401
        """Return the compiled code, None where there is none or what is there is damaged."""
        try:
            return super().load_overload(sig, target_context)
        except Exception:  # noqa: BLE001 - to unpickle a damaged file may raise anything
            with suppress(OSError):
                self.flush()
            return None

    def save_overload(self, sig: Any, data: Any) -> None:  # noqa: ANN401
        """Keep the compiled code, unless the disk is full or closed to us."""
        with suppress(OSError):
            super().save_overload(sig, data)


def keep(dispatcher: Any) -> KeptLoop | None:  # noqa: ANN401 - the compiler's own
    """Let a compiled function be kept on disk, where there is a folder for it.

    Parameters
    ----------
    dispatcher : callable
        The compiled function; as it is written where compiling is switched off. [-]

    Returns
    -------
    KeptLoop or None
        Where it is kept; None where it is compiled for each run, or not at all. [-]

    References
    ----------
    .. [1] Bookkeeping, no model.
    """
    function = getattr(dispatcher, "py_func", None)
    if function is None:
        return None
    try:
        kept = KeptLoop(function)
    except (RuntimeError, OSError):
        # No folder that we may write: the installation is read-only and nobody has a home.
        return None
    dispatcher._cache = kept  # noqa: SLF001 - the compiler offers no other interface
    return kept
