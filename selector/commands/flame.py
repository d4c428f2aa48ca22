"""`temperwright flame`: whether flame hardening will do, and where the part goes soft."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.given import AsJson, CatalogFolders
from selector.commands.plotted import check_plot, save_plot
from selector.commands.terminal import console, print_json, refusing_bad_input

if TYPE_CHECKING:
    from selector.flame.answer import FlameAnswer


def flame(
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    steel: Annotated[str | None, typer.Option(help="Only this steel, by any name.")] = None,
    catalog: CatalogFolders = None,
    plot: Annotated[
        Path | None, typer.Option(help="Write the hardness map there: .png, .svg or .pdf.")
    ] = None,
    cautions: Annotated[
        Literal["first", "all"], typer.Option(help="The worst few, or all of them in full.")
    ] = "first",
    as_json: AsJson = False,
) -> None:
    """Say whether local torch hardening will do, with the hardness map.

    Verdict first: yes, yes_if, no, not_needed or coupon_first, and the one change that turns a
    no into a yes. Exit 0 whatever the verdict, 2 when the input is wrong.
    """
    from selector.commands.filter import checked_catalog, known_steel  # noqa: PLC0415
    from selector.commands.progress import bar  # noqa: PLC0415

    with refusing_bad_input():
        from selector.flame.answer import flame_answer  # noqa: PLC0415
        from selector.flame.output import flame_out  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        check_plot(plot)
        asked = read_requirement(part)
        known = checked_catalog(catalog or ())
        known_steel(steel, known)
        with bar() as progress:
            answer = flame_answer(asked, known, steel, progress)
        shown = flame_out(answer)
        if plot is not None:
            _save(answer, plot)
    if as_json:
        plain = shown.model_dump(mode="json")
        print_json(json.dumps(plain, indent=2, ensure_ascii=False, allow_nan=False))
        return
    from selector.commands.flame_page import print_flame  # noqa: PLC0415

    print_flame(shown, answer, console(), every_caution=cautions == "all")


def _save(answer: "FlameAnswer", path: Path) -> None:
    """Write the map of the best family; where nothing is heated, say that there is none."""
    from selector.flame.output import map_of, stretch_of  # noqa: PLC0415
    from selector.flame.plot import figure  # noqa: PLC0415

    best = answer.best
    if best is None or best.option is None:
        typer.echo("No map is written: no hardened part to show.", err=True)
        return
    title = f"{answer.job.asked.part.name}: {best.treatment.label}"
    of = answer.job, best.option
    save_plot(path, lambda: figure(stretch_of(*of), map_of(*of), title))
