"""`temperwright versus`: two options head to head, and where they change places."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.given import AsJson, CatalogFolders
from selector.commands.plotted import check_plot, save_plot
from selector.commands.terminal import console, print_json, print_section, refusing_bad_input

if TYPE_CHECKING:
    from matplotlib.figure import Figure
    from rich.console import Console

    from selector.versus.record import SideOut, VersusOut


def versus(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    first: Annotated[str, typer.Argument(help="Option id, as `advise` prints it.")],
    second: Annotated[str, typer.Argument(help="Another option id.")],
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    plot: Annotated[
        Path | None, typer.Option(help="Plot cost against quantity there: .png, .svg or .pdf.")
    ] = None,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number: relation, inputs, source.")
    ] = False,
) -> None:
    """Set two options against each other: cost, needs, risks, and where they swap."""
    from selector.commands.filter import checked_catalog  # noqa: PLC0415

    with refusing_bad_input():
        from selector.requirement import read_requirement  # noqa: PLC0415
        from selector.versus.versus import versus as compared  # noqa: PLC0415

        check_plot(plot)
        asked, known = read_requirement(part), checked_catalog(catalog or ())
        pair = compared(asked, first, second, known)
        save_plot(plot, lambda: _figure(pair))
    if as_json:
        print_json(pair.model_dump_json(indent=2))
        return
    out = console()
    _print(pair, out)
    if explain:
        from selector.commands.origin import print_origins  # noqa: PLC0415

        print_origins(pair, out)


def _figure(pair: "VersusOut") -> "Figure":
    """Return where two options change places as a plot."""
    from selector.versus.plot import plot_of  # noqa: PLC0415

    return plot_of(pair)


def _rows(side: "SideOut") -> dict[str, str]:
    """Return one side as rows of the table."""
    from selector.wording import (  # noqa: PLC0415
        condition_words,
        right_words,
        shown_mm,
        shown_spread,
        temper_words,
    )

    cost, move = side.cost, side.movement_mm
    rows = {
        "steel": f"{side.spoken}, {condition_words(side.condition)}",
        "route": side.route,
        "temper": temper_words(side.temper),
        "surface": shown_spread(side.surface),
        "core": shown_spread(side.core),
        "depth": f"{side.depth_mm.p50:.1f} mm" if side.depth_mm.p50 is not None else "unknown",
        "bows": f"{shown_mm(move.p50 or 0.0)} (to {shown_mm(move.p95 or 0.0)})",
        "cost": f"{cost.p05:.0f}–{cost.p95:.0f} {cost.unit}",
        "of that": ", ".join(f"{k} {v:.0f}" for k, v in side.items.items() if v >= 0.5),
        "days": f"{side.days:g}",
        "score": f"{side.score:.2f}; {right_words(side.passing_all, side.within_budget)}",
        "needs": "; ".join(side.needs),
        "risks": "; ".join(side.risks) or "none above 1 in 200",
        "cautions": " ".join(side.warned) or "none of its own",
    }
    failures = side.failure_cost
    if failures is not None and failures.p50 is not None:
        money = f"{failures.p50:.0f}" if failures.p50 >= 1 else "under 1"
        rows["failures"] = f"{money} {cost.unit} a part in service, not in the cost"
    return rows


def _print(pair: "VersusOut", out: "Console") -> None:
    """Print the comparison."""
    from rich.markup import escape  # noqa: PLC0415
    from rich.table import Table  # noqa: PLC0415

    out.print(pair.part, style="bold", markup=False)
    out.print(f"{pair.headline}\n", markup=False)
    table = Table(box=None, padding=(0, 2, 0, 0))
    for title in ("", "first", "second"):
        table.add_column(title, overflow="fold")
    left, right = _rows(pair.first), _rows(pair.second)
    for name, text in left.items():
        table.add_row(f"[bold]{name}[/bold]", escape(text), escape(right.get(name, "")))
    out.print(table)
    out.print()
    for by, title in (("cost", "Where the cost swaps"), ("score", "Where the order swaps")):
        print_section(title, [swap.text for swap in pair.swaps if swap.by == by], out)
    if pair.invented_prices:
        out.print("Prices are invented for demonstration.", style="dim")
