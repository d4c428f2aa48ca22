"""What a bar of unknown make comes to: the steels that it may be, each by its chance."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from catalog.medium import Medium
from catalog.steel import Steel
from selector.advice.advise import Advice
from selector.decision.option import scorer_of
from selector.decision.weighing import weigh
from selector.duty.custom import custom
from selector.duty.merit import ALSO
from selector.job.candidates import Screened, screened
from selector.job.job import Job, per_job
from selector.job.supply import SOFT, Racked, racked
from selector.job.treatment import Treatment
from selector.option.reference_bar import reference_cost

# An unknown bar that comes right so often, whatever it is, is tried before one is ordered.
# Estimate. [-]
SERVES = 0.8


@dataclass(frozen=True, slots=True)
class Likely:
    """A steel that a bar may be, its share, and how often the part of it comes out right."""

    steel: Steel
    share: float
    comes_right: float


@dataclass(frozen=True, slots=True)
class Mixture:
    """A bar of unknown make in one bath: the steels that it may be, most likely first.

    Of each the temper is the one that suits it, as the coupon tells which it is.
    """

    medium: Medium
    likely: tuple[Likely, ...]

    @property
    def comes_right(self) -> float:
        """How often the part comes out right over all that the bar may be. [-]."""
        whole = sum(one.share for one in self.likely)
        return sum(one.share * one.comes_right for one in self.likely) / whole


def mixture(advice: Advice, held: Racked) -> Mixture | None:
    """Return what a bar of unknown make comes to, hardened as the best of the known bars is.

    Parameters
    ----------
    advice : Advice
        The advice on the part.
    held : Racked
        A bar of its rack.

    Returns
    -------
    Mixture or None
        None of a bar that is known or may be anything, and where no bar is hardened here.
    """
    steels = advice.job.catalog.steels
    guesses = [(steels[g.steel], g.share.value) for g in held.steel.likely if g.steel in steels]
    way = _way(advice)
    if not guesses or way is None or way.medium is None:
        return None
    grades = tuple(steel for steel, _ in guesses)
    found = _comes_right(advice.job, held, grades, way)
    likely = [
        Likely(steel, share, right)
        for (steel, share), right in zip(guesses, found, strict=True)
    ]
    return Mixture(way.medium, tuple(sorted(likely, key=lambda one: -one.share)))


def worth_a_coupon(advice: Advice) -> tuple[Racked, Mixture] | None:
    """Return the unknown bar of the rack that a coupon is tried of before a bar is ordered.

    Parameters
    ----------
    advice : Advice
        The advice on the part.

    Returns
    -------
    tuple of Racked and Mixture, or None
        None where the first choice is of the rack or hardens nothing, and where no unknown bar
        serves, whatever it is, or is usual for such a part.
    """
    first = advice.options[0].treatment if advice.options else None
    if first is None or first.stock is not None or not first.hardens:
        return None
    for held in advice.job.bench.stock:
        found = mixture(advice, held) if held.steel.likely else None
        if found is None or found.comes_right < SERVES:
            continue
        if _is_usual(advice, held, found):
            return held, found
    return None


def _is_usual(advice: Advice, held: Racked, found: Mixture) -> bool:
    """Return whether such a part is made of what a bar most likely is."""
    way, job, likely = _way(advice), advice.job, found.likely[0].steel
    pool = () if way is None else _pool(job, held, (likely,), way)
    return any(custom(item.treatment, job.leading, job.asked) >= ALSO for item in pool)


def _way(advice: Advice) -> Treatment | None:
    """Return the first treatment that hardens a bar here: in oil, where one does."""
    # A coupon of a bar nobody knows goes into oil first.
    here = [
        option.treatment
        for option in advice.options
        if option.treatment.route.process == "quench"
        and option.treatment.route.place == "workshop"
    ]
    oils = (work for work in here if work.medium is not None and work.medium.is_oil)
    return next(oils, here[0] if here else None)


@per_job
def _comes_right(
    job: Job, held: Racked, grades: tuple[Steel, ...], way: Treatment
) -> tuple[float, ...]:
    """Return of each grade how often the part comes out right, were the bar of it. [-]."""
    pool = list(_pool(job, held, grades, way))
    weighed = weigh(job, pool, scorer_of(job, reference_cost(job)), whole=True)
    best = dict.fromkeys(grades, 0.0)
    for option in (*weighed.options, *weighed.outdone):
        steel = option.treatment.steel
        best[steel] = max(best[steel], option.judged.passing_all)
    for item in (*weighed.rejected, *weighed.apart):
        steel = item.treatment.steel
        best[steel] = max(best[steel], item.share)
    return tuple(best.values())


def _pool(
    job: Job, held: Racked, grades: tuple[Steel, ...], way: Treatment
) -> Iterator[Screened]:
    """Yield the treatment of the bar as each grade, soft, with what objects to it."""
    bars = [_as(racked(held.bar, grade, job.catalog)) for grade in grades]
    bench = replace(job.bench, stock=tuple(bars), unclear=())
    slugs = {grade.slug for grade in grades}
    for item in screened(
        job.asked,
        job.catalog,
        bench,
        lambda steel, route: steel.slug in slugs and route.slug == way.route.slug,
    ):
        work = item.treatment
        same = (work.medium, work.source) == (way.medium, way.source)
        if same and work.stock == held.bar:
            yield item


def _as(held: Racked) -> Racked:
    """Return a bar in the first soft condition of its steel, which a quench wipes out."""
    soft = sorted(
        (c for c in held.conditions if c.name in SOFT), key=lambda c: SOFT.index(c.name)
    )
    return replace(held, conditions=tuple(soft[:1]))
