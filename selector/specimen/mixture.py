"""Bar of unknown make in a bath: each steel that it may be, and the mixture of them."""

import numpy as np

from catalog import Catalog
from catalog.medium import Medium
from catalog.steel import Steel
from selector.requirement.part import Section
from selector.specimen.hardening import hardening
from selector.specimen.output import hardness_words, range_out
from selector.specimen.record import LikelyOut
from selector.specimen.specimen import specimen
from selector.trial.likely import SKATES_HRC


def mixture(
    catalog: Catalog, steel: Steel, section: Section, medium: Medium
) -> tuple[LikelyOut, ...]:
    """Return what bar of unknown make may be, each as quenched in a section and bath.

    Parameters
    ----------
    catalog : Catalog
        What is known.
    steel : Steel
        Bar of unknown make.
    section : Section
        A long bar.
    medium : Medium
        The bath.

    Returns
    -------
    tuple of LikelyOut
        Most likely first; none of a steel that is known.
    """
    likely = []
    for entry in sorted(steel.likely, key=lambda entry: -entry.share.value):
        grade = catalog.steels.get(entry.steel)
        if grade is None:
            continue
        skin = None
        if hardening(grade) == "itself":
            skin = specimen(catalog, grade, section, medium).fresh.hrc[:, 0]
        likely.append(
            LikelyOut(
                name=grade.name,
                slug=grade.slug,
                share=entry.share.value,
                skin_hrc=None if skin is None else range_out(skin),
                skates_share=0.0
                if skin is None
                else round(float(np.mean(skin >= SKATES_HRC)), 4),
            )
        )
    return tuple(likely)


def mixture_words(steel: Steel, likely: tuple[LikelyOut, ...]) -> str:
    """Return how often bar of unknown make hardens, over all that it may be."""
    whole = sum(guess.share for guess in likely)
    skates = sum(guess.share * guess.skates_share for guess in likely) / whole
    name = f"{steel.spoken[:1].upper()}{steel.spoken[1:]}"
    return (
        f"{name}: the grade is not known. Over the steels it may be, a new file skates or "
        f"barely marks the skin {100 * skates:.0f} times in 100; the shares are estimated, a "
        "coupon decides."
    )


def likely_rows(likely: tuple[LikelyOut, ...]) -> list[tuple[str, str, str]]:
    """Return each likely steel with its share and its hardness at the skin, as a row."""
    return [
        (
            guess.name,
            f"{100 * guess.share:.0f} in 100",
            "not hardened" if guess.skin_hrc is None else hardness_words(guess.skin_hrc)[0],
        )
        for guess in likely
    ]
