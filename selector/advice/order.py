"""Why one option stands before another, out of the criteria that set them apart."""

import numpy as np
from numpy.typing import NDArray

from selector.advice.advise import Advice
from selector.decision.option import Option
from selector.figure import median
from selector.requirement.priority import CRITERIA
from selector.wording import shown

Floats = NDArray[np.float64]


def _value_words(advice: Advice, option: Option, place: int) -> str:
    """Return the value of one criterion of an option, in words."""
    value = median(option.judged.values[:, place])
    name = CRITERIA[place]
    if name == "cost":
        return f"{value:.0f} {advice.job.catalog.prices.currency} a good part"
    words = {
        "hardness": _wear_words(advice, value),
        "strength": f"strength factor {value:.1f}",
        "snap_margin": f"{value:.0f} HRC in hand before it snaps",
        "movement": f"uses {100 * value:.0f} % of the permitted movement",
        "operator_sensitivity": f"{value:.1f} HRC for 25 °C misread",
        "days": f"{value:g} days",
    }
    return words[name]


def _wear_words(advice: Advice, value: float) -> str:
    """Return the first criterion in words: the life over the one wanted, or the window."""
    if advice.job.asked.zone[advice.job.leading.zone].life_ratio is not None:
        return f"{value:.1f} of the wear life wanted"
    return f"{value:.1f} HRC off the window or its edge" if value > 0.05 else "in the window"


def why_before(advice: Advice, first: Option, second: Option) -> str:
    """Return why `first` stands before `second`: up to two gains, and what it pays for them.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    first, second : Option
        Two ranked options.

    Returns
    -------
    str
        One or two sentences.
    """
    weights = np.array([advice.weights[name] for name in CRITERIA])
    lead = weights * (first.merit.mean(axis=0) - second.merit.mean(axis=0))
    gains = [k for k in np.argsort(-lead) if lead[k] > 0.004][:2]
    losses = [k for k in np.argsort(lead) if lead[k] < -0.004][:1]
    parts = [
        f"{_value_words(advice, first, k)} against {_value_words(advice, second, k)}"
        for k in gains
    ]
    text = "; ".join(parts) if parts else "nothing large sets them apart"
    if losses:
        k = losses[0]
        text += (
            f". It gives away: {_value_words(advice, first, k)} "
            f"against {_value_words(advice, second, k)}"
        )
    passed = first.judged.passing_all - second.judged.passing_all
    if passed > 0.03:
        text += f". It comes out right more often ({100 * passed:.0f} more in 100)"
    return text + "."


def reasons(advice: Advice, option: Option) -> tuple[str, ...]:
    """Return why an option stands where it stands: its hardness, best and worst criterion.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    option : Option
        A ranked option.

    Returns
    -------
    tuple of str
        Short sentences.
    """
    merit = option.merit.mean(axis=0)
    prediction = option.judged.prediction
    best = int(np.argmax(merit))
    worst = int(np.argmin(merit))
    lead = advice.job.leading
    wanted = "no hardness asked" if lead.floor_hrc is None else f"asked {shown(lead.floor_hrc)}"
    return (
        f"surface {shown(median(prediction.surface_hrc))} ({wanted} or more)"
        if lead.floor_hrc is not None
        else f"surface {shown(median(prediction.surface_hrc))} ({wanted})",
        f"best at: {_value_words(advice, option, best)}",
        f"weakest at: {_value_words(advice, option, worst)}",
    )
