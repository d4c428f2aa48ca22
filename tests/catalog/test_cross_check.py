"""Values of one steel held against each other, and against its composition.

What the audit cannot refuse, because a sound but unusual steel breaks it, is looked at here for
the shipped steels: those that differ stand in a list with the reason.
"""

from itertools import pairwise

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.metallurgy.martensite import hardness
from selector.metallurgy.transformation import martensite_start

KNOWN = load_catalog().steels
# Carbide holds carbon back: full martensite of all of it would be harder than is published.
CARBIDE_HOLDS = {
    "60wcrv8", "a6", "s5", "40crmnmo7", "40crmnmos8-6", "55nicrmov7",
}  # fmt: skip
# Steels with more than this of alloying elements are no matter for the table. [wt %]
LEAN_WT_PCT = 6.0


def contents(steel):
    return {element: float(v[0, 0]) for element, v in middle(steel).items()}


def is_lean(steel):
    if "C" not in steel.composition_wt_pct:
        return False
    return sum(v for e, v in contents(steel).items() if e not in {"C", "Fe"}) < LEAN_WT_PCT


LEAN = [slug for slug, steel in KNOWN.items() if is_lean(steel)]


def test_published_hardness_as_quenched_is_that_of_its_carbon():
    off = set()
    for slug in LEAN:
        hardened = KNOWN[slug].hardened
        if hardened is not None and hardened.as_quenched_hrc is not None:
            full = float(hardness(contents(KNOWN[slug])["C"], 0.999))
            if abs(hardened.as_quenched_hrc.middle - full) > 4.0:
                off.add(slug)
    assert off == CARBIDE_HOLDS


def test_published_martensite_start_is_near_that_of_its_composition():
    # 1 % carbon chromium steel keeps carbon in carbide, and its Ms is that of what dissolves.
    off = {
        slug
        for slug in LEAN
        if (ms := KNOWN[slug].temperature_c.get("ms"))
        and abs(ms.middle - float(martensite_start(contents(KNOWN[slug])))) > 40.0
    }
    assert off <= {"102cr6", "c10"}


def thin_and_thick(steel):
    """Yield two bands of one mark each, the thinner bar's first."""
    for mark in {band.mark for band in steel.strength_hb}:
        bands = (band for band in steel.strength_hb if band.mark == mark)
        yield from pairwise(sorted(bands, key=lambda band: band.to_mm))


def test_a_thicker_bar_of_a_mark_is_no_harder():
    pairs = [(slug, *pair) for slug, steel in KNOWN.items() for pair in thin_and_thick(steel)]
    assert pairs
    assert [
        (slug, thin.mark, thin.to_mm, thick.to_mm)
        for slug, thin, thick in pairs
        if thick.low > thin.low or thick.high > thin.high
    ] == []


def test_drawn_bar_is_no_softer_than_soft_bar():
    pairs = []
    for slug, steel in KNOWN.items():
        sold = {c.name: c.hardness_hb for c in steel.condition if c.hardness_hb}
        if drawn := sold.get("cold-drawn"):
            pairs += [
                (slug, name, drawn.high, sold[name].high)
                for name in ("annealed", "hot-rolled")
                if name in sold
            ]
    assert pairs
    assert [pair for pair in pairs if pair[2] < pair[3]] == []


def test_a_band_of_two_ends_is_no_single_figure():
    widths = {
        (slug, condition.name): band.max - band.min
        for slug, steel in KNOWN.items()
        for condition in steel.condition
        if (band := condition.hardness_hb) is not None
        and band.min is not None
        and band.max is not None
    }
    assert widths
    assert {where: width for where, width in widths.items() if width < 10.0} == {}
