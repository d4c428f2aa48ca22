import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.tempered import (
    hardened_from,
    hottest_temper_c,
    tempered,
    whole_curve,
)

STEELS = load_catalog().steels
MIDDLE = {"tempering": np.zeros(1), "tempering_family": np.zeros(1)}


def middle_hrc(slug, heat_c, temper_c, normals=MIDDLE):
    """Return the hardness after a temper of 2 h, quenched as hard as that heat gives."""
    steel = hardened_from(STEELS[slug], heat_c)
    fresh = np.array([[steel.hardened.as_quenched_hrc.middle]])
    hrc = tempered(steel, middle(steel), fresh, np.array([[temper_c]]), 7200.0, normals)
    return hrc.item()


def test_d2_hardens_again_from_a_high_heat_only():
    cold, hot = (middle_hrc("x153crmov12", heat, 520.0) for heat in (1010.0, 1065.0))
    assert hot > cold + 3.0
    # Retained austenite: softer after a low temper.
    low = [middle_hrc("x153crmov12", heat, 200.0) for heat in (1010.0, 1065.0)]
    assert low[1] < low[0]


@pytest.mark.parametrize("slug", ["hs6-5-2", "x40crmov5-1"])
def test_a_cooler_heat_leaves_less_to_harden_again(slug):
    coolest = STEELS[slug].tempered.heat[0].hardened_c
    main = STEELS[slug].tempered.hardened_c
    assert middle_hrc(slug, coolest, 550.0) < middle_hrc(slug, main, 550.0) - 0.5


def test_a_steel_of_one_curve_is_itself_from_any_heat():
    assert hardened_from(STEELS["l6"], 900.0) is STEELS["l6"]


def test_steel_and_laboratory_each_have_their_error():
    off = {name: np.ones(1) for name in MIDDLE}
    own, family = ({**MIDDLE, name: off[name]} for name in MIDDLE)
    for slug in ("42crmo4", "x153crmov12"):
        steel = STEELS[slug]
        fresh = np.array([[60.0]])
        hrc = [
            tempered(steel, middle(steel), fresh, np.array([[450.0]]), 7200.0, normals).item()
            for normals in (MIDDLE, own, family)
        ]
        assert hrc[1] > hrc[0] + 0.5
        assert hrc[2] > hrc[0] + 0.5


@pytest.mark.parametrize(
    ("slug", "fresh_hrc"), [("42crmo4", 55.0), ("835m30", 50.0), ("40crmnmo7", 52.0)]
)
def test_the_last_temper_is_read_back_from_the_hardness_it_left(slug, fresh_hrc):
    steel, fresh = STEELS[slug], np.array([[fresh_hrc]])
    curve = steel.tempered
    hour_s = 3600.0 * curve.time_h.value if curve else 3600.0
    left = tempered(steel, middle(steel), fresh, np.array([[580.0]]), hour_s, MIDDLE).item()
    # How hard the quench left a bar is not known: that moves the reading by some 20 °C.
    assert hottest_temper_c(steel, left, hour_s) == pytest.approx(580.0, abs=25.0)


def test_what_no_temper_leaves_so_hard_is_unknown_and_ageing_is_read_too():
    assert hottest_temper_c(STEELS["wear-plate-400"], 60.0, 3600.0) is None
    assert hottest_temper_c(STEELS["40crmnmo7"], 70.0, 3600.0) is None
    assert hottest_temper_c(STEELS["x5crnicunb16-4"], 38.0, 3600.0) == 552.0


def falls_at_its_end(steel):
    if steel.tempered is None or steel.hardened is None:
        return False
    (_, before), (_, last) = steel.tempered.curve_hrc.points[-2:]
    return bool(steel.hardened.as_quenched_hrc) and last < before


@pytest.mark.parametrize("slug", [s for s, steel in STEELS.items() if falls_at_its_end(steel)])
def test_a_day_at_the_end_of_a_curve_softens_on(slug):
    steel = STEELS[slug]
    fresh = np.array([[steel.hardened.as_quenched_hrc.middle]])
    end = np.array([[steel.tempered.curve_hrc.points[-1][0]]])
    hrc = [
        tempered(steel, middle(steel), fresh, end, 3600.0 * hours, MIDDLE).item()
        for hours in (1.0, 2.0, 8.0, 24.0)
    ]
    assert (np.diff(hrc) < 0.0).all()


def test_the_curve_of_high_alloy_steel_is_less_sure():
    low = {name: -np.ones(1) for name in MIDDLE}
    rich, lean = (
        middle_hrc(slug, 0.0, 150.0) - middle_hrc(slug, 0.0, 150.0, low)
        for slug in ("x105crmo17", "105wcr6")
    )
    assert rich > 1.2 * lean


def test_a_cold_temper_lies_between_the_quench_and_the_first_point_of_the_curve():
    steel = STEELS["x153crmov12"]
    first = steel.tempered.curve_hrc.points[0]
    assert whole_curve(steel)[0].tolist() == [100.0, steel.hardened.as_quenched_hrc.middle]
    assert first[1] < middle_hrc("x153crmov12", 1010.0, 150.0) < 63.0


def test_a_steel_without_a_curve_has_none_to_begin():
    with pytest.raises(ValueError, match="c45 has no tempering curve"):
        whole_curve(STEELS["c45"])
