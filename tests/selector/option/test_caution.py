from dataclasses import replace

import numpy as np
import pytest

from selector.job.treatment import NO_TEMPER, Temper
from selector.option.caution import BY_MEANS, STEPS, by_step, of_option, of_steel
from tests.dog import asked


@pytest.mark.parametrize("key", sorted({key for keys in BY_MEANS.values() for key in keys}))
def test_every_id_named_here_is_on_the_one_list(catalog, key):
    assert key in catalog.cautions


def test_every_step_of_the_list_has_its_place(catalog):
    assert {caution.step for caution in catalog.cautions.values()} <= set(STEPS)


def test_they_come_once_each_in_the_order_of_the_work(catalog):
    ids = ["oil-fire", "struck-head-chips", "local-codes", "oil-fire"]
    found = by_step(ids, catalog.cautions)
    assert {key for key, _ in found} == set(ids)
    assert len(found) == 3
    steps = [STEPS.index(caution.step) for _, caution in found]
    assert steps == sorted(steps)


def test_slow_cooling_harms_a_steel_only_when_tempered_high(catalog):
    key = "temper-embrittlement-slow-cool"
    steel = next(
        s for s in catalog.steels.values() if key in {limit.caution for limit in s.limitation}
    )
    assert key not in of_steel(steel)
    assert key not in of_steel(steel, NO_TEMPER)
    high = Temper("furnace", 550.0, 3600.0)
    assert key in of_steel(steel, high)


@pytest.mark.parametrize(("hrc", "warned"), [(38.0, False), (41.0, True)])
def test_hard_steel_that_is_stripped_of_plating_takes_hydrogen(advice, hrc, warned):
    prediction = advice.options[0].judged.prediction
    hard = replace(prediction, surface_hrc=np.full(8, hrc))
    plated = asked({"part.condition": "plated"})
    assert ("hydrogen-embrittlement" in of_option(plated, hard)) == warned


def test_bath_source_and_route_bring_theirs(advice):
    for option in advice.options:
        work, ids = option.treatment, of_option(advice.asked, option.judged.prediction)
        assert set(work.route.cautions) <= set(ids)
        if work.medium is not None and work.route.place == "workshop":
            assert set(work.medium.cautions) <= set(ids)
        if work.source is not None:
            assert set(work.source.cautions) <= set(ids)
