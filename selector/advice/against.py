"""Why an option stands before another that beats it in most samples."""

from selector.advice.advise import PAIRED, Advice
from selector.advice.doing import bar_words
from selector.advice.order import set_back_words
from selector.decision.option import Option
from selector.decision.preference import before_by_ease
from selector.wording import in_100, times_in_100

# A pair is worth a sentence where the one behind wins so often; so many are given. [-]
MOSTLY, SAID = 0.6, 3


def behind_because(advice: Advice, before: Option, behind: Option) -> str:
    """Return what keeps an option behind another that it beats in most samples.

    Parameters
    ----------
    advice : Advice
        The whole advice.
    before, behind : Option
        Two of its options.

    Returns
    -------
    str
        A reason, without a capital or a stop.
    """
    here, there = before.judged, behind.judged
    back = set_back_words(advice, before, behind)
    if back and behind.score > before.score:
        return f"{' and '.join(back)}, and so it stands behind"
    if before_by_ease(before, behind, advice.asked):
        return "their scores are level and the other bar is easier had, or less work"
    if there.passing_all < here.passing_all:
        return (
            f"it is right only {in_100(there.passing_all)}: better on a good day, worse on "
            "average"
        )
    within, beside = here.within_budget, there.within_budget
    if within is not None and beside is not None and beside < within:
        return (
            f"it is inside the budget only {in_100(beside)}: better where it is, worse on "
            "average"
        )
    return "where it loses it loses more: better on a good day, worse on average"


def against_shares(advice: Advice) -> tuple[str, ...]:
    """Return a sentence for each pair whose order and samples seem to contradict each other.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of str
        Of the leading options, the starkest first.
    """
    leading = advice.options[:PAIRED]
    pairs = [
        (advice.shares[behind.id, before.id], j, k)
        for j, before in enumerate(leading)
        for k, behind in enumerate(leading)
        if j < k and advice.shares[behind.id, before.id] >= MOSTLY
    ]
    return tuple(
        f"Number {k + 1} beats number {j + 1}, {times_in_100(share)}, but "
        f"{behind_because(advice, leading[j], leading[k])}."
        for share, j, k in sorted(pairs, reverse=True)[:SAID]
    )


def other_methods(advice: Advice) -> tuple[str, ...]:
    """Return how many other ways of weighing put another option first, and which.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of str
        One sentence; none where all begin as the advice does.
    """
    other = [c for c in advice.comparisons if c.places[0] != 1]
    if not other:
        return ()
    firsts = {bar_words(advice, advice.options[c.places.index(1)]): None for c in other}
    puts = "puts" if len(other) == 1 else "put"
    ways = f"{len(other)} of {len(advice.comparisons)} other ways of weighing"
    return (f"{ways} {puts} {' or '.join(firsts)} first.",)
