import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.mechanics.wear import relative_life

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
