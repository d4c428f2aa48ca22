import pytest

from tests.procedure import KILN, at, steps_of


def test_a_pack_has_its_hours_and_a_second_heat():
    steps = steps_of("16mncr5", "pack-carburise", "oil", KILN)
    pack, hours = at(steps, "case")
    assert "never barium" in pack.action
    assert hours.temperature_c == pytest.approx(920)
    assert 4 * 60 <= hours.minutes <= 10 * 60
    assert at(steps, "heat")[0].temperature_c == 800
    assert "barium-poison" in pack.cautions


def test_compound_is_dipped_red_and_outdoors():
    steps = steps_of("070m20", "case-compound", "water")
    assert "out of doors" in at(steps, "set-up")[0].action
    (dip,) = at(steps, "case")
    assert dip.times == 3
    assert "cyanide-refused" in dip.cautions
