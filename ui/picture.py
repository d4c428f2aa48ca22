"""The part as a drawing, where one can be made of what is known of it."""

from selector import Requirement
from selector.errors import SelectorError
from selector.flame.record import FlameOut
from selector.record import OptionOut
from selector.requirement import requirement_from
from ui.draft import Draft, tentative


def of_draft(draft: Draft, name: str) -> str:
    """Return the drawing of a part that is still being described, as SVG.

    Parameters
    ----------
    draft : dict
        The form.
    name : str
        Sets its ids apart from those of other drawings on the page.

    Returns
    -------
    str
        Empty where nothing can be drawn yet.
    """
    requirement = so_far(draft)
    return "" if requirement is None else of_part(requirement, name)


def so_far(draft: Draft) -> Requirement | None:
    """Return what a draft asks so far, with what is missing filled in for the eye."""
    try:
        return requirement_from(tentative(draft))
    except SelectorError:
        return None


def of_part(requirement: Requirement, name: str) -> str:
    """Return the drawing of a part as SVG."""
    _ = requirement, name
    return ""


def panel(requirement: Requirement, option: OptionOut) -> None:
    """Show where an option makes the part hard, if a map can be drawn."""
    _ = requirement, option


def torch_panel(requirement: Requirement, found: FlameOut) -> None:
    """Show the part with what the torch does to it along its axis."""
    _ = requirement, found
