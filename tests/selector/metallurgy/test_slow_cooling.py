import pytest

from selector.metallurgy.slow_cooling import slow_cooling_embrittles

NICKEL_CHROMIUM = {"Ni": 3.4, "Cr": 0.8, "Mn": 0.5}


def test_nickel_chromium_steel_is_the_old_case_and_molybdenum_its_cure():
    assert slow_cooling_embrittles(NICKEL_CHROMIUM)
    assert not slow_cooling_embrittles({**NICKEL_CHROMIUM, "Mo": 0.3})
    assert not slow_cooling_embrittles({**NICKEL_CHROMIUM, "W": 0.8})


@pytest.mark.parametrize(
    "held",
    [{"Mn": 0.65, "Cr": 0.4, "Ni": 0.4}, {"Mn": 0.3}, {"Cr": 5.0, "Mn": 1.5}, {"Cr": 13.0}],
)
def test_plain_and_high_chromium_steel_is_free_of_it(held):
    assert not slow_cooling_embrittles(held)
