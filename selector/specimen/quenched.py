"""A section as quenched: hardness from skin to middle, and how thick it hardens through."""

import numpy as np

from catalog import Catalog
from catalog.medium import Medium
from catalog.steel import Steel
from selector.record import rounded
from selector.requirement.part import Section
from selector.specimen.hardening import hardening, why_not
from selector.specimen.mixture import mixture, mixture_words
from selector.specimen.output import (
    hardness_words,
    origin_out,
    quench_assumed,
    quench_out,
    range_out,
    steel_out,
)
from selector.specimen.record import PointOut, QuenchedOut, RangeOut
from selector.specimen.specimen import TRIED_MM, Specimen, specimen, thickest_mm
from selector.wording import times_in_100

MIDDLE = {"flat": "middle", "tube": "middle of the wall"}


def quenched(
    catalog: Catalog,
    steel: Steel,
    section: Section,
    medium: Medium,
    heat_c: float | None = None,
) -> QuenchedOut:
    """Return a steel as quenched in a section, or why nothing hardens.

    Parameters
    ----------
    catalog : Catalog
        What is known.
    steel : Steel
        Catalogue steel.
    section : Section
        A long bar.
    medium : Medium
        The bath.
    heat_c : float, optional
        Hardening heat; left out, the middle of the steel's own range. [°C]

    Returns
    -------
    QuenchedOut
        Without points for a steel that no quench hardens.
    """
    if hardening(steel) == "not":
        likely = mixture(catalog, steel, section, medium)
        return QuenchedOut(
            steel=steel_out(steel),
            headline=mixture_words(steel, likely) if likely else why_not(steel),
            quench=None,
            points=(),
            depth_mm=None,
            through_share=None,
            thickest_round_mm=None,
            half_martensite_hrc=None,
            origin=None,
            assumed=(),
            likely=likely,
        )
    of = specimen(catalog, steel, section, medium, heat_c)
    made, through = quench_out(of), float(np.mean(of.through()))
    points = tuple(
        PointOut(from_surface_mm=round(float(depth), 3), hrc=range_out(hrc))
        for depth, hrc in zip(of.inwards_mm, of.fresh.hrc.T, strict=True)
    )
    thickest = range_out(thickest_mm(of))
    return QuenchedOut(
        steel=steel_out(steel),
        headline=_headline(of, points, through),
        quench=made,
        points=points,
        depth_mm=range_out(of.depth_mm()),
        through_share=round(through, 4),
        thickest_round_mm=thickest,
        half_martensite_hrc=rounded(of.limit.least_fresh_hrc),
        origin=origin_out(of.fresh),
        assumed=tuple(quench_assumed(of, made)),
    )


def _headline(of: Specimen, points: tuple[PointOut, ...], through: float) -> str:
    """Return skin, middle and how often it hardens through, in one sentence."""
    skin, middle = hardness_words(points[0].hrc)[0], hardness_words(points[-1].hrc)[0]
    where = MIDDLE.get(of.section.shape, "centre")
    what = "core of " if of.heat is None else ""
    hard = of.limit.least_fresh_hrc
    if (points[0].hrc.p50 or 0.0) < hard:
        how = f"so it does not harden, to the {hard:.0f} HRC of half martensite"
    else:
        how = f"hard through {times_in_100(through)}"
    text = f"{what}{of.steel.spoken}: {skin} at the skin, {middle} in the {where}; {how}."
    return text[:1].upper() + text[1:]


def through_words(answer: QuenchedOut) -> list[str]:
    """Return how deep and how thick a steel hardens, in sentences."""
    depth, thickest = answer.depth_mm, answer.thickest_round_mm
    if depth is None or thickest is None or answer.half_martensite_hrc is None:
        return []
    low, middle, high = (
        f"{mm:.1f}" for mm in (depth.p05, depth.p50, depth.p95) if mm is not None
    )
    return [
        f"to {answer.half_martensite_hrc:.0f} HRC: {middle} mm deep ({low} to {high} mm)",
        _thick_words(thickest),
    ]


def _thick_words(thickest: RangeOut) -> str:
    """Return up to which diameter a round hardens through, in words."""
    low, middle, high = (mm or 0.0 for mm in (thickest.p05, thickest.p50, thickest.p95))
    if high <= 0.0:
        return "no round hardens through, however thin"
    ends = f"{_size(low)} to {_size(high)}" if low > 0.0 else f"none to {_size(high)}"
    if middle <= 0.0:
        return f"a round seldom hardens through ({ends})"
    if low >= TRIED_MM[-1]:
        return f"rounds of {_size(low)} harden through"
    return f"a round hardens through up to {_size(middle)} ({ends})"


def _size(mm: float) -> str:
    """Return a diameter to two figures, or that it lies beyond what is tried."""
    if mm >= TRIED_MM[-1]:
        return f"over {TRIED_MM[-1]:.0f} mm"
    return f"{float(f'{mm:.2g}'):g} mm"
