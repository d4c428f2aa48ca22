"""The shipped example requirements: an invented workshop, invented parts."""

from pathlib import Path

FIRST = "starting-handle-dog"
_FOLDER = Path(__file__).parent / "examples"


def example_names() -> tuple[str, ...]:
    """Return the names of the shipped examples, the first one the usual start."""
    names = sorted(path.stem for path in _FOLDER.glob("*.toml"))
    return (FIRST, *(name for name in names if name != FIRST))


def example_text(name: str) -> str:
    """Return a shipped example as text.

    Parameters
    ----------
    name : str
        One of `example_names`.

    Returns
    -------
    str
        TOML.
    """
    return (_FOLDER / f"{name}.toml").read_text(encoding="utf-8")
