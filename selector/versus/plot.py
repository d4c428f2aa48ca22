"""One plot of two options: cost of a good part against quantity, and where they swap."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from matplotlib.figure import Figure

    from selector.versus.record import VersusOut


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
