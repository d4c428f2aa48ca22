"""One plot of two options: cost of a good part against quantity, and where they swap."""

from pathlib import Path
from typing import TYPE_CHECKING

from selector.errors import Problem, RequirementError

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from selector.versus.record import VersusOut

FORMATS = (".png", ".svg")


def checked_format(path: Path) -> None:
    """Refuse a file that is neither PNG nor SVG.

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
        step = "Name it for instance cost.svg."
        raise RequirementError(
            Problem("--plot", "a file that ends in .png or .svg", repr(str(path)), step)
        )


def plot_of(versus: "VersusOut") -> "Figure":
    """Return both costs with their 90 % bands over the quantity, the swap marked."""
    from matplotlib.figure import Figure  # noqa: PLC0415 - slow to load
    from matplotlib.ticker import FuncFormatter  # noqa: PLC0415

    figure = Figure(figsize=(8, 5), layout="constrained")
    axes = figure.subplots()
    for side, costs, mark, colour in (
        (versus.first, versus.first_cost, "o-", "#1f5f99"),
        (versus.second, versus.second_cost, "s--", "#b3541e"),
    ):
        low, middle, high = ([getattr(c, end) for c in costs] for end in ("p05", "p50", "p95"))
        axes.plot(versus.quantity, middle, mark, color=colour, label=side.id)
        axes.fill_between(versus.quantity, low, high, color=colour, alpha=0.15)
    for swap in versus.swaps:
        if swap.axis == "quantity" and swap.by == "cost" and swap.at is not None:
            axes.axvline(swap.at, color="0.3", linestyle=":")
            axes.annotate(f" swap at {swap.at:.0f}", (swap.at, axes.get_ylim()[1]), va="top")
    axes.set(xscale="log", yscale="log", xlabel="quantity, pieces")
    note = ", prices invented" if versus.invented_prices else ""
    # What a user names may hold a dollar sign, which is no formula.
    axes.set_ylabel(f"cost of a good part, {versus.currency}{note}", parse_math=False)
    axes.set_title(versus.part, parse_math=False)
    for axis in (axes.xaxis, axes.yaxis):
        axis.set_major_formatter(FuncFormatter(lambda x, _place: f"{x:g}"))
        axis.set_minor_formatter(FuncFormatter(_minor))
    for text in axes.legend().get_texts():
        text.set_parse_math(False)
    axes.grid(visible=True, which="both", alpha=0.25)
    return figure


def _minor(value: float, _place: int) -> str:
    """Return the label of a tick between powers of ten: only twos and fives."""
    leading = f"{value:e}"[0]
    return f"{value:g}" if leading in "25" else ""


def save_plot(versus: "VersusOut", path: Path) -> None:
    """Write the plot to a file.

    Parameters
    ----------
    versus : VersusOut
        The comparison.
    path : Path
        Ends in .png or .svg.

    Raises
    ------
    RequirementError
        When the file cannot be written.
    """
    try:
        plot_of(versus).savefig(path, dpi=150)
    except OSError as error:
        got = f"{str(path)!r} ({error.strerror})"
        step = "Name a file in a folder that exists."
        raise RequirementError(
            Problem("--plot", "a file that can be written", got, step)
        ) from error
