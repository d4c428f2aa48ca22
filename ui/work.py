"""The steps of the work in words and figures, for the bench."""

from collections.abc import Iterable

from selector.handover.step_figure import figure_of
from selector.record import CautionOut, OptionOut, StepOut
from ui.labels import upper
from ui.piece import e


def dangers(cautions: Iterable[CautionOut], option: OptionOut) -> str:
    """Return what can kill or blind in the work of an option, in a box of its own."""
    mine = set(option.cautions)
    worst = [c.brief for c in cautions if c.id in mine and c.harm == "kills"]
    lines = "".join(f"<li>{e(text)}</li>" for text in worst)
    box = f"<h2>Can kill or blind</h2><ul class='tw-said tw-harm'>{lines}</ul>"
    return f"<div class='tw-kill'>{box}</div>" if lines else ""


def beneath(step: StepOut) -> str:
    """Return the chief figure of one step, large, beside its means, check and way out.

    Parameters
    ----------
    step : StepOut
        One step.

    Returns
    -------
    str
        HTML.
    """
    rows = [
        ("", upper(step.means or "")), ("Right when", step.check), ("Else", step.otherwise)
    ]  # fmt: skip
    lines = "".join(
        f"<p><span class='tw-grey'>{head}</span> {e(text)}</p>" for head, text in rows if text
    )
    figure, others = figure_of(step, elsewhere=f"{step.action} {step.means or ''}")
    foot = f"<p class='tw-foot'>{e(others)}</p>" if others else ""
    return (
        f"<div class='tw-step-of-work'><div><div class='tw-do'>{e(figure)}</div>{foot}</div>"
        f"<div>{lines}</div></div>"
    )
