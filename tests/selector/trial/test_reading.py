"""What is read off the coupons says go and stop as the steps of the part do."""

from selector.procedure.heating import heat_times_s, heated
from selector.trial.reading import SNAPPED, heat_reading, snapped_reading
from tests.procedure import doing


def test_a_coupon_comes_to_its_heat_in_the_time_of_the_part():
    do = doing("42crmo4", "local-torch", "oil")
    (reading,) = heat_reading(do)
    assert reading.go in heated(do, do.set_up).action
    least, _, most = heat_times_s(do.set_up.to_heat_s)
    assert (reading.go_low, reading.go_high) == (least, most)


def test_a_snapped_coupon_shows_how_deep_it_must_be_hard():
    do = doing("c45", "local-torch", "water", {"zone.0.depth": "2 mm"})
    reading = snapped_reading(do, counted=True)
    assert reading.test == SNAPPED.slug
    asked = do.lead.depth_mm
    assert asked > 0
    through = do.prediction.hard_through
    assert ("right through" if through else f"{asked:g} mm or more") in reading.go
