"""What sets an option back whatever it scores: it rusts, nobody makes such a part so."""

from collections.abc import Mapping
from typing import Literal

from selector.decision.option import Option
from selector.duty.damp import is_run_on, rusts
from selector.duty.merit import NEVER
from selector.job.supply import is_rare
from selector.option.prediction import embrittled
from selector.requirement import Requirement

Drawback = Literal["rusts", "rusts fast", "spoils the mate", "unheard of", "rare", "brittle"]
# Scores lie between 0 and 1: so much less puts an option behind all others. [-]
_BEHIND = 2.0
# What each takes off a score. What nobody makes such a part of stands behind what comes out
# about as well; so do what few merchants sell, what has to be kept oiled, and what takes blows
# after a temper that makes it brittle. [-]
SETS_BACK: Mapping[Drawback, float] = {
    "rusts": 0.15, "rusts fast": _BEHIND, "spoils the mate": _BEHIND, "unheard of": 0.1,
    "rare": 0.1, "brittle": 0.1,
}  # fmt: skip


def drawbacks(option: Option, asked: Requirement) -> frozenset[Drawback]:
    """Return what sets an option back."""
    rusting, fitted = rusts(option.treatment, asked), is_run_on(asked)
    holds: Mapping[Drawback, bool] = {
        "rusts": rusting and not fitted,
        "rusts fast": rusting and fitted,
        "spoils the mate": spoils_mate(option),
        "unheard of": unheard_of(option),
        "rare": is_rare(option.treatment),
        "brittle": _turned_brittle(option, asked),
    }
    return frozenset(name for name, held in holds.items() if held)


def set_back(option: Option, asked: Requirement) -> float:
    """Return what is taken off the score of an option. [-]."""
    return sum(SETS_BACK[name] for name in sorted(drawbacks(option, asked)))


def stands_back(option: Option, asked: Requirement) -> bool:
    """Return whether an option stands behind all others: it rusts, or the dear one wears."""
    return any(SETS_BACK[name] >= _BEHIND for name in drawbacks(option, asked))


def spoils_mate(option: Option) -> bool:
    """Return whether the dear one of a pair wears more often than not."""
    pair = next((gate for gate in option.judged.gates if gate.name == "pair"), None)
    return pair is not None and pair.share is not None and pair.share < 0.5


def _turned_brittle(option: Option, asked: Requirement) -> bool:
    """Return whether blows fall on what its temper turns brittle."""
    return asked.load.impact != "none" and embrittled(option.treatment, option.choice.temper)


def unheard_of(option: Option) -> bool:
    """Return whether nobody makes such a part of such steel in such a way."""
    return option.judged.value("custom") <= NEVER
