import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.hazards.distortion import bow, size_change

ORDER = ("brine", "water", "polymer", "fast-oil", "oil", "air")  # published


def test_media_move_a_shaft_in_the_published_order():
    bows = [float(bow(200.0, 12.0, medium).median_mm) for medium in ORDER]
    assert bows == sorted(bows, reverse=True)


def test_an_end_turned_in_the_flame_and_dipped_keeps_the_shaft_straight():
    through = float(bow(250.0, 12.0, "water").median_mm)
    local = float(bow(250.0, 12.0, "water", "local-turned", 25.0).median_mm)
    assert through > 0.3
    assert local < 0.03
    assert float(bow(250.0, 12.0, "water", "local-still", 25.0).median_mm) == pytest.approx(
        4 * local
    )


def test_as_bought_nothing_moves():
    untouched = bow(250.0, 12.0, "water", "none", stressed=True)
    assert (float(untouched.median_mm), untouched.log_sd) == (0.0, 0.0)


@given(st.floats(20.0, 500.0), st.floats(4.0, 40.0), st.floats(1.0, 3.0))
def test_bow_goes_with_length_squared_over_diameter(length, diameter, times):
    short, long = bow([length, length * times], diameter, "oil").median_mm
    assert long / short == pytest.approx(times**2)
    assert float(bow(length, diameter * times, "oil").median_mm) == pytest.approx(short / times)


def test_old_stress_adds_and_heating_cannot_exceed_the_part():
    calm, stressed = bow(200.0, 12.0, "oil", stressed=[False, True]).median_mm
    assert stressed == pytest.approx(1.5 * calm)
    longer = bow(30.0, 12.0, "oil", "local-turned", 90.0).median_mm
    assert longer == bow(30.0, 12.0, "oil", "local-turned").median_mm


def test_growth_goes_water_oil_air_and_with_the_hardened_share():
    water, oil, air = (float(size_change(q).growth_pct) for q in ("water", "oil", "air"))
    assert water > oil > air > 0
    assert float(size_change("oil", 0.5).growth_pct) == pytest.approx(oil / 2)
    assert float(size_change("oil", 0.0).sd_pct) == 0.0
