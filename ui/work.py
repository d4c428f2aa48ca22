"""The steps of the work in words and figures, for the bench."""

from collections.abc import Iterable

from selector.record import CautionOut, OptionOut, StepOut
from selector.wording import minutes_words, shown_range
from ui.labels import upper
from ui.piece import e


def dangers(cautions: Iterable[CautionOut], option: OptionOut) -> str:
    """Return what can kill or blind in the work of an option, first."""
    mine = set(option.cautions)
    worst = [c.brief for c in cautions if c.id in mine and c.harm == "kills"]
    lines = "".join(f"<li>{e(text)}</li>" for text in worst)
    return f"<ul class='tw-said tw-harm'>{lines}</ul>" if lines else ""


def beneath(step: StepOut) -> str:
    """Return the figures, the check and the way out of one step.

    Parameters
    ----------
    step : StepOut
        One step.

    Returns
    -------
    str
        HTML.
    """
    figures = [text for text in _figures(step) if text]
    rows = [("", " · ".join(figures)), ("right when", step.check), ("else", step.otherwise)]
    lines = "".join(
        f"<p><span class='tw-grey'>{e(upper(head))}</span> {e(text)}</p>"
        for head, text in rows
        if text
    )
    return f"<div class='tw-step-of-work'>{lines}</div>"


def _figures(step: StepOut) -> Iterable[str | None]:
    """Yield the figures of a step, each with its unit; None for one that it does not have."""
    band = f" ({step.band_c[0]:.0f} to {step.band_c[1]:.0f})" if step.band_c else ""
    times = f" × {step.times}" if step.times and step.times > 1 else ""
    yield step.means
    yield None if step.temperature_c is None else f"{step.temperature_c:.0f} °C{band}"
    yield step.colour
    yield None if step.minutes is None else minutes_words(60 * step.minutes) + times
    yield _measured("within", step.within_s, "s")
    yield _measured("", step.length_mm, "mm")
    yield _measured("", step.volume_l, "l")
    yield None if step.hardness_hrc is None else shown_range(*step.hardness_hrc)


def _measured(before: str, value: float | None, unit: str) -> str | None:
    """Return a figure with its unit."""
    return None if value is None else f"{before} {value:.4g} {unit}".strip()
