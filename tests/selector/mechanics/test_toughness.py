import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.toughness import CLASSES, impact_class, snap_likelihood


@pytest.mark.parametrize(
    ("steel", "energy_j", "notch", "expected"),
    [
        ("O1 at 204 °C", 41.0, "charpy-c", "medium"),
        ("A2", 53.0, "charpy-c", "medium"),
        ("D2", 28.0, "charpy-c", "low"),
        ("L6 at 316 °C", 92.0, "charpy-c", "high"),
        ("S7", 169.0, "charpy-c", "very-high"),
        ("440C", 9.0, "charpy-v", "low"),
        ("L6 at 54 HRC", 12.0, "charpy-v", "medium"),
        ("4140 at 595 °C", 93.0, "izod", "very-high"),
        ("S7 unnotched", 309.0, "unnotched", "very-high"),
    ],
)
def test_printed_energies_sort_into_classes_by_their_own_notch(
    steel, energy_j, notch, expected
):
    assert impact_class(energy_j, notch) == expected, steel


def test_the_same_energy_means_different_things_by_notch():
    assert {impact_class(41.0, "charpy-c"), impact_class(41.0, "charpy-v")} == {
        "medium",
        "high",
    }


@given(st.floats(40.0, 66.0), st.sampled_from(CLASSES))
def test_harder_snaps_sooner_and_a_blow_makes_it_worse(hardness, toughness):
    def risk(hrc, impact):
        return float(snap_likelihood(hrc, toughness, impact, 250.0).probability)

    assert risk(hardness, "none") < risk(hardness + 1, "none")
    assert risk(hardness, "none") < risk(hardness, "light") < risk(hardness, "hammered")


def test_each_class_helps():
    risks = [float(snap_likelihood(58.0, c, "hammered", 260.0).probability) for c in CLASSES]
    assert risks == sorted(risks, reverse=True)


def test_struck_o1_drawn_by_good_practice_lasts_and_straw_chips():
    good, straw = snap_likelihood(
        [57.0, 62.0], "medium", "hammered", [280.0, 200.0]
    ).probability
    assert good < 0.05
    assert straw >= 0.5


def test_an_embrittling_temper_costs_one_class():
    embrittled = snap_likelihood(52.0, "high", "hammered", 320.0, embrittled=True)
    lower = snap_likelihood(52.0, "medium", "hammered", 320.0)
    assert embrittled.probability == lower.probability


def test_a_notch_costs_hardness():
    plain, notched = snap_likelihood(58.0, "medium", "light", 230.0, [1.0, 2.0]).margin_hrc
    assert plain - notched == pytest.approx(3.0)


def test_tempered_below_150_c_or_not_at_all_is_unknown():
    answer = snap_likelihood(62.0, "medium", "none", [np.nan, 149.0, 150.0])
    assert np.isnan(answer.probability[:2]).all()
    assert np.isfinite(answer.probability[2])
    assert answer.basis == "estimated"


def test_a_low_temper_costs_a_class_little_by_little():
    margin = snap_likelihood(62.0, "medium", "none", [150.0, 165.0, 180.0, 250.0]).margin_hrc
    lower = snap_likelihood(62.0, "low", "none", 180.0).margin_hrc
    assert margin[0] == lower < margin[1] < margin[2] == margin[3]
