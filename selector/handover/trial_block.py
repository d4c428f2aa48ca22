"""What a trial gives a bench card: go and stop of each test, and whether to try a coupon."""

from typing import Any

from selector.handover.chosen import Chosen
from selector.trial.plan import plan
from selector.trial.record import ReadingOut, TrialPlanOut
from selector.trial.words import LEAST_WORTH, SURE, card_lines

# When a test is made, as the card names it.
WHEN = {
    "heat": "to heat", "quenched": "after the bath", "snapped": "coupon, snapped",
    "tempered": "after the temper", "bar": "on the bar", "crack": "after 10 min",
}  # fmt: skip
# What a firm alone sees.
AT_FIRM = frozenset({"heat", "quenched", "snapped"})
# Stages that are seen or felt, so that no instrument is named.
BARE = frozenset({"heat", "snapped"})


def trial_block(made_for: Chosen) -> dict[str, Any] | None:
    """Return go and stop of the tests of an option, and its trial where it is worth one.

    Parameters
    ----------
    made_for : Chosen
        The option of the card.

    Returns
    -------
    dict or None
        `tests` with their go and stop, `lines` of the trial, none of them of an option that the
        forecast holds for sure.
    """
    option = made_for.option
    if option is None:
        return None
    made = plan(made_for.job, option)
    sent = option.treatment.route.place == "subcontract"
    tempered = option.judged.prediction.temper.means != "none"
    tests = [
        _test(r, tempered=tempered) for r in made.readings if not (sent and r.stage in AT_FIRM)
    ]
    return {"tests": tests, "lines": _lines(made)}


def _lines(made: TrialPlanOut) -> list[str]:
    """Return the trial in a few lines, none where the part can do without it."""
    forecast = made.forecast
    if forecast is not None and made.asked_for is None:
        sure = forecast.right >= SURE
        if sure or forecast.narrowing < LEAST_WORTH:
            return []
    return list(card_lines(made))


def _test(reading: ReadingOut, *, tempered: bool) -> dict[str, str]:
    """Return one test with what means go and what stops."""
    last = reading.stage == "tempered" and not tempered
    means = "" if reading.stage in BARE else reading.means
    return {
        "name": "when it is cold" if last else WHEN[reading.stage],
        "means": means,
        "go": reading.go,
        "stop": reading.no_go,
    }
