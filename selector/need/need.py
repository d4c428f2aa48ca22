"""What the part must bear, before any steel is named: hardness, depth and strength, and why."""

from catalog import Catalog, load_catalog
from selector.duty.contact import pressings
from selector.duty.stiffness import stiffness
from selector.duty.strength import bearing
from selector.job.job import resolved
from selector.job.zone_out import zone_out
from selector.need import words
from selector.need.contact import contact_need
from selector.need.plain_bar import plain_bar
from selector.need.record import NeedOut, PlainBar, SectionNeed
from selector.need.section import section_needs
from selector.need.span import SOFTEST_HRC
from selector.requirement import Requirement


def need(asked: Requirement, catalog: Catalog | None = None) -> NeedOut:
    """Return what a part must bear and what hardness that takes.

    Parameters
    ----------
    asked : Requirement
        What is asked.
    catalog : Catalog, optional
        What is known; the shipped catalogue if absent.

    Returns
    -------
    NeedOut
        Ready for JSON and for the terminal.
    """
    job = resolved(asked, catalog or load_catalog())
    bears = bearing(asked)
    sections = section_needs(asked, bears)
    contacts = tuple(contact_need(pressing) for pressing in pressings(asked))
    hard = [d for d in job.demands if d.floor_hrc is not None]
    bar = plain_bar(job, bears, sections)
    verdict = _verdict(sections, bar, hard=bool(hard))
    return NeedOut(
        part=asked.part.name,
        verdict=verdict,
        headline=words.headline(
            verdict, job.leading, words.where(asked, job.leading), sections, bar
        ),
        zones=tuple(zone_out(d) for d in job.demands),
        sections=sections,
        contacts=contacts,
        as_bought=bar,
        remarks=tuple(text for text in (stiffness(asked), *words.gaps(asked)) if text),
    )


def _verdict(needs: tuple[SectionNeed, ...], bar: PlainBar | None, *, hard: bool) -> str:
    """Return what hardness is needed for, in a word."""
    if any(item.least is None for item in needs):
        return "no_hardness_bears_it"
    # What any steel bears takes no hardness, though no bar of known hardness be at hand.
    borne = bar is not None or all(_is_borne_by_any(need) for need in needs)
    if not hard:
        return "none" if borne else "strength"
    return "wear" if borne else "wear_and_strength"


def _is_borne_by_any(need: SectionNeed) -> bool:
    """Return whether the softest steel bears a heavy load here."""
    heaviest = need.least.p95 if need.least else None
    return heaviest is not None and heaviest <= round(SOFTEST_HRC, 3)
