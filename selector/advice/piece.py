"""What a piece of the workshop is worth: the advice without it, against the advice with it."""

from selector.advice.advise import Advice
from selector.advice.doing import bar_words, doing_words, surface_words
from selector.errors import Problem, RequirementError
from selector.requirement import Requirement
from selector.requirement.workshop import Workshop
from selector.wording import in_100


def without(asked: Requirement, name: str) -> Requirement:
    """Return a requirement for the workshop without one piece.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    name : str
        A heat source, bath, means of tempering, instrument or check as the file names it, or
        "subcontract".

    Returns
    -------
    Requirement
        The same for a workshop that has not got it.

    Raises
    ------
    RequirementError
        When the workshop has no such piece.
    """
    shop = asked.workshop
    left: dict[str, object] = {
        "heat": tuple(heat for heat in shop.heat if heat.source != name),
        "bath": tuple(bath for bath in shop.bath if bath.medium != name),
        "temper": tuple(means for means in shop.temper if means.means != name),
        "measure": tuple(tool for tool in shop.measure if tool != name),
        "check": tuple(check for check in shop.check if check != name),
        "subcontract": shop.subcontract and name != "subcontract",
    }
    changed = shop.model_copy(update=left)
    if changed == shop:
        step = f"It has {', '.join(pieces(shop))}."
        rule = "a piece that the workshop has"
        raise RequirementError(Problem("--without", rule, repr(name), step))
    return asked.model_copy(update={"workshop": changed})


def pieces(shop: Workshop) -> tuple[str, ...]:
    """Return what a workshop has, by the names of its file."""
    sent = ("subcontract",) if shop.subcontract else ()
    return (
        *(heat.source for heat in shop.heat),
        *(bath.medium for bath in shop.bath),
        *(means.means for means in shop.temper),
        *shop.measure,
        *shop.check,
        *sent,
    )


def worth(whole: Advice, less: Advice, name: str) -> str:
    """Return in a sentence or two what a piece does for a part.

    Parameters
    ----------
    whole, less : Advice
        With the piece, and without it.
    name : str
        The piece.

    Returns
    -------
    str
        What comes first either way, what each costs and how often it comes out right.
    """
    if not whole.options:
        return f"Nothing comes right with {name} either: it changes nothing."
    if not less.options:
        return f"Without {name} nothing is left. With it: {_first(whole)}."
    if whole.options[0].id == less.options[0].id:
        return f"{name} makes no difference here: {_first(whole)} either way."
    return f"With {name}: {_first(whole)}. Without it: {_first(less)}."


def _first(advice: Advice) -> str:
    """Return the first option in a few words, with its cost and chance."""
    first = advice.options[0]
    money = f"{first.judged.value('cost'):.0f} {advice.job.catalog.prices.currency}"
    return (
        f"{bar_words(advice, first)}, {doing_words(advice, first)}; {surface_words(first)}, "
        f"{money}, right {in_100(first.judged.passing_all)}"
    )
