"""What a bar of unknown make may be: its likely steels, hardened as one mixture."""

from dataclasses import dataclass

import numpy as np

from catalog.medium import Medium
from catalog.steel import Steel
from selector.job.job import Job
from selector.job.treatment import Treatment
from selector.option.preparation import prepare
from selector.procedure.instrument import FILE_EDGES_HRC
from selector.wording import in_sentence

# From here up a new file skates, or barely marks the skin. [HRC]
SKATES_HRC = FILE_EDGES_HRC[-2]
FURNACE = "through-furnace"
# Steels less likely than this are not named. [-]
NAMED_FROM = 0.05


@dataclass(frozen=True, slots=True)
class Guess:
    """One steel that a bar may be: how often it is, and how often a file then skates on it."""

    steel: Steel
    share: float
    skates: float


def guesses(job: Job, bar: Steel, medium: Medium) -> tuple[Guess, ...]:
    """Return what a bar may be, each quenched as the part's thickest working section is.

    Parameters
    ----------
    job : Job
        Part and workshop.
    bar : Steel
        Bar of unknown make.
    medium : Medium
        The bath.

    Returns
    -------
    tuple of Guess
        Most likely first; the shares make up 1 where all of them are known. [-]
    """
    likely = []
    for entry in bar.likely:
        steel = job.catalog.steels.get(entry.steel)
        if steel is not None:
            likely.append(Guess(steel, entry.share.value, _skates(job, steel, medium)))
    return tuple(sorted(likely, key=lambda guess: -guess.share))


def _skates(job: Job, steel: Steel, medium: Medium) -> float:
    """Return how often a new file skates on a steel out of a bath, soaked at its own heat."""
    if "quench" not in steel.hardens_by:
        return 0.0
    route = job.catalog.routes[FURNACE]
    fresh = prepare(Treatment(steel, steel.condition[0], route, medium=medium), job).fresh
    if fresh is None:
        return 0.0
    # A file tries the skin.
    surface = fresh.hrc[
        :, job.lead_section * (fresh.hrc.shape[1] // len(job.asked.part.section))
    ]
    return float(np.mean(surface >= SKATES_HRC))


def chance(likely: tuple[Guess, ...]) -> float:
    """Return how often a new file skates on the bar, over all it may be. [-]."""
    whole = sum(guess.share for guess in likely)
    return sum(guess.share * guess.skates for guess in likely) / whole if whole else 0.0


def then(likely: tuple[Guess, ...], *, skates: bool) -> tuple[tuple[Steel, float], ...]:
    """Return what a bar is, by how the file took it, most likely first.

    Parameters
    ----------
    likely : tuple of Guess
        What it may be.
    skates : bool
        Whether a new file skated on the quenched coupon.

    Returns
    -------
    tuple of tuple of Steel and float
        Each steel with its share of what is left. [-]
    """
    weight = [(g.steel, g.share * (g.skates if skates else 1.0 - g.skates)) for g in likely]
    whole = sum(part for _, part in weight)
    if whole <= 0.0:
        return ()
    return tuple(sorted(((s, part / whole) for s, part in weight), key=lambda pair: -pair[1]))


def coupon_oil(job: Job) -> Medium | None:
    """Return the oil a coupon is quenched in: the workshop's own, else any."""
    oils = [m for m in job.bench.media if m.is_oil and m.kind != "hot-oil"]
    return oils[0] if oils else job.catalog.media.get("oil")


def likely_words(job: Job) -> tuple[str, ...]:
    """Return what each unknown bar of the rack may be and what an oil coupon says of it."""
    medium = coupon_oil(job)
    if medium is None:
        return ()
    said = []
    for held in job.bench.stock:
        likely = guesses(job, held.steel, medium)
        if likely:
            said.append(_sentence(held.bar.steel, likely, medium))
    return tuple(dict.fromkeys(said))


def _sentence(name: str, likely: tuple[Guess, ...], medium: Medium) -> str:
    """Return one bar's likely steels, and what a file says of the quenched coupon."""
    odds = _listed(tuple((g.steel, g.share) for g in likely))
    text = (
        f"{name[:1].upper()}{name[1:]} is likely {odds}. Out of {in_sentence(medium.name)} a "
        f"new file skates or barely marks it {100 * chance(likely):.0f} times in 100"
    )
    hard, soft = then(likely, skates=True), then(likely, skates=False)
    if hard and soft:
        text += f": then it is {_listed(hard)}; if it bites, {_listed(soft)}"
    return f"{text}. Estimated shares: the coupon decides."


def _listed(odds: tuple[tuple[Steel, float], ...]) -> str:
    """Return steels with their chances in 100: "5160 (40), 55Cr3 (25) or 51CrV4 (20)"."""
    named = [
        f"{steel.name} ({100 * share:.0f})" for steel, share in odds if share >= NAMED_FROM
    ]
    return " or ".join([", ".join(named[:-1]), named[-1]] if len(named) > 1 else named)
