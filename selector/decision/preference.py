"""In which order options are offered: by score, near ties by what is at hand and simple."""

from collections.abc import Collection, Mapping

import numpy as np

from selector.decision.drawback import drawbacks, set_back
from selector.decision.near_tie import (
    DEARER,
    Claims,
    Floats,
    by_ease,
    leaders,
    standings,
    tied,
)
from selector.decision.option import Option
from selector.duty.merit import SELDOM, USUAL
from selector.job.supply import EASE, at_hand
from selector.job.treatment import Means, Treatment
from selector.option.prediction import embrittled
from selector.requirement import Requirement

# No tie is what comes out right this much less often, a bar of the rack a little more, which
# costs no errand to try. Estimates. [-]
LESS_SURE, RACK_LESS_SURE = 0.1, 0.15
# A referral names so many bars and ranks no more.
NAMED = 3
# What one means of tempering must gain in score over the steadier one before it. An oven holds
# its heat, a kiln or furnace does so less well when nearly cold, a bar or plate heated from
# below is slow, so is a tray of sand, a flame is quick and misread. [-]
HANDICAP: dict[Means, float] = {
    "none": 0.01, "furnace": 0.01, "oven": 0.0, "residual": 0.0, "plate": 0.04, "blaze": 0.06,
    "sand": 0.06, "torch": 0.08, "salt": 0.0,
}  # fmt: skip
# A temper that embrittles must gain so much more. [-]
BRITTLE = 0.1
# How much work a route is, from nothing to a day at the fire. Common practice.
_WORK: Mapping[str, float] = {
         "none": 0, "normalise": 1, "quench": 1, "age": 1, "marquench": 2, "austemper": 2,
         "nitride": 2, "chrome": 2, "anneal": 1, "case": 3}  # fmt: skip

# What fewer firms do than harden, case or nitride.
_FEW_FIRMS = frozenset({"firm-flame", "laser"})
# A parcel made up, sent and fetched.
SENT = 2
# All of a part is brought to one heat by a flame with more patience than its end alone.
ALL_AT_ONCE = 0.5


def work_of(treatment: Treatment) -> float:
    """Return how much work a treatment is, 0 where the bar is left as bought."""
    route = treatment.route
    # What a firm does is one parcel, whatever it does, but fewer firms do some of it.
    if route.place == "subcontract":
        rarer = route.process in {"marquench", "austemper"} or route.kind in _FEW_FIRMS
        return SENT + rarer + (route.cold_c is not None)
    patience = ALL_AT_ONCE * (route.kind == "through-torch")
    return _WORK.get(route.process, 2) + patience + (route.cold_c is not None)


def handicap(option: Option) -> float:
    """Return what a temper must gain in score over a steady and sound one. [-]."""
    work, temper = option.treatment, option.choice.temper
    return HANDICAP[temper.means] + BRITTLE * embrittled(work, temper)


def certified(options: tuple[Option, ...]) -> tuple[Option, ...]:
    """Return what is left to name where lives depend on it: bar of a fitting kind, few."""
    # Bar with a certificate in the rack before all else; the work of a firm where no bar does.
    bars = [option for option in options if option.treatment.route.process == "none"]
    held = [option for option in bars if _is_certified(option.treatment)]
    others = [option for option in bars if not _is_certified(option.treatment)]
    return tuple(([*held, *others] or list(options))[:NAMED])


def _is_certified(work: Treatment) -> bool:
    """Return whether the bar lies in the rack with its certificate."""
    return work.stock is not None and work.stock.evidence == "certificate"


def in_order(options: Collection[Option], asked: Requirement) -> list[Option]:
    """Return options, best first; near ties by what is at hand, then by the least work."""
    listed = sorted(options, key=lambda option: option.id)
    if not listed:
        return []
    order = leaders(claims_of(listed, asked), _scores(listed)[:, None], len(listed))
    return [listed[k] for k in order[:, 0]]


def claims_of(options: Collection[Option], asked: Requirement) -> Claims:
    """Return what besides their scores gives options their places."""
    hands = [tie_break(option, asked) for option in options]
    ranks = {hand: rank for rank, hand in enumerate(sorted(set(hands)))}
    cost = np.array([option.judged.value("cost") for option in options])
    guessed = np.array([_is_guessed(option) for option in options])
    return Claims(
        back=np.array([set_back(option, asked) for option in options]),
        ease=np.array([ranks[hand] for hand in hands], dtype=np.int64),
        enough=np.array([sure_enough(option) for option in options]),
        mark=np.array([sets_mark(option) for option in options]),
        cost=cost,
        dear=np.where(guessed, np.inf, DEARER * cost),
    )


def ties_with(option: Option, best: Option, asked: Requirement) -> bool:
    """Return whether an option stands level with another, or above it."""
    pair = (best, option)
    claims = claims_of(pair, asked)
    scores = standings(claims, _scores(pair)[:, None])
    return bool(tied(claims, scores, np.array([0]))[1, 0])


def before_by_ease(before: Option, behind: Option, asked: Requirement) -> bool:
    """Return whether an option stands before another because it is easier had or less work."""
    pair = (before, behind)
    return by_ease(claims_of(pair, asked), _scores(pair))


def _scores(options: Collection[Option]) -> Floats:
    """Return the scores of options. [-]."""
    # A score is a mean over the samples: each is taken once.
    return np.array([option.score for option in options])


def sets_mark(option: Option) -> float:
    """Return how sure what comes near the best is asked to be; what is seldom asks nothing."""
    return 0.0 if _is_guessed(option) else option.judged.passing_all


def _is_guessed(option: Option) -> bool:
    """Return whether an option is seldom done and of a bar to buy: it sets no standard."""
    return option.treatment.stock is None and _is_seldom(option)


def _is_seldom(option: Option) -> bool:
    """Return whether such a part is seldom or never made so."""
    return option.judged.value("custom") <= SELDOM


def sure_enough(option: Option) -> float:
    """Return how often what an option ties with may come right at most. [-]."""
    spare = LESS_SURE if option.treatment.stock is None else RACK_LESS_SURE
    return option.judged.passing_all + spare


def ease(treatment: Treatment) -> tuple[float, float]:
    """Return what decides between near ties, least first: what is at hand, the least work."""
    return (-at_hand(treatment), work_of(treatment))


def tie_break(option: Option, asked: Requirement) -> tuple[float, float]:
    """Return what decides between near ties, least first, as `ease` has it."""
    hand, labour = ease(option.treatment)
    racked, merit = option.treatment.stock is not None, option.judged.value("custom")
    if _is_seldom(option):
        # What is seldom used for such a part wins no tie by being easy to buy, and a bar that
        # lies there none over what every shop has.
        hand = -EASE["easy"] if racked else 0.0
    elif not racked and (merit < USUAL or drawbacks(option, asked)):
        # What such parts are made of too wins none over what they are usually made of, nor what
        # rusts over what does not.
        hand = max(hand, -EASE["order"])
    return hand, labour
