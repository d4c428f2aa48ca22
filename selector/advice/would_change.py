"""What would change the answer: the usual way, the narrow demand, what was assumed."""

from collections.abc import Callable

from selector.advice.advise import SURE, Advice
from selector.advice.doing import bought_as, way_words
from selector.decision.drawback import unheard_of
from selector.decision.option import Rejected
from selector.duty.custom import custom
from selector.duty.merit import ALSO
from selector.duty.strength import has_load
from selector.job.supply import at_hand, is_rare
from selector.wording import in_100, shown_range

# A usual way that comes so near is named where an unusual one stands first. [-]
NEARLY = 0.2
# Gates that are no part of coming out right: the money, and the heat as a means.
APART = frozenset({"budget", "heating"})


def _unusual(advice: Advice) -> str | None:
    """Say what stops the usual way that comes nearest, where an unusual one stands first."""
    first, lead = advice.options[0], advice.job.leading
    if not (unheard_of(first) or is_rare(first.treatment)):
        return None
    usual = [
        item
        for item in advice.rejected
        if not is_rare(item.treatment) and custom(item.treatment, lead, advice.asked) >= ALSO
    ]
    budget = advice.asked.limit.budget

    def nearness(item: Rejected) -> tuple[float, float]:
        return (round(item.nearness(budget), 1), at_hand(item.treatment))

    near = max(usual, key=nearness, default=None)
    if near is None or near.nearness(budget) < NEARLY:
        return None
    work = near.treatment
    rack = " from the rack" * (work.stock is not None)
    return (
        f"The usual way that comes nearest: {bought_as(advice, work.steel)}{rack}, "
        f"{way_words(work)}: {near.gate.text} (right {in_100(near.share)})."
    )


def _narrow(advice: Advice) -> str | None:
    """Say which demand the first option meets least often, where that is worth a change."""
    first = advice.options[0].judged
    sampled = [g for g in first.gates if g.share is not None and g.name not in APART]
    worst = min(sampled, key=lambda gate: gate.share or 0.0, default=None)
    if worst is None or first.passing_all >= SURE:
        return None
    return (
        f"The first is right only {in_100(first.passing_all)}; what stops it most often: "
        f"{worst.text} (met {in_100(worst.share or 0.0)})."
    )


def _window(advice: Advice) -> str | None:
    """Say that the hardness window was derived, where it was."""
    lead = advice.job.leading
    if not lead.derived or lead.low_hrc is None or lead.high_hrc is None:
        return None
    return (
        f"Another hardness: {shown_range(lead.low_hrc, lead.high_hrc)} was taken from the duty "
        "(zone.hardness sets it)."
    )


def _loads(advice: Advice) -> str | None:
    """Say that strength was not judged, where no load is given."""
    if has_load(advice.asked.load):
        return None
    return "A torque, bending or axial load: none is given, so strength is not judged."


def _money(advice: Advice) -> str | None:
    """Say that prices are invented, or that no budget was given."""
    if advice.job.catalog.prices.invented:
        return "Your own prices (prices.toml): the ones used are invented for demonstration."
    return None


_RULES: tuple[Callable[[Advice], str | None], ...] = (
    _unusual, _narrow, _window, _loads, _money,
)  # fmt: skip


def would_change(advice: Advice) -> tuple[str, ...]:
    """Return what would change the answer, in sentences, what weighs most first.

    Parameters
    ----------
    advice : Advice
        The whole advice.

    Returns
    -------
    tuple of str
        None where there is no first option to change.
    """
    if not advice.options:
        return ()
    said = (rule(advice) for rule in _RULES)
    return tuple(sentence for sentence in said if sentence is not None)
