"""What the proposed way costs and buys beside the cheapest, in sentences."""

from collections.abc import Mapping, Sequence

from selector.advice.record import AdviceOut
from selector.handover.letter.record import Way
from selector.handover.letter.said import goes_wrong, one_in
from selector.handover.letter.ways import (
    OTHERS,
    SAME_CHANCE,
    SAME_MONEY,
    hrc_words,
    money,
    price,
)
from selector.record import OptionOut
from selector.wording import in_sentence, times_in_100

# What a way that is dearer may be better at, in words; price and chance stand by themselves.
_BECAUSE = {
    "hardness": "its hardness suits the work better",
    "strength": "it has more strength in hand",
    "snap_margin": "it is further from snapping",
    "movement": "it moves less in the heat",
    "operator_sensitivity": "it forgives more at the fire",
    "days": "it is ready sooner",
    "custom": "it is what the trade takes for such a part",
    "at_hand": "its bar is at hand",
}
# A smaller share of the whole score is no reason. [-]
SAME_GAIN = 0.005
# A smaller difference in hardness is none to a reader. [HRC]
SAME_HRC = 1.5


def difference(seen: Sequence[Way], advice: AdviceOut, *, life: bool) -> tuple[str, ...]:
    """Return what the proposed way costs and buys beside the cheapest, in sentences.

    Parameters
    ----------
    seen : sequence of Way
        The proposed one first.
    advice : AdviceOut
        Whose options they are.
    life : bool
        Whether a life was asked for, and so is reckoned.

    Returns
    -------
    tuple of str
        What matters most first; no claim that no figure carries.
    """
    first, others = seen[0].option, [way.option for way in seen[1:]]
    said = []
    if not others:
        return (f"No other way is open.{_barred(advice)}", *_in_use(first))
    cheapest = min(others, key=price)
    if price(cheapest) <= price(first) - SAME_MONEY:
        said.append(f"It costs {money(first)} against {money(cheapest)} for the cheapest.")
        said += _bought(first, cheapest, {row.criterion: row.weight for row in advice.ranges})
    else:
        said.append(f"No other way we looked at costs less than its {money(first)}.")
        said.append(_chance(first))
    if life:
        said.append(_life(first, cheapest))
    if advice.toss_up and advice.options and first.id == advice.options[0].id:
        said.append("The two ways that stand first are level within what we can tell.")
    if len(others) < OTHERS and advice.barred:
        said.append(_barred(advice).strip())
    return (*said, *_in_use(first))


def _barred(advice: AdviceOut) -> str:
    """Return which ways are not open; why is said in the advice, in words of the bench."""
    kinds = [in_sentence(line.split(": ", maxsplit=1)[0]) for line in advice.barred]
    return f" Not open here: {'; '.join(kinds)}." if kinds else ""


def _chance(option: OptionOut) -> str:
    """Return how often it goes wrong, in words and in 100."""
    wrong = 1.0 - option.passing_all
    return f"It comes out right {times_in_100(option.passing_all)} and {goes_wrong(wrong)}."


def _bought(first: OptionOut, cheapest: OptionOut, weights: Mapping[str, float]) -> list[str]:
    """Return what the difference to the cheapest way buys."""
    here, there = first.passing_all, cheapest.passing_all
    if here - there >= SAME_CHANCE:
        instead = f"{times_in_100(here)} instead of {times_in_100(there)}"
        wrong, other = goes_wrong(1.0 - here), goes_wrong(1.0 - there)
        return [
            f"For that it comes out right {instead}.",
            f"This one {wrong}, the cheapest {other}.",
        ]
    if there - here >= SAME_CHANCE:
        often = f"The cheapest comes out right more often: {times_in_100(there)}."
        return [often, _preferred(first, cheapest, weights)]
    if times_in_100(here) == times_in_100(there):
        often = f"Both come out right as often, {times_in_100(here)}"
    else:
        often = f"It comes out right {times_in_100(here)}, the cheapest {times_in_100(there)}"
    apart = (first.hardness.surface.p50 or 0.0) - (cheapest.hardness.surface.p50 or 0.0)
    if abs(apart) >= SAME_HRC:
        often += f"; this one is at {hrc_words(first)}, the cheapest at {hrc_words(cheapest)}"
    return [f"{often}.", _preferred(first, cheapest, weights)]


def _preferred(first: OptionOut, cheapest: OptionOut, weights: Mapping[str, float]) -> str:
    """Return for what a way is proposed that is neither cheaper nor surer."""
    gains = {
        name: weights.get(name, 0.0) * (mine.merit - cheapest.criteria[name].merit)
        for name, mine in first.criteria.items()
        if name in _BECAUSE and name in cheapest.criteria
    }
    most = max(gains, key=lambda name: gains[name], default="")
    if gains.get(most, 0.0) < SAME_GAIN:
        return "Nothing else speaks against the cheapest: say so if you would rather have it."
    return f"We put this one first because {_BECAUSE[most]}."


def _life(first: OptionOut, cheapest: OptionOut) -> str:
    """Return the life beside the one asked for."""
    lasts, other = (o.criteria["hardness"].value for o in (first, cheapest))
    return (
        f"It is reckoned to last {lasts:.1f} times the life you asked for, the cheapest "
        f"{other:.1f} times."
    )


def _in_use(option: OptionOut) -> list[str]:
    """Return the chance of breaking in use, where loads were given."""
    chance = option.failing.p95
    if chance is None or not any(gate.name == "strength" for gate in option.gates):
        return []
    often = f"{one_in(chance)}, {times_in_100(chance)} at worst"
    return [f"That it breaks or gives way at the loads you gave: {often}."]
