"""`temperwright need`: what the part must bear, before any steel is named."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import console, print_json, print_section, refusing_bad_input

if TYPE_CHECKING:
    from selector.need.record import NeedOut
    from selector.record import ZoneOut


def need(
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number: relation, inputs, source.")
    ] = False,
) -> None:
    """Show the hardness and depth each zone needs, and what strength needs, with reasons."""
    from selector.commands.filter import checked_catalog  # noqa: PLC0415

    with refusing_bad_input():
        from selector.need.need import need as need_of  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        needed = need_of(read_requirement(part), checked_catalog(catalog or ()))
    if as_json:
        print_json(needed.model_dump_json(indent=2))
        return
    _print(needed)
    if explain:
        from selector.commands.origin import print_origins  # noqa: PLC0415

        print_origins(needed, console())


def _zone_line(zone: "ZoneOut") -> str:
    """Return what one zone needs as a line."""
    from selector.wording import shown_range  # noqa: PLC0415

    if zone.floor_hrc is None and zone.ceiling_hrc is None:
        return f"zone {zone.zone}: none ({zone.reason})"
    low, high = zone.low_hrc, zone.high_hrc
    window = shown_range(
        low if low is not None else zone.floor_hrc or 0.0,
        high if high is not None else zone.ceiling_hrc or 66.0,
    )
    if zone.floor_hrc is None:
        window = f"not above {window.split(' to ')[-1]}"
    deep = f", {zone.depth_mm:g} mm deep" if zone.depth_mm else ""
    return f"zone {zone.zone}: {window}{deep} ({zone.reason})"


def _print(needed: "NeedOut") -> None:
    """Print the answer."""
    out = console()
    out.print(needed.part, style="bold", markup=False)
    out.print(f"{needed.headline}\n", markup=False)
    lists = (
        ("Hardness and depth", [_zone_line(zone) for zone in needed.zones]),
        ("Strength", [f"section {n.section}: {n.text}" for n in needed.sections]),
        ("Contact", [f"zone {c.zone}: {c.text}" for c in needed.contacts]),
        ("Worth knowing", list(needed.remarks)),
    )
    for title, lines in lists:
        print_section(title, lines, out)
