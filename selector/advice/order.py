"""Why one option stands before another, by the criteria that set them apart."""

import numpy as np

from selector.advice.advise import Advice
from selector.decision.breaking_gate import snap_words
from selector.decision.option import Option
from selector.decision.output import layer_out
from selector.duty.custom import custom_words
from selector.duty.strength import strength_words
from selector.figure import median
from selector.job.supply import at_hand_words
from selector.option.movement import movement_words
from selector.requirement.priority import CRITERIA, Criterion
from selector.wording import layer_words, shown

# A weighted merit that differs by less is no reason. [-]
_LEAST_LEAD = 0.004
# A chance of success that differs by less is not worth a word. [-]
_LEAST_CHANCE = 0.03


def _value_words(advice: Advice, option: Option, criterion: Criterion) -> str:
    """Return the value of one criterion of an option, in words."""
    value = option.judged.value(criterion)
    off = f"{value:.1f} HRC off the window or its edge" if value > 0.05 else "in the window"
    life = f"{value:.1f} times the wear life wanted"
    words: dict[Criterion, str] = {
        "hardness": off if advice.leading_zone.life_ratio is None else life,
        "strength": strength_words(value),
        "snap_margin": snap_words(value),
        "movement": movement_words(option.judged.prediction.movement),
        "cost": f"{value:.0f} {advice.job.catalog.prices.currency} a good part",
        "operator_sensitivity": f"{value:.0f} HRC for a colour misread by 25 °C",
        "days": f"{value:g} days",
        "custom": custom_words(value),
        "at_hand": at_hand_words(option.treatment),
    }
    return words[criterion]


def _against(advice: Advice, first: Option, second: Option, criterion: Criterion) -> str | None:
    """Return two values of one criterion side by side, None where they read alike."""
    one, other = (_value_words(advice, option, criterion) for option in (first, second))
    return None if one == other else f"{one} against {other}"


def why_before(advice: Advice, first: Option, second: Option) -> str:
    """Return why `first` stands before `second`: up to two gains, and what it gives away."""
    weights = np.array([advice.weights[name] for name in CRITERIA])
    lead = weights * (first.merit.mean(axis=0) - second.merit.mean(axis=0))
    gains = [CRITERIA[k] for k in np.argsort(-lead) if lead[k] > _LEAST_LEAD]
    losses = [CRITERIA[k] for k in np.argsort(lead) if lead[k] < -_LEAST_LEAD][:1]
    better = [text for name in gains if (text := _against(advice, first, second, name))][:2]
    worse = [text for name in losses if (text := _against(advice, first, second, name))]
    text = "; ".join(better) if better else "nothing large sets them apart"
    if gains == ["cost"] and better and not worse:
        text = f"nothing between them but price: {text}"
    if worse:
        text += f". It gives away: {worse[0]}"
    passed = first.judged.passing_all - second.judged.passing_all
    if passed > _LEAST_CHANCE:
        text += f". It comes out right more often ({100 * passed:.0f} more in 100)"
    return text + "."


def reasons(advice: Advice, option: Option) -> tuple[str, ...]:
    """Return why an option stands where it stands: its hardness, best and worst criterion."""
    merit, floor_hrc = option.merit.mean(axis=0), advice.job.leading.floor_hrc
    best, worst = CRITERIA[int(np.argmax(merit))], CRITERIA[int(np.argmin(merit))]
    layer = layer_out(option.judged.prediction.layer)
    wanted = "no hardness asked"
    if floor_hrc is not None:
        wanted = f"asked {shown(floor_hrc)} or more"
    return (
        f"surface {shown(median(option.judged.prediction.surface_hrc))} ({wanted})",
        *((f"layer {layer_words(layer)}",) if layer else ()),
        f"best at: {_value_words(advice, option, best)}",
        f"weakest at: {_value_words(advice, option, worst)}",
    )
