"""ASM Handbook, Volume 1, 1990 (from memory): hardness of tool steel as quenched, at the
surface and at the centre of a round of 25 mm, each in its own bath.

None of it was used in a fit. A forecast agrees whose 90 % interval meets the printed range.
"""

from functools import cache

import numpy as np
import pytest

from catalog import load_catalog
from selector.requirement.part import Section
from selector.specimen.specimen import specimen

ROUND = Section(shape="round", size=25.0, length=250.0)
# Bath, surface, centre.
PRINTED_HRC = {
    "c105u": ("water", "65 67", "38 43"),
    "100v1": ("water", "65 67", "38 43"),
    "100mncrw4": ("oil", "61 64", "59 61"),
    "90mncrv8": ("oil", "61 64", "59 61"),
    "o6": ("oil", "59 63", "58 60"),
    "l6": ("oil", "58 63", "58 60"),
    "x100crmov5": ("air", "63 65", "63 65"),
    "a6": ("air", "59 63", "59 63"),
    "x153crmov12": ("air", "61 64", "61 64"),
    "x210cr12": ("oil", "64 66", "64 66"),
    "s1": ("oil", "57 59", "57 59"),
    "s5": ("oil", "58 61", "58 61"),
    "50crmov13-15": ("air", "59 61", "59 61"),
    "x37crmov5-1": ("air", "53 55", "53 55"),
    "x40crmov5-1": ("air", "51 54", "51 54"),
    "hs6-5-2": ("oil", "64 66", "64 66"),
}
SOFT_CORE = (
    "The handbook has oil-hardening steel 3 HRC softer at the centre of 25 mm; makers have it \
hardened through 40 to 75 mm."
)
UNEXPLAINED = {
    ("100mncrw4", "centre"): SOFT_CORE,
    ("90mncrv8", "centre"): SOFT_CORE,
    ("l6", "centre"): SOFT_CORE,
    ("o6", "surface"): "The handbook's 59 to 63 is under the 65 of a maker's table.",
}


@cache
def ends(slug):
    """Return the 90 % interval of each place, surface and centre."""
    known = load_catalog()
    of = specimen(known, known.steels[slug], ROUND, known.media[PRINTED_HRC[slug][0]])
    return np.quantile(of.fresh.hrc[:, [0, -1]], (0.05, 0.95), axis=0)


@pytest.mark.parametrize(
    ("slug", "place"),
    [
        pytest.param(
            slug,
            place,
            marks=pytest.mark.xfail(strict=True, reason=UNEXPLAINED[slug, place])
            if (slug, place) in UNEXPLAINED
            else (),
        )
        for slug in PRINTED_HRC
        for place in ("surface", "centre")
    ],
)
def test_hardness_as_quenched(slug, place):
    _, surface, centre = PRINTED_HRC[slug]
    low, high = map(float, (surface if place == "surface" else centre).split())
    least, most = ends(slug)[:, 0 if place == "surface" else 1]
    assert least <= high
    assert most >= low
