"""`temperwright advise`: the main job."""

import json
from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import AsJson, CatalogFolders
from selector.commands.terminal import console, print_json, refusing_bad_input

if TYPE_CHECKING:
    from catalog import Catalog
    from selector.advice.advise import Advice
    from selector.advice.record import AdviceOut, WhyOut
    from selector.requirement import Requirement

TOP = 8
# Asks for a table of every piece that is missing.
ANY = "any"


def advise(  # noqa: PLR0913, PLR0917 - one argument an option of the command
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    top: Annotated[
        int | None, typer.Option(min=1, help="The list of options, so many of them.")
    ] = None,
    show_all: Annotated[
        bool, typer.Option("--all", help="Everything: the page, the list, what is out.")
    ] = False,
    cautions: Annotated[
        Literal["first", "all"], typer.Option(help="The worst few, or all of them in full.")
    ] = "first",
    steel: Annotated[str | None, typer.Option(help="Only this steel, by any name.")] = None,
    route: Annotated[str | None, typer.Option(help="Only this route, by slug or kind.")] = None,
    why: Annotated[
        str | None, typer.Option(help="How this steel or route stands, and what stops it.")
    ] = None,
    without: Annotated[
        str | None,
        typer.Option(help="What this piece of the workshop is worth: advise without it."),
    ] = None,
    having: Annotated[
        str | None,
        typer.Option(
            "--with",
            help="What one more piece would buy: advise with it; any for a table of all.",
        ),
    ] = None,
    weights: Annotated[
        str | None,
        typer.Option(
            help='What matters most: "wear", "hardness > cost", "hardness=40, cost=20", '
            '"hardness/cost=3".'
        ),
    ] = None,
    firm: Annotated[
        bool, typer.Option("--firm", help="How firm the choice is: shares, weights, prices.")
    ] = False,
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
    as_csv: Annotated[bool, typer.Option("--csv", help="The ranked options as CSV.")] = False,
    explain: Annotated[
        bool, typer.Option("--explain", help="Each number: relation, inputs, source.")
    ] = False,
    compare: Annotated[
        bool, typer.Option("--compare", help="Also rank by methods of other families.")
    ] = False,
) -> None:
    """Rank steels and hardening routes for a part, with reasons.

    Exit 0 when advice is given (a referral or a coupon plan included), 1 when no option is
    left, 2 when the input is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    from selector.commands.filter import (  # noqa: PLC0415
        checked_catalog,
        known_route,
        known_steel,
    )

    with refusing_bad_input():
        from selector.advice.output import advice_out  # noqa: PLC0415
        from selector.advice.why import why as why_of  # noqa: PLC0415
        from selector.requirement import read_requirement  # noqa: PLC0415

        asked = _weighed(read_requirement(part), weights)
        known = checked_catalog(catalog or ())
        known_steel(steel, known)
        known_route(route, known)
        advice = _advised(asked, known, (steel, route), (without, having))
        if why is not None:
            _print_why(why_of(advice, why), as_json=as_json)
            return
        _warn(advice)
        count = None if as_json or as_csv else top or TOP
        shown = advice_out(advice, count, compare=compare, changed=True, firmly=True)
        shown = _with_pieces(shown, advice) if having == ANY else shown
    if as_json or as_csv:
        _print_data(shown, as_json=as_json, of_pieces=having == ANY)
    elif firm or having == ANY:
        _print_apart(shown, firm=firm)
    else:
        listed = compare or top is not None
        _print(shown, whole=show_all, listed=listed, every=cautions == "all")
        if explain:
            from selector.commands.origin import print_origins  # noqa: PLC0415

            print_origins(shown, console())
    if shown.verdict == "no_option":
        raise typer.Exit(NO_ANSWER)


def _weighed(asked: "Requirement", weights: str | None) -> "Requirement":
    """Return a requirement with its weights, or with others where they are given."""
    if weights is None:
        return asked
    from selector.requirement.argument import priorities  # noqa: PLC0415

    return asked.model_copy(update={"priorities": priorities("--weights", weights)})


def _advised(
    asked: "Requirement",
    known: "Catalog",
    only: tuple[str | None, str | None],
    piece: tuple[str | None, str | None],
) -> "Advice":
    """Return the advice; without or with a piece, where one is named, and its worth."""
    from selector import advise as run  # noqa: PLC0415
    from selector.advice.missing import having  # noqa: PLC0415
    from selector.advice.piece import without, worth  # noqa: PLC0415
    from selector.commands.progress import bar  # noqa: PLC0415

    (steel, route), (gone, more) = only, piece
    # A fault of either name is said before anything is worked out.
    less = None if gone is None else without(asked, gone)
    extra = None if more in {None, ANY} else having(asked, str(more), known)
    with bar() as progress:
        advice = run(asked, known, steel=steel, route=route, progress=progress)
    for other, name in ((less, gone), (extra, more)):
        if other is not None and name is not None:
            changed = run(other, known, steel=steel, route=route)
            pair = (advice, changed) if other is less else (changed, advice)
            # To the side, as the rest may be data.
            typer.echo(worth(*pair, name) + "\n", err=True)
            advice = changed
    return advice


def _warn(advice: "Advice") -> None:
    """Say to the side that comparisons of criteria contradict each other."""
    from selector.advice.remark import contradictory  # noqa: PLC0415

    said = contradictory(advice)
    if said is not None:
        # To the side, as the rest may be data.
        typer.echo(said + "\n", err=True)


def _with_pieces(shown: "AdviceOut", advice: "Advice") -> "AdviceOut":
    """Return the record with what each missing piece of the workshop would buy."""
    from selector.advice.missing import worths  # noqa: PLC0415

    return shown.model_copy(update={"pieces": worths(advice)})


def _print_data(shown: "AdviceOut", *, as_json: bool, of_pieces: bool) -> None:
    """Print the record as JSON, or its options or pieces as CSV."""
    if as_json:
        print_json(shown.model_dump_json(indent=2))
        return
    from selector.advice.table import option_table, piece_table  # noqa: PLC0415

    table = piece_table(shown) if of_pieces else option_table(shown)
    typer.echo(table.to_csv(index=False), nl=False)


def _print_apart(shown: "AdviceOut", *, firm: bool) -> None:
    """Print how firm the choice is, or what the missing pieces would buy."""
    if firm:
        from selector.commands.firm_page import print_firm  # noqa: PLC0415

        print_firm(shown, console())
    else:
        from selector.commands.piece_page import print_pieces  # noqa: PLC0415

        print_pieces(shown, console())


def _print_why(treatments: "tuple[WhyOut, ...]", *, as_json: bool) -> None:
    """Print how a steel or route stands: a paragraph for each treatment."""
    if as_json:
        print_json(json.dumps([work.model_dump() for work in treatments], indent=2))
        return
    for work in treatments:
        stands = f"number {work.place}" if work.place else f"out by {work.gate}"
        let = f" What lets it in: {work.change.text}" if work.change else ""
        none = "" if work.place or let else " No single change that was tried lets it in."
        said = f"{work.treatment}: {stands}. {work.text}.{let}{none}\n"
        console().print(said, markup=False)
    if not treatments:
        console().print("Nothing of this kind was thought of for this part.")


def _print(shown: "AdviceOut", *, whole: bool, listed: bool, every: bool) -> None:
    """Print everything, or the list of options with what is out, or the one page."""
    from selector.commands.full_page import print_whole  # noqa: PLC0415
    from selector.commands.page import print_advice, print_all  # noqa: PLC0415

    if whole:
        print_all(shown, console())
    elif listed:
        print_whole(shown, console())
    else:
        print_advice(shown, console(), every_caution=every)
