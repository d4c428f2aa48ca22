import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.hard_depth import DISSOLVED_WT_PCT, Limit, hard_depth_mm
from selector.metallurgy.martensite import hardness

STEELS = load_catalog().steels
INWARDS_MM = np.linspace(0.0, 12.0, 25)
ANY = -np.inf


def falling(core_drop):
    """A section of 55 HRC at its surface that falls evenly to its middle."""
    return 55.0 - core_drop * INWARDS_MM[None, :] / INWARDS_MM[-1]


def depth(hrc, asked_hrc=50.0, least_hrc=ANY, inwards_mm=INWARDS_MM):
    return float(hard_depth_mm(hrc, hrc, inwards_mm, Limit(asked_hrc, least_hrc))[0])


def test_depth_ends_at_four_fifths_of_the_hardness_asked_for():
    """50 HRC are 513 HV; 0.8 of it, 410 HV, are 41.8 HRC: here 13.2 of 40 HRC to the core."""
    assert depth(falling(40.0)) == pytest.approx(12.0 * 13.2 / 40.0, abs=0.1)


def test_nothing_asked_it_ends_at_four_fifths_of_the_surface():
    assert depth(falling(40.0), None) == pytest.approx(depth(falling(40.0), 55.0))


def test_depth_counts_from_the_surface_not_from_the_first_place_looked_at():
    inside = INWARDS_MM + 0.24
    assert depth(falling(40.0), inwards_mm=inside) == pytest.approx(
        depth(falling(40.0)) + 0.24, abs=0.01
    )


def test_hard_through_is_the_whole_radius_and_soft_is_none():
    assert depth(falling(0.0)) == 12.0
    assert depth(falling(0.0) - 37.0) == 0.0


def test_a_shallow_layer_on_a_flat_is_the_same_share_of_its_thickness():
    halved = depth(falling(40.0), inwards_mm=0.5 * INWARDS_MM)
    assert halved == pytest.approx(0.5 * depth(falling(40.0)))


def test_more_asked_is_never_deeper():
    found = [depth(falling(40.0), hrc) for hrc in (30.0, 40.0, 50.0, 60.0)]
    assert found == sorted(found, reverse=True)


def test_pearlite_of_a_rich_steel_is_not_hard_however_little_is_asked():
    """Silver steel too slowly quenched is 44 HRC of pearlite; 0.8 of 48 HRC would count it."""
    pearlite = falling(0.0) - 11.0
    rich, lean = (Limit.of(STEELS[slug], 48.0) for slug in ("115crv3", "c45"))
    assert rich.least_fresh_hrc > 50.0
    assert lean.least_fresh_hrc == ANY
    assert depth(pearlite, 48.0, lean.least_fresh_hrc) == 12.0
    assert depth(pearlite, 48.0, rich.least_fresh_hrc) == 0.0


def test_each_sample_has_its_own_depth():
    both = np.vstack([falling(40.0), falling(0.0)])
    found = hard_depth_mm(both, both, INWARDS_MM, Limit(50.0, ANY))
    assert found.tolist() == [depth(falling(40.0)), 12.0]


def test_where_nothing_is_asked_hardness_ends_at_half_martensite():
    limit, rich = (Limit.half_martensite(STEELS[slug]) for slug in ("c45", "115crv3"))
    assert limit.asked_hrc == limit.least_fresh_hrc == float(hardness(0.46, 0.5))
    # No more than 0.75 % C is dissolved of a steel that has 1.2 %.
    assert rich.asked_hrc == float(hardness(DISSOLVED_WT_PCT, 0.5))
    inwards_mm = np.array([0.0, 2.0, 4.0, 6.0])
    found = hard_depth_mm(*[np.array([[57.0, 50.0, 40.1, 30.0]])] * 2, inwards_mm, limit)
    assert found[0] == pytest.approx(3.0, abs=0.05)  # half way from 50 to 40, at 45 HRC
