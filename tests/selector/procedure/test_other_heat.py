from tests.procedure import KILN, at, steps_of


def test_an_aged_part_has_its_heat_and_no_quench():
    steps = steps_of("x5crnicunb16-4", "age-harden", None, KILN)
    (ageing,) = at(steps, "heat")
    assert 480 <= ageing.temperature_c <= 625
    assert not at(steps, "quench")
