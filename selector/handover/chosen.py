"""The option that a sheet is made for: the first of the advice, or any that an id names."""

from dataclasses import dataclass

from catalog import Catalog
from selector.advice.advise import Advice, advise
from selector.advice.headline import headline
from selector.advice.would_change import would_change
from selector.decision.option import Option, scorer_of
from selector.decision.output import option_out
from selector.decision.weighing import Progress
from selector.job.job import Job, resolved
from selector.option.reference_bar import reference_cost
from selector.record import OptionOut
from selector.requirement import Requirement
from selector.trial.unknown_bar import trial_steps
from selector.undisturbed import undisturbed
from selector.versus.option_id import firms_allowed
from selector.versus.side import judged_option


@dataclass(frozen=True, slots=True, eq=False)
class Chosen:
    """What a sheet is made of: a part, and its option with its record unless there is none.

    `headline` is the first sentence of the advice; `advice` is there where it was asked for.
    """

    job: Job
    option: Option | None
    record: OptionOut | None
    headline: str
    advice: Advice | None = None

    @property
    def instead(self) -> tuple[str, ...]:
        """What helps where there is no option: a coupon first, or what would change it."""
        if self.advice is None or self.option is not None or self.asked.safety_critical:
            return ()
        return (*trial_steps(self.job), *would_change(self.advice))

    @property
    def asked(self) -> Requirement:
        """What is asked."""
        return self.job.asked


@undisturbed()
def chosen(
    asked: Requirement,
    catalog: Catalog,
    name: str | None = None,
    progress: Progress | None = None,
) -> Chosen:
    """Return the option of a sheet: the first choice of the advice, or the one named.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog
        What is known.
    name : str, optional
        Id of an option, as `advise` prints it.
    progress : callable, optional
        Called with a sentence and a fraction.

    Returns
    -------
    Chosen
        Without an option where lives depend on the part, or where nothing serves.

    Raises
    ------
    RequirementError
        When an id names no option this workshop could attempt.
    """
    if name is not None and not asked.safety_critical:
        return _named(asked, catalog, name)
    advice = advise(asked, catalog, progress=progress)
    best = None if asked.safety_critical or not advice.options else advice.options[0]
    record = None if best is None else option_out(advice.job, best, 1, advice.ranges)
    return Chosen(advice.job, best, record, headline(advice), advice)


def _named(asked: Requirement, catalog: Catalog, name: str) -> Chosen:
    """Return any option by its id, judged by itself."""
    job = resolved(firms_allowed(asked, (name,), catalog), catalog)
    option = judged_option(name, job)
    ranges = scorer_of(job, reference_cost(job)).ranges
    return Chosen(job, option, option_out(job, option, 1, ranges), "")
