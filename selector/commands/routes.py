"""`temperwright routes`: the hardening routes and what each needs."""

from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import console, print_json, print_paragraph, refusing_bad_input


def routes(
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
) -> None:
    """List hardening routes, what each does and needs."""
    with refusing_bad_input():
        from selector.commands.filter import checked_catalog  # noqa: PLC0415

        known = list(checked_catalog(catalog or ()).routes.values())
    if as_json:
        print_json("[" + ",\n".join(r.model_dump_json(exclude_none=True) for r in known) + "]")
        return
    out = console()
    for route in known:
        out.print(f"[bold]{route.slug}[/bold]  {route.name} [dim]({route.place})[/dim]")
        print_paragraph(route.summary, out)
        if route.heat_sources:
            print_paragraph(f"needs one of: {', '.join(route.heat_sources)}", out)
