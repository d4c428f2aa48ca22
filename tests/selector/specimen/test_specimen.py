import numpy as np
import pytest

from catalog import load_catalog
from selector.errors import OutOfRangeError
from selector.requirement import argument
from selector.specimen.specimen import TRIED_MM, specimen, thickest_mm

CATALOG = load_catalog()


def made(slug, text="round 20 mm", bath="water", heat_c=None):
    section = argument.section("--section", text)
    return specimen(CATALOG, CATALOG.steels[slug], section, CATALOG.media[bath], heat_c)


def test_points_run_from_the_skin_to_the_middle_of_the_steel():
    assert made("c45").inwards_mm == pytest.approx([0.2, 1.5, 3.5, 6.0, 10.0])
    wall = made("c45", "tube 30 x 10 mm").inwards_mm
    assert (wall[0], wall[-1]) == pytest.approx((0.2, 10.0))


def test_a_heat_too_cold_hardens_nothing_and_one_out_of_range_is_refused():
    cold = made("c45", heat_c=715.0)
    assert np.median(cold.fresh.hrc[:, 0]) < np.median(made("c45").fresh.hrc[:, 0]) - 20
    for heat_c in (400.0, 1500.0):
        with pytest.raises(OutOfRangeError, match=rf"--heat must be .* got {heat_c:g} °C"):
            made("c45", heat_c=heat_c)


def test_a_bar_that_is_not_simulated_is_refused():
    with pytest.raises(OutOfRangeError, match=r"--section must be .*got 3000 mm"):
        made("c45", "round 3000 mm")


def test_a_core_has_no_heat_unless_one_is_given():
    assert made("16mncr5", bath="oil").heat is None
    assert made("16mncr5", bath="oil", heat_c=870.0).heat.target_c == 870.0


@pytest.mark.parametrize(("slug", "bath"), [("c45", "water"), ("115crv3", "water")])
def test_the_thickest_round_is_hard_through_and_a_thicker_one_is_not(slug, bath):
    """As often as not: at the median diameter half of the bars have half martensite inside."""
    mm = float(np.median(thickest_mm(made(slug, bath=bath))))
    assert made(slug, f"round {0.8 * mm:.2f} mm", bath).through().mean() > 0.6
    assert made(slug, f"round {1.25 * mm:.2f} mm", bath).through().mean() < 0.4


def test_a_keener_bath_and_a_richer_alloy_harden_thicker():
    def middle(slug, bath):
        return np.median(thickest_mm(made(slug, bath=bath)))

    assert middle("c45", "oil") < middle("c45", "water") < middle("42crmo4", "water")
    assert middle("x30cr13", "air") == pytest.approx(TRIED_MM[-1])
