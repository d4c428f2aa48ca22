"""The plot of a command: its name is refused at once, its file written when all is computed."""

from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matplotlib.figure import Figure

OPTION = "--plot"
FORMATS = (".png", ".svg", ".pdf")
_DOTS_PER_INCH = 150


def check_plot(plot: Path | None) -> None:
    """Refuse a plot that is no PNG, SVG or PDF, if one is asked for.

    Parameters
    ----------
    plot : Path or None
        Where to.

    Raises
    ------
    RequirementError
        When its name ends otherwise.
    """
    from selector.errors import Problem, RequirementError  # noqa: PLC0415

    if plot is not None and plot.suffix.lower() not in FORMATS:
        rule, step = "a .png, .svg or .pdf file", "Name it for instance plot.svg."
        raise RequirementError(Problem(OPTION, rule, repr(str(plot)), step))


def save_plot(plot: Path | None, make: Callable[[], "Figure"]) -> None:
    """Write a plot to its file, if one is asked for.

    Parameters
    ----------
    plot : Path or None
        Where to; `check_plot` has let its name pass.
    make : callable
        Returns the figure; not called where none is asked for.

    Raises
    ------
    RequirementError
        When the file cannot be written.
    """
    from selector.handover.written import write_whole  # noqa: PLC0415

    if plot is not None:
        image = BytesIO()
        make().savefig(image, format=plot.suffix[1:].lower(), dpi=_DOTS_PER_INCH)
        write_whole(plot, image.getvalue(), OPTION)
