"""The plot of a command: its name is refused at once, its file written when all is computed."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matplotlib.figure import Figure


def check_plot(plot: Path | None) -> None:
    """Refuse a plot that is no PNG, SVG or PDF, if one is asked for."""
    if plot is not None:
        from selector.commands.plot_file import checked_format  # noqa: PLC0415

        checked_format(plot)


def save_plot(plot: Path | None, make: Callable[[], "Figure"]) -> None:
    """Write a plot to its file, if one is asked for.

    Parameters
    ----------
    plot : Path or None
        Where to.
    make : callable
        Returns the figure; not called where none is asked for.
    """
    if plot is not None:
        from selector.commands.plot_file import save  # noqa: PLC0415

        save(make(), plot)
