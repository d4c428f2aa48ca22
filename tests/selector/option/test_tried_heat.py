import numpy as np

from catalog import load_catalog
from selector.hardening.bath_response import POSITIONS
from selector.job.job import resolved
from selector.option.preparation import prepare
from selector.option.set_up import alike, at_torch
from selector.option.tried_heat import zone_hrc
from selector.torch.probe import probes
from tests.dog import asked, treatment_of

JOB = resolved(asked(), load_catalog())
AT = at_torch(JOB, alike(treatment_of(JOB, "42crmo4", "local-torch", "oil")))
WHERE = AT.task, AT.past_mm, AT.quench
PLACES = probes(AT.task.part, POSITIONS)


def tried(heats_c, holds_s, met=(850.0, "ferrite-pearlite", "oil", None)):
    return zone_hrc(AT.work.steel, met, WHERE, PLACES, (heats_c, holds_s))


def test_a_heat_and_a_place_have_a_hardness_each_and_too_cold_a_heat_hardens_nothing():
    cold, hot = tried((650.0, 850.0), (20.0, 20.0))
    assert cold.shape == hot.shape == (PLACES.in_zone,)
    assert hot.min() > cold.max() + 20.0


def test_the_heat_that_is_chosen_comes_out_as_it_was_tried():
    """The set-up that was tried is the one that is forecast, rim for rim."""
    ready, chosen = prepare(AT.work, JOB.middle()), AT.set_up
    met = (ready.heat.target_c, ready.heat.structure, ready.heat.medium_class, None)
    hrc = tried((chosen.heat_c + AT.error.shift_c,), (chosen.hold_s,), met)
    np.testing.assert_allclose(ready.fresh.hrc[0, 0], hrc[0, 0], atol=1e-9)
    np.testing.assert_allclose(ready.fresh.hrc[0, -1], hrc[0, -1], atol=1e-9)


def test_what_was_tried_is_looked_up_and_another_structure_is_another_question():
    once = tried((820.0,), (5.0,))
    assert tried((820.0,), (5.0,)) is once
    rounder = tried((820.0,), (5.0,), (850.0, "spheroidised", "oil", None))
    assert rounder.max() < once.max()
