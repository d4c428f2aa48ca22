"""Why one option stands before another, by the criteria that set them apart."""

from collections.abc import Mapping

import numpy as np

from selector.advice.advise import Advice
from selector.decision.breaking_gate import snap_words
from selector.decision.drawback import Drawback, drawbacks
from selector.decision.hardness_gate import off_window_hrc
from selector.decision.option import Option
from selector.decision.output import layer_out
from selector.decision.preference import before_by_ease, tie_break
from selector.duty.custom import custom_words
from selector.duty.merit import NEVER, SELDOM
from selector.duty.strength import strength_words
from selector.duty.wear import edge_loss_hrc
from selector.figure import median
from selector.job.supply import at_hand_words
from selector.option.movement import movement_words
from selector.requirement.priority import CRITERIA, Criterion
from selector.wording import layer_words, shown

# A weighted merit that differs by less is no reason. [-]
_LEAST_LEAD = 0.004
# A chance of success that differs by less is not worth a word. [-]
_LEAST_CHANCE = 0.03
# What rounds to nothing is not said. [HRC]
_SAID_HRC = 0.5


def _value_words(advice: Advice, option: Option, criterion: Criterion) -> str:
    """Return the value of one criterion of an option, in words."""
    value = option.judged.value(criterion)
    life = f"{value:.1f} times the wear life wanted"
    words: dict[Criterion, str] = {
        "hardness": _window_words(advice, option)
        if advice.leading_zone.life_ratio is None
        else life,
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


def _off_and_edge_hrc(advice: Advice, option: Option) -> tuple[float, float]:
    """Return how far an option is off its window, and what its edge lacks in carbon. [HRC]."""
    lead, normals = advice.job.leading, advice.job.shared()
    off = off_window_hrc(option.treatment, option.judged.prediction.surface_hrc, lead)
    edge = edge_loss_hrc(option.treatment, lead, advice.asked, normals)
    return median(off), median(edge)


def _window_words(advice: Advice, option: Option) -> str:
    """Return how an option stands to its window, and apart from that what its edge lacks."""
    off, edge = _off_and_edge_hrc(advice, option)
    text = _off_words(off)
    return f"{text}, {_edge_words(edge)}" if edge >= _SAID_HRC else text


def _off_words(off_hrc: float) -> str:
    """Return how far from its window an option comes out."""
    return f"{off_hrc:.0f} HRC off the window" if off_hrc >= _SAID_HRC else "in the window"


def _edge_words(edge_hrc: float) -> str:
    """Return what an edge poor in carbon wears like."""
    more = "softer" if edge_hrc > 0 else "harder"
    return f"its edge wears as if {abs(edge_hrc):.0f} HRC {more} for its carbon"


def _nearer_window(advice: Advice, first: Option, other: Option) -> str | None:
    """Return how two options differ by their window and by their edge, each in its own."""
    here, there = (_off_and_edge_hrc(advice, option) for option in (first, other))
    off, edge = (second - one for one, second in zip(here, there, strict=True))
    said = []
    if abs(off) >= _LEAST_HRC:
        side = "further off" if off > 0 else "nearer"
        said.append(f"{abs(off):.0f} HRC {side} the window")
    if abs(edge) >= _LEAST_HRC:
        said.append(_edge_words(edge))
    return " and ".join(said) or None


def _against(advice: Advice, first: Option, second: Option, criterion: Criterion) -> str | None:
    """Return two values of one criterion side by side, None where they read alike."""
    if criterion == "hardness" and advice.leading_zone.life_ratio is None:
        return _window_and_edge(advice, first, second)
    one, other = (_value_words(advice, option, criterion) for option in (first, second))
    return None if one == other else f"{one} against {other}"


def _window_and_edge(advice: Advice, first: Option, second: Option) -> str | None:
    """Return two options compared by their window and by their edge, each by itself."""
    here, there = (_off_and_edge_hrc(advice, option) for option in (first, second))
    (one, other), edge = (_off_words(off) for off, _ in (here, there)), here[1] - there[1]
    said = [f"{one} against {other}"] if one != other else []
    said += [_edge_words(edge)] if abs(edge) >= _SAID_HRC else []
    return " and ".join(said) or None


def why_before(advice: Advice, first: Option, second: Option) -> str:
    """Return why `first` stands before `second`: up to two gains, and what it gives away."""
    weights = np.array([advice.weights[name] for name in CRITERIA])
    lead = weights * (first.merit.mean(axis=0) - second.merit.mean(axis=0))
    gains = [CRITERIA[k] for k in np.argsort(-lead) if lead[k] > _LEAST_LEAD]
    losses = [CRITERIA[k] for k in np.argsort(lead) if lead[k] < -_LEAST_LEAD][:1]
    better = [text for name in gains if (text := _against(advice, first, second, name))][:2]
    worse = [text for name in losses if (text := _against(advice, first, second, name))]
    text = "; ".join(better) if better else "there is little between them"
    if gains == ["cost"] and better and not worse:
        text = f"nothing between them but price: {text}"
    if worse:
        text += f". It gives away: {worse[0]}"
    passed = first.judged.passing_all - second.judged.passing_all
    if passed > _LEAST_CHANCE:
        text += f". It comes out right more often ({100 * passed:.0f} more in 100)"
    return text + "."


# A smaller difference is no reason: currency or days, HRC, mm, times.
_LEAST, _LEAST_HRC = 0.5, 1.5
_IN_HRC = frozenset({"snap_margin", "operator_sensitivity"})
_LEAST_MM, _LEAST_TIMES = 0.01, 0.05
# Nor is a smaller one in custom, where "also" and "seldom" are 0.3 apart. [-]
_LEAST_CUSTOM = 0.15
_LESS_AT_HAND = "its bar less at hand"
_UNHEARD_OF = "nobody makes such a part of it"
_DRAWBACK: Mapping[Drawback, str] = {
    "rusts": "it rusts",
    "rusts fast": "it rusts where something runs on it",
    "spoils the mate": "the dear one of the pair wears",
    "unheard of": _UNHEARD_OF,
    "rare": "hard to get",
    "brittle": "its temper turns it brittle",
}


def why_not_first(advice: Advice, other: Option) -> str:
    """Return why an option does not stand first, and what it has before the first.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    other : Option
        Any but its first.

    Returns
    -------
    str
        Differences that matter with their size, or that there is none.
    """
    first = advice.options[0]
    against = [
        *_level(advice, first, other),
        *_fewer(first, other),
        *set_back_words(advice, first, other),
    ]
    weights = np.array([advice.weights[name] for name in CRITERIA])
    lead = weights * (first.merit.mean(axis=0) - other.merit.mean(axis=0))
    worse = [CRITERIA[k] for k in np.argsort(-lead) if lead[k] > _LEAST_LEAD]
    better = [CRITERIA[k] for k in np.argsort(lead) if lead[k] < -_LEAST_LEAD]
    if any(text.endswith(_LESS_AT_HAND) for text in against):
        worse = [name for name in worse if name != "at_hand"]
    against += [t for name in worse if (t := _difference(advice, first, other, name))]
    against = list(dict.fromkeys(against))
    gains = [t for name in better if (t := _difference(advice, first, other, name))]
    more = 100 * (other.judged.passing_all - first.judged.passing_all)
    if more >= 100 * _LEAST_CHANCE:
        gains.insert(0, f"{more:.0f} more in 100 come out right")
    if not against and not gains:
        return "nothing between them"
    text = "; ".join(against[:2]) or "no single reason: a little less good all round"
    return f"{text}; but {gains[0]}" if gains else text


def _level(advice: Advice, first: Option, other: Option) -> list[str]:
    """Return that two options are level in score, where what is at hand or easy decided."""
    if not before_by_ease(first, other, advice.asked):
        return []
    hand = tie_break(first, advice.asked)[0] < tie_break(other, advice.asked)[0]
    return [f"as good by score, {_LESS_AT_HAND if hand else 'more work'}"]


def _fewer(first: Option, other: Option) -> list[str]:
    """Return by how many in 100 an option comes out right, or inside the budget, less often."""
    said = []
    fewer = 100 * (first.judged.passing_all - other.judged.passing_all)
    if fewer >= 100 * _LEAST_CHANCE:
        said.append(f"{fewer:.0f} fewer in 100 come out right")
    within, beside = first.judged.within_budget, other.judged.within_budget
    if within is not None and beside is not None and within - beside > _LEAST_CHANCE:
        said.append(f"{100 * (within - beside):.0f} fewer in 100 inside the budget")
    return said


def set_back_words(advice: Advice, first: Option, other: Option) -> list[str]:
    """Return what sets an option behind another whatever it scores, and not that one too."""
    own = drawbacks(other, advice.asked) - drawbacks(first, advice.asked)
    return [text for name, text in _DRAWBACK.items() if name in own]


def _usual(here: float, there: float) -> str:
    """Return how usual an option is beside the first."""
    if there > here:
        return "more usual for such parts"
    if there <= NEVER:
        return _UNHEARD_OF
    return custom_words(there) if there <= SELDOM else "less usual for such parts"


def _had(first: Option, other: Option) -> str:
    """Return how the bar of an option is had beside that of the first."""
    easy = other.treatment.condition.availability == "easy"
    missed = first.treatment.stock is not None and easy
    return "not in the rack" if missed else at_hand_words(other.treatment)


def _days(days: float) -> str:
    """Return a wait in words."""
    return "a day" if days == 1 else f"{days:g} days"


def _difference(
    advice: Advice, first: Option, other: Option, criterion: Criterion
) -> str | None:
    """Return how an option differs from the first by one criterion, in the reader's unit."""
    here, there = (option.judged.value(criterion) for option in (first, other))
    more = there - here
    if criterion == "movement":
        move = [median(o.judged.prediction.movement.moved_mm) for o in (first, other)]
        more = move[1] - move[0]
        text = f"bows {abs(more):.2f} mm {'more' if more > 0 else 'less'}"
        return text if abs(more) >= _LEAST_MM else None
    by_life = criterion == "hardness" and advice.leading_zone.life_ratio is not None
    if criterion == "strength" or by_life:
        what = "bears" if criterion == "strength" else "lasts"
        text = f"{what} {there:.1f} against {here:.1f} times what you ask"
        return text if abs(more) >= _LEAST_TIMES else None
    if criterion == "hardness":
        return _nearer_window(advice, first, other)
    if criterion == "custom":
        return _usual(here, there) if abs(more) >= _LEAST_CUSTOM else None
    if criterion == "at_hand":
        return _had(first, other) if more else None
    size = abs(more)
    currency = advice.job.catalog.prices.currency
    words: dict[str, tuple[str, str]] = {
        "snap_margin": (
            f"{size:.0f} HRC further from chipping", f"{size:.0f} HRC nearer to chipping",
        ),
        "cost": (f"{size:.0f} {currency} dearer", f"{size:.0f} {currency} cheaper"),
        "operator_sensitivity": (
            f"a misread colour costs {size:.0f} HRC more",
            f"a misread colour costs {size:.0f} HRC less",
        ),
        "days": (f"{_days(size)} longer", f"{_days(size)} sooner"),
    }  # fmt: skip
    small = size < (_LEAST_HRC if criterion in _IN_HRC else _LEAST)
    named = words.get(criterion)
    return None if small or named is None else named[0 if more > 0 else 1]


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
