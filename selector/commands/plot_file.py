"""A plot into a file: what its name must end in, what is said where it cannot be written."""

from pathlib import Path
from typing import TYPE_CHECKING

from selector.errors import Problem, RequirementError

if TYPE_CHECKING:
    from matplotlib.figure import Figure

FORMATS = (".png", ".svg", ".pdf")


def checked_format(path: Path) -> None:
    """Refuse a file that is no PNG, SVG or PDF.

    Parameters
    ----------
    path : Path
        Where the plot is to go.

    Raises
    ------
    RequirementError
        When its name ends otherwise.
    """
    if path.suffix.lower() not in FORMATS:
        rule, step = "a .png, .svg or .pdf file", "Name it for instance plot.svg."
        raise RequirementError(Problem("--plot", rule, repr(str(path)), step))


def save(figure: "Figure", path: Path) -> None:
    """Write a plot to a file.

    Parameters
    ----------
    figure : Figure
        The plot.
    path : Path
        Ends in .png, .svg or .pdf.

    Raises
    ------
    RequirementError
        When the file cannot be written.
    """
    checked_format(path)
    try:
        figure.savefig(path, dpi=150)
    except OSError as error:
        got = f"{str(path)!r} ({error.strerror})"
        step = "Name a file in a folder that exists."
        raise RequirementError(
            Problem("--plot", "a file that can be written", got, step)
        ) from error
