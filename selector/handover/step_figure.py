"""The figures of a step as they stand in their own column: large, and what goes with it."""

from selector.record import StepOut
from selector.wording import shown_range, shown_time


def figure_of(step: StepOut, elsewhere: str = "") -> tuple[str, str]:
    """Return the chief figure of a step with its unit, and the others in small.

    Parameters
    ----------
    step : StepOut
        One step of a procedure.
    elsewhere : str
        What is said beside it; of the others none of that is said again.

    Returns
    -------
    tuple of str
        For instance "860 °C" and "820 to 860 °C, cherry".
    """
    said = [*_degrees(step), *_times(step), *_amounts(step)]
    if step.stage == "order" and step.hardness_hrc is not None:
        # What is ordered is a hardness; how the firm gets there is its own affair.
        said = [*_amounts(step), *_degrees(step)]
    if step.stage == "quench" and step.within_s is not None:
        first = f"in {step.within_s:g} s"
        said = [first, *(text for text in said if text != first)]
    if step.stage == "quench" and step.within_s is None and step.length_mm is not None:
        # A dip: how long, and how much of the end.
        said = [*_times(step), *_amounts(step), *_degrees(step)]
    if is_hold(step):
        # How long is what counts, at the heat that is there already.
        said = [*_times(step), *_degrees(step), *_amounts(step)]
    if not said:
        return "", ""
    others = [text for text in said[1:] if text not in elsewhere]
    return said[0], ", ".join(others)


def is_hold(step: StepOut) -> bool:
    """Return whether a step is a wait at the heat that the step before it reached."""
    return step.stage == "heat" and step.means == "clock"


def band_words(band_c: tuple[float, float]) -> str:
    """Return a band of heat in words: "820 to 860 °C serves"."""
    return f"{band_c[0]:.0f} to {band_c[1]:.0f} °C serves"


def _degrees(step: StepOut) -> list[str]:
    """Return a heat, the band that serves, and how it looks."""
    if step.temperature_c is None:
        return []
    # Set up is what is to come, not what is there.
    said = [f"{'for ' if step.stage == 'set-up' else ''}{step.temperature_c:.0f} °C"]
    if step.band_c is not None and round(step.band_c[0]) < round(step.band_c[1]):
        said.append(band_words(step.band_c))
    if step.colour:
        said.append(step.colour)
    return said


def _times(step: StepOut) -> list[str]:
    """Return how long, how often and how soon; of a heat-up only the action says how long."""
    said = []
    if step.minutes is not None and not (step.stage == "heat" and step.band_c is not None):
        each = shown_time(60.0 * step.minutes)
        said.append(f"{step.times} × {each}" if (step.times or 1) > 1 else each)
    if step.within_s is not None:
        said.append(f"in {step.within_s:g} s")
    return said


def _amounts(step: StepOut) -> list[str]:
    """Return a hardness, a length and a volume."""
    said = []
    if step.hardness_hrc is not None:
        said.append(shown_range(*step.hardness_hrc))
    if step.length_mm is not None:
        over = "over " if step.stage == "heat" else ""
        fine = 2 if step.length_mm >= 0.1 else 3
        said.append(f"{over}{round(step.length_mm, fine):g} mm")
    if step.volume_l is not None:
        said.append(f"{step.volume_l:.3g} l")
    return said
