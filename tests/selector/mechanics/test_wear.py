import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.wear import carbide_life, carbon_life, card_cut_mm, relative_life

HARDNESS = st.floats(150.0, 850.0)
KINDS = st.sampled_from(["sliding", "abrasive"])


@given(HARDNESS, HARDNESS, KINDS)
def test_the_ratio_turned_round_is_its_inverse(first, second, wear):
    there, back = relative_life(first, second, wear), relative_life(second, first, wear)
    assert float(there.ratio * back.ratio) == pytest.approx(1.0)
    assert float(there.log_sd) == pytest.approx(float(back.log_sd))


@given(HARDNESS, KINDS)
def test_the_same_hardness_lasts_the_same_for_certain(hardness, wear):
    same = relative_life(hardness, hardness, wear, 1000.0)
    assert float(same.ratio) == 1.0
    assert float(same.log_sd) == 0.0


def test_twice_the_hardness_gives_twice_the_life_sliding_and_less_against_grit():
    assert float(relative_life(600.0, 300.0).ratio) == pytest.approx(2.0)
    assert 1 < float(relative_life(600.0, 300.0, "abrasive").ratio) < 2.0


def test_outgrowing_the_grit_lengthens_life_by_more_than_the_hardness():
    beyond = float(relative_life(900.0, 500.0, "abrasive", 800.0).ratio)
    assert beyond > 5 * float(relative_life(900.0, 500.0, "abrasive").ratio)
    against_carbide = relative_life(900.0, 500.0, "abrasive", 2600.0).ratio
    assert float(against_carbide) == pytest.approx(
        float(relative_life(900.0, 500.0, "abrasive").ratio)
    )


CARBON = st.floats(0.2, 2.0)


@given(CARBON, CARBON)
def test_more_carbon_never_shortens_the_life_of_an_edge(first, second):
    computed = carbon_life(first, second)
    assert (computed.ratio >= 1) == (first >= second)
    assert float(computed.ratio * carbon_life(second, first).ratio) == pytest.approx(1.0)
    assert float(computed.log_sd) >= 0


@given(st.floats(0.9, 2.0))
def test_a_struck_edge_gains_nothing_beyond_chisel_steel(carbon):
    assert float(carbon_life(carbon, 0.9, struck=True).ratio) == 1.0
    assert float(carbon_life(carbon, 0.9).ratio) >= 1.0


def test_one_percent_carbon_outlasts_medium_carbon_by_half():
    assert float(carbon_life(1.0, 0.45).ratio) == pytest.approx(1.5, abs=0.02)


VOLUME = st.floats(0.0, 20.0)
KIND = st.sampled_from(["M7C3", "M6C", "MC"])


@given(VOLUME, VOLUME, KIND)
def test_more_hard_carbide_never_shortens_life_under_grit(few, more, kind):
    there = carbide_life({kind: few}), carbide_life({kind: few + more})
    assert 1 <= there[0].ratio <= there[1].ratio
    assert there[0].log_sd <= there[1].log_sd


@given(st.floats(55.0, 66.0), st.floats(20.0, 50.0), st.floats(0.5, 5.0))
def test_a_harder_and_a_keener_edge_cuts_more(hardness, angle, step):
    here = card_cut_mm(hardness, angle, {})
    assert (
        card_cut_mm(hardness + step, angle, {}) > here > card_cut_mm(hardness, angle + step, {})
    )


@given(CARBON, CARBON, st.floats(-2.0, 2.0))
def test_a_sampled_life_is_that_of_the_sampled_exponent(first, second, normal):
    computed = carbon_life(first, second).sampled(np.array(normal))
    assert float(computed) == pytest.approx((first / second) ** (0.5 + 0.2 * normal))
    assert float(carbon_life(first, second).sampled(np.array(0.0))) == pytest.approx(
        float(carbon_life(first, second).ratio)
    )
