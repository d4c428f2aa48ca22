"""The trial of a bar that nobody can name: what to try, in which order, and what it says."""

import numpy as np

from selector.heat.colour import MAGNET_LOST_C
from selector.job.job import Job
from selector.metallurgy.martensite import hardness
from selector.procedure.instrument import FILE_EDGES_HRC, NEW_FILE, Window, words_of
from selector.procedure.quenching import BATHS
from selector.requirement.workshop import Stock
from selector.trial.coupon import SHORTEST_MM, to_five
from selector.trial.likely import coupon_oil, likely_words
from selector.trial.record import SCHEMA_VERSION, CouponOut, ReadingOut, TrialPlanOut

# A piece that hardened is nearly all martensite where a file tries it. Common practice. [-]
HARDENED = 0.95
# So many coupons are tried, in turn.
COUPONS = 3

_ASK = (
    "Ask first: certificate, end paint, receipt, what it was. Strip plating outdoors, before "
    "any red heat."
)
_AS_IT_IS = (
    "Spark and file the bar as it is: a file that skates says it is hard already, or has a "
    "hard skin; anneal it before cutting."
)
_CUT = "Cut a coupon of the same bar and the same section, about twice as long as thick."
_HEAT = (
    f"Heat it until a magnet lets go ({MAGNET_LOST_C:.0f} °C) and a little brighter, as evenly "
    "as the part will be heated; quench in "
)
_WATER = (
    "Try a new file on it and on a known piece. Bites: heat a second coupon and quench in "
    "water, behind a shield. Bites again: it does not harden; use it soft or case it."
)
_SNAP = (
    "Skates: snap the coupon in a covered vice. Fine grey grain is right, coarse and sparkling "
    "is overheated; a soft ring or core shows how deep it hardened."
)
_TEMPER = (
    "Temper a third coupon as the part will be and try file, hammer and edge on it. Only then "
    "treat the part, and note what worked."
)


def carbon_wt_pct(hrc: float) -> float:
    """Return the carbon of a piece that hardened to so much. [wt %]."""
    carbon = np.linspace(0.05, 1.0, 96)
    return float(np.interp(hrc, hardness(carbon, HARDENED), carbon))


def _what_it_says() -> str:
    """Return what a new file says of the carbon of a coupon out of the water."""
    cuts, _, marks, skates = (carbon_wt_pct(hrc) for hrc in FILE_EDGES_HRC)
    return (
        "What the file says after water: it cuts with little effort, under about "
        f"{cuts:.1f} % carbon: for casing alone; it just marks, some {marks:.1f} %; it skates, "
        f"{skates:.1f} % or more. Too cold a heat or a soft skin hides it: file 0.2 mm deeper "
        "and look again."
    )


def _oil(job: Job) -> str:
    """Return the oil of the workshop as one says it at the bench."""
    medium = coupon_oil(job)
    return BATHS.get(medium.slug, "oil") if medium is not None else "oil"


def _notes(job: Job) -> tuple[str, str, str]:
    """Return what is done to each of the coupons, in turn."""
    first, then = f"quenched in {_oil(job)}", "quenched in water, if oil left it soft"
    return first, then, "tempered as the part"


def needs_trial(job: Job) -> bool:
    """Return whether a bar of unknown or unclear grade is in play."""
    unknown = any(racked.steel.kind == "unknown" for racked in job.bench.stock)
    return unknown or bool(job.bench.unclear)


def trial_steps(job: Job) -> tuple[str, ...]:
    """Return the steps of the trial of an unknown bar, none where there is none.

    Parameters
    ----------
    job : Job
        Part and workshop.

    Returns
    -------
    tuple of str
        In order. Common practice; the carbon by the hardness of martensite.
    """
    if not needs_trial(job):
        return ()
    return (
        _ASK,
        *likely_words(job),
        _AS_IT_IS,
        _CUT,
        f"{_HEAT}{_oil(job)}, moving it.",
        _WATER,
        _what_it_says(),
        _SNAP,
        _TEMPER,
    )


def unknown_plan(job: Job) -> TrialPlanOut:
    """Return the trial of a bar that nobody can name, before any option stands.

    Parameters
    ----------
    job : Job
        Part and workshop, with such a bar in its rack.

    Returns
    -------
    TrialPlanOut
        Without forecast and cost: nothing is known of the bar that could be narrowed.
    """
    unclear = job.bench.unclear
    if unclear:
        names = ", ".join(steel.spoken for steel in unclear[0].steels)
        why = f"'{unclear[0].bar.steel}' in the rack may be any of {names}."
    else:
        why = "A bar in the rack is of unknown grade: it may not harden, or may crack."
    return TrialPlanOut(
        schema_version=SCHEMA_VERSION,
        id="unknown/bar",
        part=job.asked.part.name,
        option=None,
        subject="bar",
        asked_for="unproved",
        headline=f"Up to {COUPONS} coupons of the bar, in turn: {_oil(job)}, water, temper.",
        why=why,
        coupons=tuple(_coupon(job, n, note) for n, note in enumerate(_notes(job), start=1)),
        set_up=None,
        temper=None,
        bath_l=None,
        gas_kg_per_h=None,
        readings=(_hardened(job),),
        steps=trial_steps(job),
        forecast=None,
        share={},
        cost=None,
        assumed=("What it narrows is said of its likely steels alone, by estimated shares.",),
        cautions=("unknown-steel-coupon", "as-quenched-glass-brittle"),
    )


def _coupon(job: Job, number: int, note: str) -> CouponOut:
    """Return one coupon of a bar nobody knows, of the section of the working zone."""
    section = job.asked.part.section[job.lead_section]
    bars = (*(r.bar for r in job.bench.stock if r.steel.kind == "unknown"), *_unclear(job))
    label = bars[0].steel if bars else "unknown"
    return CouponOut(
        number=number,
        steel=label,
        steel_slug="unknown",
        condition="unknown",
        bar=f"the bar in the rack: {label}",
        shape=section.shape,
        size_mm=round(section.size, 2),
        width_mm=None if section.width is None else round(section.width, 2),
        bore_mm=None if section.bore is None else round(section.bore, 2),
        length_mm=to_five(max(2.0 * section.narrowest_mm, SHORTEST_MM)),
        note=note,
    )


def _unclear(job: Job) -> tuple[Stock, ...]:
    """Return the bars whose name means several steels."""
    return tuple(item.bar for item in job.bench.unclear)


def _hardened(job: Job) -> ReadingOut:
    """Return the file test that says whether it hardens."""
    marks = NEW_FILE.edges[-2]
    go, no_go = words_of(NEW_FILE, Window(low=marks))
    return ReadingOut(
        stage="quenched",
        test=NEW_FILE.slug,
        means=NEW_FILE.words,
        unit="HRC",
        expected=None,
        go_low=marks,
        go_high=None,
        go=go,
        no_go=f"{no_go} in {_oil(job)}, try water; in water too, case it or use it soft",
        bias=NEW_FILE.bias,
        scatter=NEW_FILE.scatter,
        counted=False,
    )
