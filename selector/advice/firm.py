"""How firm the advice is, as plain data and in a sentence or two."""

import numpy as np

from selector.advice.advise import Advice
from selector.advice.against import against_shares, behind_because, other_methods
from selector.advice.doing import bar_words
from selector.advice.measure import measures
from selector.advice.record import FirmOptionOut, FirmOut, MeasureOut, PriceTurnOut, TurnOut
from selector.decision.firmness import CONCENTRATION, Firmness, firmness
from selector.decision.standing import Standing, outcomes, standing_of
from selector.decision.turning import Turn, cheapest, dearest, turns
from selector.figure import median
from selector.requirement.priority import CRITERIA, Criterion
from selector.undisturbed import undisturbed
from selector.wording import times_in_100

# What is first less often stands there by a rule of practice or of chances, which is said
# instead of the count. Estimate. [-]
SELDOM_FIRST = 0.25
# Beyond this a criterion outweighs all others together: nobody means that. [-]
LEAST_WEIGHT, MOST_WEIGHT = 0.005, 0.5
# The criteria as one says that they weigh.
WEIGHED: dict[Criterion, str] = {
    "hardness": "the right hardness",
    "strength": "strength",
    "snap_margin": "safety from snapping",
    "movement": "holding its shape",
    "cost": "cost",
    "operator_sensitivity": "forgiving a misread heat",
    "days": "time",
    "custom": "what the trade is used to",
    "at_hand": "a bar at hand",
}


@undisturbed()
def firm(advice: Advice) -> FirmOut | None:
    """Return how firm an advice is.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    FirmOut
        None where nothing is ranked: no option is left, or lives depend on the part.
    """
    if not advice.options or advice.asked.safety_critical:
        return None
    standing = standing_of(advice.options, advice.asked, advice.ranges)
    weights = np.array([advice.weights[name] for name in CRITERIA])
    known = firmness(standing, weights)
    paired = len(advice.options) > 1
    two = standing.of((0, 1)) if paired else standing
    turned = turns_out(standing, weights)
    price = _dearer(advice, standing, dearest(standing, weights) if paired else None)
    finds = _measures(advice, standing, weights, known)
    fall = cheapest(two, weights) if paired else None
    return FirmOut(
        sentence=_sentence(advice, known, turned, price, finds),
        concentration=CONCENTRATION,
        options=_options(standing, known),
        turns=turned,
        swaps=turns_out(two, weights) if paired else (),
        dearer=price,
        second_cheaper=_cheaper(advice, fall),
        measures=finds,
        against_shares=(*against_shares(advice), *other_methods(advice)),
    )


def turns_out(standing: Standing, weights: np.ndarray) -> tuple[TurnOut, ...]:
    """Return between which weights of each criterion the first stays first, as plain data.

    Parameters
    ----------
    standing : Standing
        What the order is made from.
    weights : ndarray
        The user's weights; shape (criteria,). [-]

    Returns
    -------
    tuple of TurnOut
        One a criterion, with the ids of who is first beyond.
    """
    return tuple(_turn_out(standing, turn) for turn in turns(standing, weights))


def _turn_out(standing: Standing, turn: Turn) -> TurnOut:
    """Return one criterion's weights as plain data."""
    ids = standing.ids
    return TurnOut(
        criterion=turn.criterion,
        words=WEIGHED[turn.criterion],
        now=round(turn.now, 4),
        below=None if turn.below is None else round(turn.below, 3),
        first_below=None if turn.under is None else ids[turn.under],
        above=None if turn.above is None else round(turn.above, 3),
        first_above=None if turn.over is None else ids[turn.over],
    )


def _options(standing: Standing, known: Firmness) -> tuple[FirmOptionOut, ...]:
    """Return the shares and regrets of every option."""
    return tuple(
        FirmOptionOut(
            id=name,
            place=k + 1,
            first=round(float(known.first[k]), 4),
            top_three=round(float(known.three[k]), 4),
            first_by_outcome=round(float(known.by_outcome[k]), 4),
            first_by_weights=round(float(known.by_weights[k]), 4),
            regret_score=round(float(known.regret[k]), 4),
            regret_money=round(float(known.regret_money[k]), 2),
            regret_money_p95=round(float(known.regret_money_p95[k]), 2),
        )
        for k, name in enumerate(standing.ids)
    )


def _dearer(
    advice: Advice, standing: Standing, found: tuple[float, int] | None
) -> PriceTurnOut | None:
    """Return how dear the first may become, None where it stays first at any price tried."""
    if found is None:
        return None
    factor, place = found
    cost = median(standing.cost[0])
    return PriceTurnOut(
        now=round(cost, 2),
        at=round(factor * cost, 2),
        factor=round(factor, 3),
        first_then=advice.options[place].id,
    )


def _cheaper(advice: Advice, factor: float | None) -> PriceTurnOut | None:
    """Return how cheap the second would have to be, None where it stays second."""
    if factor is None:
        return None
    second = advice.options[1]
    cost = second.judged.value("cost")
    return PriceTurnOut(
        now=round(cost, 2),
        at=round(factor * cost, 2),
        factor=round(factor, 3),
        first_then=second.id,
    )


def _measures(
    advice: Advice, standing: Standing, weights: np.ndarray, known: Firmness
) -> tuple[MeasureOut, ...]:
    """Return what decides between the first and the one that is first most often instead."""
    scores = outcomes(standing, weights)
    if len(scores) == 1:
        return measures(advice, scores[0], advice.options[:1])
    rival = 1 + int(known.first[1:].argmax())
    return measures(
        advice, scores[0] - scores[rival], (advice.options[0], advice.options[rival])
    )


def _turned(turned: tuple[TurnOut, ...]) -> str | None:
    """Return which weight puts another first with the least change, in words."""
    ways = [
        (abs(at - turn.now), turn.words, turn.now, at)
        for turn in turned
        for at in (turn.below, turn.above)
        if at is not None and LEAST_WEIGHT <= at <= MOST_WEIGHT
    ]
    if not ways:
        return None
    _, words, now, at = min(ways)
    side = "above" if at > now else "under"
    return f"{words} weighs {side} {100 * at:.0f} % (now {100 * now:.0f} %)"


def _first_words(advice: Advice, known: Firmness) -> str:
    """Return how often the first is first; where that is seldom, why it stands there."""
    if known.first[0] >= SELDOM_FIRST:
        return f"First {times_in_100(known.first[0])} over outcomes and weights"
    rival = advice.options[int(known.first.argmax())]
    why = behind_because(advice, advice.options[0], rival)
    return f"Over outcomes and weights it is more often {bar_words(advice, rival)}, but {why}"


def _sentence(
    advice: Advice,
    known: Firmness,
    turned: tuple[TurnOut, ...],
    price: PriceTurnOut | None,
    finds: tuple[MeasureOut, ...],
) -> str:
    """Return how firm the choice is in a few words."""
    money = advice.job.catalog.prices.currency
    text = _first_words(advice, known)
    dear = price and f"it costs {price.at:.0f} {money} (now {price.now:.0f})"
    until = " or ".join(words for words in (dear, _turned(turned)) if words)
    text += f". It stays first until {until}" if until else ""
    find = next((f for f in finds if f.step is not None), None)
    return f"{text}. Measure first: {find.words}." if find else f"{text}."
