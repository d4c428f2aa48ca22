"""The folders of the user's own that the program writes to unasked."""

from collections.abc import Callable
from pathlib import Path

import platformdirs

_NAME = "temperwright"


def cache_folder() -> Path | None:
    """Return where what may be thrown away is kept, None on an account without a home."""
    return _own(platformdirs.user_cache_path)


def data_folder() -> Path | None:
    """Return where what the user has made is kept, None on an account without a home."""
    return _own(platformdirs.user_data_path)


def state_folder() -> Path | None:
    """Return where errors are written down, None on an account without a home."""
    return _own(platformdirs.user_state_path)


def _own(folder_of: Callable[..., Path]) -> Path | None:
    """Return the program's own folder of one kind."""
    try:
        return folder_of(_NAME, appauthor=False)
    except RuntimeError:  # as of a service: neither a home nor a setting names a folder
        return None
