import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.tempered import hardened_from, tempered

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
