"""What a trial gives a bench card: which coupon to try first, and what it must show."""

from selector.handover.chosen import Chosen
from selector.trial.plan import plan
from selector.trial.record import TrialPlanOut
from selector.trial.words import LEAST_WORTH, SURE, card_lines


def trial_block(made_for: Chosen) -> list[str]:
    """Return the trial of an option in a few lines, none where it can do without.

    Parameters
    ----------
    made_for : Chosen
        The option of the card.

    Returns
    -------
    list of str
        What to make, what to do first, go and stop of what a coupon alone shows; go and stop
        of the other tests stand at the steps of the card.
    """
    return [] if made_for.option is None else _lines(plan(made_for.job, made_for.option))


def _lines(made: TrialPlanOut) -> list[str]:
    """Return the trial in a few lines, none where the part can do without it."""
    forecast = made.forecast
    if forecast is not None and made.asked_for is None:
        sure = forecast.right >= SURE
        if sure or forecast.narrowing < LEAST_WORTH:
            return []
    return list(card_lines(made))
