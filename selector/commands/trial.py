"""`temperwright trial`: what to try on coupons before the part."""

from pathlib import Path
from typing import TYPE_CHECKING, Annotated, Literal

import typer

from selector.commands.exit_code import NO_ANSWER
from selector.commands.given import AsJson, CatalogFolders
from selector.commands.help import help_of
from selector.commands.terminal import console, print_json, print_section, refusing_bad_input

if TYPE_CHECKING:
    from catalog import Catalog
    from selector.requirement import Requirement
    from selector.trial.record import TrialOut, TrialPlanOut

trial = typer.Typer(
    name="trial", no_args_is_help=True, help="What to try on coupons before the part."
)


@trial.callback()
def group() -> None:
    """Try on coupons before the part."""


def plan(
    part: Annotated[Path, typer.Argument(help="Requirement file, TOML or JSON.")],
    option: Annotated[
        str | None, typer.Argument(help="Option id, as `advise` prints it; else its first.")
    ] = None,
    new: Annotated[
        Literal["bar", "torch", "bath", "oven"] | None,
        typer.Option(help="What is new; else what is most uncertain is settled."),
    ] = None,
    catalog: CatalogFolders = None,
    as_json: AsJson = False,
) -> None:
    """Plan the smallest trial on coupons that settles what is most uncertain of an option.

    Exit 0 with a plan or a referral, 1 when no option is left, 2 when the input is wrong.

    Raises
    ------
    Exit
        With the code above.
    """
    from selector.commands.filter import checked_catalog  # noqa: PLC0415

    with refusing_bad_input():
        from selector.requirement import read_requirement  # noqa: PLC0415

        asked = read_requirement(part)
        answer = _planned(asked, checked_catalog(catalog or ()), option, new)
    if as_json:
        print_json(answer.model_dump_json(indent=2))
    elif answer.plan is None:
        console().print(answer.text, markup=False)
    else:
        from selector.handover.imperial import in_inches  # noqa: PLC0415

        _print(answer.plan, inches=in_inches(asked.part))
    if answer.verdict == "no_option":
        raise typer.Exit(NO_ANSWER)


trial.command("plan", help=help_of(plan))(plan)


def _planned(
    asked: "Requirement",
    known: "Catalog",
    option: str | None,
    new: Literal["bar", "torch", "bath", "oven"] | None,
) -> "TrialOut":
    """Return the trial of one option or the first, of a bar nobody knows, or a referral."""
    from selector import advise  # noqa: PLC0415
    from selector.advice.headline import headline, referral_words  # noqa: PLC0415
    from selector.trial.plan import plan as plan_of  # noqa: PLC0415
    from selector.trial.record import TrialOut  # noqa: PLC0415
    from selector.trial.unknown_bar import needs_trial, unknown_plan  # noqa: PLC0415

    if asked.safety_critical:
        return TrialOut(verdict="safety_referral", text=referral_words(asked), plan=None)
    if option is not None:
        from selector.job.job import resolved  # noqa: PLC0415
        from selector.versus.option_id import firms_allowed  # noqa: PLC0415
        from selector.versus.side import judged_option  # noqa: PLC0415

        job = resolved(firms_allowed(asked, (option,), known), known)
        made = plan_of(job, judged_option(option, job), new)
        return TrialOut(verdict="trial", text=made.headline, plan=made)
    advice = advise(asked, known)
    unknown = needs_trial(advice.job) and (new == "bar" or not advice.options)
    if not advice.options and not unknown:
        return TrialOut(verdict="no_option", text=headline(advice), plan=None)
    made = unknown_plan(advice.job) if unknown else plan_of(advice.job, advice.options[0], new)
    return TrialOut(verdict="trial", text=made.headline, plan=made)


def _print(plan: "TrialPlanOut", *, inches: bool) -> None:
    """Print a plan, of a part given in inches with those and °F first."""
    from selector.handover.imperial import imperial  # noqa: PLC0415
    from selector.trial.words import worth  # noqa: PLC0415

    out, said = console(), imperial if inches else str
    out.print(plan.part, style="bold", markup=False)
    out.print(f"{said(plan.headline)} {plan.why}", markup=False)
    if plan.option is not None:
        out.print(f"id {plan.option}", markup=False)
    out.print()
    print_section(
        "What to do", [f"{n}. {said(step)}" for n, step in enumerate(plan.steps, 1)], out
    )
    print_section("What it is worth", [said(line) for line in worth(plan)], out)
    print_section("Taken as", plan.assumed, out)
    out.print("Cautions as for the part itself: temperwright advise.", style="dim")
