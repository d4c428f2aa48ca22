import pytest

from catalog import load_catalog
from selector.procedure import practice

STEELS = load_catalog().steels.values()


@pytest.mark.parametrize("kind", practice.PREHEAT_C)
def test_a_preheat_lies_well_below_the_hardening_heat(kind):
    heats = [s.hardened.temperature_c.low for s in STEELS if s.kind == kind and s.hardened]
    assert heats
    # The first serves all steels of the kind, the last those that are hardened hottest: a
    # preheat within 100 °C of a steel's own heat is no step of its procedure.
    assert min(practice.PREHEAT_C[kind]) < min(heats) - 80
    assert max(practice.PREHEAT_C[kind]) < max(heats) - 80


def test_stress_relief_does_not_harden_and_prehard_bar_keeps_its_temper():
    assert practice.RELIEF_PREHARD_C < practice.RELIEF_C < practice.SOFTEN_C < 723
