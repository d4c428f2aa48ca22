import itertools

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.job.demand import demands
from selector.job.hard_section import hard_sections, leading, worn_sections
from tests.dog import GONE, asked, only


def lead(changes):
    requirement = asked(changes)
    return leading(demands(requirement), worn_sections(requirement))


def test_the_zone_that_wants_most_hardness_leads():
    assert lead({"zone.1.hardness": {"min": "58 HRC", "max": "62 HRC"}}).zone == 1
    assert lead({}).zone == 0
    assert lead({"zone.0.hardness": {"max": "180 HB"}}).zone == 0


def test_where_none_has_a_floor_the_zone_that_wears_leads():
    light = {"zone.0.wear": "none", "zone.0.hardness": GONE, "zone.1.wear": "sliding"}
    assert lead({**light, "zone.1.severity": "light"}).zone == 1


def test_sections_that_want_hardness():
    assert hard_sections(asked()) == (0,)
    assert hard_sections(asked({"zone.1.wear": "abrasive"})) == (0, 1)
    nothing = {"zone.0.wear": "none", "zone.0.hardness": GONE}
    assert hard_sections(asked(nothing)) == (0, 1)


def drive_end(shape, worn):
    """Return the dog with a square or hexagon behind its zone, which asks what is given."""
    size = "14 mm" if shape == "hexagon" else "20 mm"
    end = {"part.section.1.shape": shape, "part.section.1.size": size, "part.feature": []}
    zone = {"zone.0.hardness": GONE, "zone.0.severity": "light"}
    if worn is not None:
        zone = {"zone.0.hardness": {"min": f"{worn} HRC", "max": f"{worn + 4} HRC"}}
    return asked({**end, **zone})


@pytest.mark.parametrize("shape", ["square", "hexagon"])
@pytest.mark.parametrize(("worn", "first"), [(None, 1), (30, 1), (40, 1), (41, 0), (52, 0)])
def test_a_drive_end_that_leads_is_hardened_with_the_zone_that_wears(shape, worn, first):
    """ISO 3315:2018 asks 39 HRC of it; a window of 41 HRC is read 2 HRC lower."""
    requirement = drive_end(shape, worn)
    wanted = leading(demands(requirement), worn_sections(requirement))
    assert wanted.zone == first
    assert hard_sections(requirement) == ((0, 1) if first else (0,))


@pytest.mark.parametrize("worn", [None, 36, 52])
def test_a_drive_end_beside_a_softer_zone_has_options(worn):
    options = advise(drive_end("square", worn), only("c45", "42crmo4")).options
    assert options
    for option in options:
        assert all(np.median(option.judged.prediction.section_hrc, axis=0) >= 30)


LOOKS = ["none", "sliding"]
LEASTS = [None, "30 HRC", "39 HRC", "45 HRC"]


@pytest.mark.parametrize("impact", ["none", "hammered"])
@pytest.mark.parametrize("use", ["none", "lifting"])
@pytest.mark.parametrize("shapes", [*itertools.product(["round", "square"], repeat=2)])
def test_the_leading_zone_is_always_among_the_hard_ones(shapes, use, impact):
    for wears, leasts in itertools.product(
        itertools.product(LOOKS, repeat=2), itertools.product(LEASTS, repeat=2)
    ):
        zones = {
            f"zone.{n}.hardness": GONE if n == 0 and least is None else {"min": least}
            for n, least in enumerate(leasts)
            if n == 0 or least is not None
        }
        requirement = asked(
            {
                "load.impact": impact,
                "safety_use": use,
                **{f"zone.{n}.wear": wear for n, wear in enumerate(wears)},
                **{f"zone.{n}.severity": "light" for n in range(2)},
                **{f"part.section.{n}.shape": shape for n, shape in enumerate(shapes)},
                **zones,
            }
        )
        wanted = leading(demands(requirement), worn_sections(requirement))
        assert set(wanted.sections) <= set(hard_sections(requirement))
