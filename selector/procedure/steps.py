"""The procedure of an option: its steps in the order of the work, numbered, with cautions."""

from collections.abc import Iterable, Mapping

from catalog.caution import Caution
from selector.job.job import Job
from selector.option.caution import of_option
from selector.option.prediction import Prediction
from selector.option.temper_choice import Choice
from selector.procedure.bar import bar_steps
from selector.procedure.casing import cased_steps
from selector.procedure.checking import checking_steps
from selector.procedure.doing import Doing
from selector.procedure.freezing import frozen_steps
from selector.procedure.heating import heating_steps
from selector.procedure.ordered import ordered_steps
from selector.procedure.other_heat import aged_steps, annealed_steps, normalised_steps
from selector.procedure.quenching import quenching_steps
from selector.procedure.supplied import supplied_steps
from selector.procedure.tempering import tempering_steps
from selector.record import SetUpOut, StepOut

# At which stages a caution of the catalogue's steps is met, the first that a procedure has.
STAGES: Mapping[str, tuple[str, ...]] = {
    "before work": ("bar", "prepare", "order"),
    "heating": ("set-up", "heat", "case", "order"),
    "quenching": ("quench", "heat", "order"),
    "tempering": ("temper", "order", "check"),
    "finishing": ("finish", "check"),
    "in service": ("check", "finish"),
}
# Cautions that belong to another moment than their step's first.
AT_STAGE: Mapping[str, tuple[str, ...]] = {
    "curie-not-target": ("heat",),
    "dim-light": ("heat",),
    "overheated-grain": ("heat",),
    "soak-rule-furnace-only": ("heat",),
    "as-quenched-glass-brittle": ("test", "quench"),
    "straighten-warm": ("check",),
    "deep-cold": ("freeze", "temper"),
    "sharp-notch-quench": ("prepare",),
    "finish-after-heat": ("prepare",),
    "phosgene": ("prepare", "set-up", "case", "heat"),
    "burn-first-aid": ("set-up", "case", "heat"),
    "plated-stock-strip": ("prepare",),
    "cyanide-refused": ("case",),
    "barium-poison": ("case",),
    "fire-extinguisher": ("quench",),
    "gas-cylinders-flashback": ("set-up",),
    "silica-fibre-dust": ("set-up",),
    "electric-furnace": ("set-up", "case", "heat"),
    "carbon-monoxide": ("set-up", "case", "heat"),
    "hot-work-eyes": ("set-up", "case", "heat"),
}


# Words of the step that a caution speaks of, where its stage has several.
AT_WORDS: Mapping[str, str] = {
    "sharp-notch-quench": "every edge",
    "finish-after-heat": "when hard",
}


def procedure(
    job: Job, prediction: Prediction, choice: Choice, set_up: SetUpOut | None
) -> tuple[StepOut, ...]:
    """Return what is done for an option, step by step.

    Parameters
    ----------
    job : Job
        Part and workshop.
    prediction : Prediction
        What was judged: the steps say what was forecast.
    choice : Choice
        Its temper, with the band that serves as well.
    set_up : SetUpOut or None
        How it is heated and quenched; none where nothing is.

    Returns
    -------
    tuple of StepOut
        Numbered from 1, each with the cautions that belong to it.
    """
    steps = _steps(Doing(job, prediction, choice, set_up))
    cautions = placed(steps, of_option(job, prediction), job.catalog.cautions)
    return tuple(
        step.model_copy(update={"number": number, "cautions": cautions.get(number, ())})
        for number, step in enumerate(steps, start=1)
    )


def _steps(do: Doing) -> list[StepOut]:
    """Return the steps of an option by its kind of work."""
    route = do.work.route
    if route.process == "none":
        return supplied_steps(do)
    if route.place == "subcontract":
        return ordered_steps(do)
    other = {
        "case": cased_steps, "age": aged_steps, "anneal": annealed_steps,
        "normalise": normalised_steps,
    }  # fmt: skip
    if route.process in other:
        return other[route.process](do)
    hot = [*heating_steps(do), *quenching_steps(do), *frozen_steps(do)]
    return [*bar_steps(do), *hot, *tempering_steps(do), *checking_steps(do)]


def placed(
    steps: list[StepOut], ids: Iterable[str], known: Mapping[str, Caution]
) -> dict[int, tuple[str, ...]]:
    """Return the cautions of each numbered step: each once, at the moment it is met.

    Parameters
    ----------
    steps : list of StepOut
        The procedure.
    ids : iterable of str
        Cautions of the option.
    known : mapping
        The catalogue's cautions.

    Returns
    -------
    dict of int to tuple of str
        By number, from 1.
    """
    at: dict[int, tuple[str, ...]] = {}
    for key in dict.fromkeys(ids):
        stages = (*AT_STAGE.get(key, ()), *STAGES[known[key].step])
        number = _said(steps, AT_WORDS.get(key)) or _first(steps, stages)
        at[number] = (*at.get(number, ()), key)
    return at


def _said(steps: list[StepOut], words: str | None) -> int | None:
    """Return the number of the first step that has some words in it."""
    if words is None:
        return None
    return next((n for n, step in enumerate(steps, start=1) if words in step.action), None)


def _first(steps: list[StepOut], stages: Iterable[str]) -> int:
    """Return the number of the first step of the first stage there is; else the first step."""
    for stage in stages:
        for number, step in enumerate(steps, start=1):
            if step.stage == stage:
                return number
    return 1
