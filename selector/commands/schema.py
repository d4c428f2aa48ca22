"""`temperwright schema`: the shape of the advice, or of the requirement, as JSON schema."""

import json
from typing import Annotated

import typer


def schema(
    requirement: Annotated[
        bool, typer.Option("--requirement", help="Of the requirement, not the advice.")
    ] = False,
    flame: Annotated[
        bool, typer.Option("--flame", help="Of the flame verdict, not the advice.")
    ] = False,
    temper: Annotated[
        bool, typer.Option("--temper", help="Of what `temper` prints, not the advice.")
    ] = False,
    quench: Annotated[
        bool, typer.Option("--quench", help="Of what `quench` prints, not the advice.")
    ] = False,
    trial: Annotated[
        bool, typer.Option("--trial", help="Of what `trial plan` prints, not the advice.")
    ] = False,
    batch: Annotated[
        bool, typer.Option("--batch", help="Of the summary of `batch`, not the advice.")
    ] = False,
) -> None:
    """Print the JSON schema of what `advise --json` prints, or another command."""
    if temper or quench:
        from selector.specimen.record import QuenchedOut, TemperedOut  # noqa: PLC0415

        shape = (TemperedOut if temper else QuenchedOut).model_json_schema()
    elif trial:
        from selector.trial.record import TrialOut  # noqa: PLC0415

        shape = TrialOut.model_json_schema()
    elif batch:
        from selector.batch.record import BatchOut  # noqa: PLC0415

        shape = BatchOut.model_json_schema()
    elif requirement:
        from selector.requirement import Requirement  # noqa: PLC0415

        shape = Requirement.model_json_schema()
    elif flame:
        from selector.flame.output import schema as flame_schema  # noqa: PLC0415

        shape = flame_schema()
    else:
        from selector.advice.output import schema as advice_schema  # noqa: PLC0415

        shape = advice_schema()
    typer.echo(json.dumps(shape, indent=2))
