"""Which cautions stand on the first screen: the worst few of what is going to be done."""

from collections.abc import Iterable, Sequence
from typing import get_args

from catalog.caution import Caution, Harm
from selector.job.job import Job
from selector.option.caution import of_option, of_part, of_stock
from selector.option.prediction import Prediction
from selector.record import CautionOut

HARMS = get_args(Harm)
# Said of everything, or of what some do afterwards and this option does not ask for.
NEVER_FIRST = frozenset(
    {"local-codes", "burn-first-aid", "deep-cold", "blacking-salt", "grinding-dust"}
)
# What harms only where the part is made hot.
OF_HEAT = frozenset(
    {
        "plated-stock-strip", "zinc-fume", "chrome-fume", "cadmium", "lead-fume",
        "hardened-spring-reheat", "anneal-before-requench", "stainless-temper-window",
    }
)  # fmt: skip
# Nobody reads more: so many in all, and so many of each harm.
MOST = 6
MOST_OF = {"kills": 3, "injures": 2, "spoils": MOST}


def first_screen(job: Job, outcome: Prediction | None) -> tuple[str, ...]:
    """Return the caution ids of the first screen, the worst first.

    Parameters
    ----------
    job : Job
        Part, workshop and catalogue.
    outcome : Prediction, optional
        What is going to be done; where nothing is, the cautions of part and rack.

    Returns
    -------
    tuple of str
        At most `MOST`, at most three of them of what kills or blinds.
    """
    asked = job.asked
    ids = of_part(asked)
    if outcome is None:
        ids += of_stock(asked, [bar.steel for bar in job.bench.stock])
    else:
        ids += of_option(job, outcome)
        if outcome.treatment.route.process == "none":
            ids = [key for key in ids if key not in OF_HEAT]
        if outcome.treatment.steel.kind == "unknown":
            ids += of_stock(asked, [outcome.treatment.steel])
    return _worst(set(ids), job)


def _worst(ids: set[str], job: Job) -> tuple[str, ...]:
    """Return the worst cautions: by harm, and within a harm by the order of the list."""
    known = job.catalog.cautions
    ranked = [key for key in known if key in ids - NEVER_FIRST]
    kept: list[str] = []
    for harm in HARMS:
        of_harm = [key for key in ranked if known[key].harm == harm]
        kept += of_harm[: min(MOST_OF[harm], MOST - len(kept))]
    return tuple(kept)


def cautions_out(
    job: Job, outcomes: Sequence[Prediction], listed: Iterable[tuple[str, Caution]]
) -> tuple[CautionOut, ...]:
    """Return cautions as plain data, those of the first screen marked.

    Parameters
    ----------
    job : Job
        Part, workshop and catalogue.
    outcomes : sequence of Prediction
        The leading options, the one that is going to be done first; may be empty.
    listed : iterable of pairs
        Ids and cautions, by step of the work.

    Returns
    -------
    tuple of CautionOut
        In the order given; `rank` counts the first screen from 1, the worst first.
    """
    first = first_screen(job, outcomes[0] if outcomes else None)
    ranks = {key: place for place, key in enumerate(first, start=1)}
    return tuple(
        CautionOut(
            id=key,
            text=caution.fact.text,
            brief=caution.brief,
            step=caution.step,
            harm=caution.harm,
            first_screen=key in ranks,
            rank=ranks.get(key),
        )
        for key, caution in listed
    )
