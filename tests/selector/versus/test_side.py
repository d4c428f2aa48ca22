from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from selector.decision.option import scorer_of
from selector.job.job import resolved
from selector.option.prediction import predict
from selector.option.preparation import prepare
from selector.option.reference_bar import reference_cost
from selector.option.temper_choice import Choice
from selector.versus.axis import lines
from selector.versus.option_id import option_of
from selector.versus.side import Pair, Side
from tests.dog import asked, only

CATALOG = only("c45", "42crmo4", "s235")
CAREFUL = "c45/cold-drawn/through-torch.oil/oven-200c-60min"
SIMPLE = "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min"
SENT_OUT = {"workshop.subcontract": True}


def near(changes=None):
    return resolved(asked({**SENT_OUT, **(changes or {})}), CATALOG)


def side(name, job):
    treatment, temper = option_of(name, job)
    ready = prepare(treatment, job)
    return Side(ready, predict(ready, temper), Choice(temper, None, 50.0, 2.0))


@cache
def here():
    """Return the job as it stands."""
    return near()


@cache
def pair():
    """Return two options of that job."""
    return Pair(side(CAREFUL, here()), side(SIMPLE, here()), here())


def test_a_bill_made_out_anew_is_the_bill_of_the_prediction():
    for one, bill in zip(pair().sides, pair().bills(), strict=True):
        assert bill.cost == pytest.approx(one.prediction.bill.cost)


def test_cracking_changes_rate_and_cracks_alone():
    one = pair().first.cracking(0.5)
    assert np.mean(one.prediction.crack.cracked) == pytest.approx(0.5, abs=0.02)
    assert np.all(one.prediction.surface_hrc == pair().first.prediction.surface_hrc)


@pytest.mark.parametrize(
    ("there", "anew"),
    [
        (lambda: pair().of_quantity(70), lambda: near({"part.quantity": 70})),
        (
            lambda: pair().at_prices({"labour_per_h": 90.0}),
            lambda: resolved(
                asked(SENT_OUT),
                replace(
                    CATALOG, prices=CATALOG.prices.model_copy(update={"labour_per_h": 90.0})
                ),
            ),
        ),
    ],
    ids=["quantity", "prices"],
)
def test_what_a_job_keeps_reads_neither_quantity_nor_prices(there, anew):
    """The memo is shared along an axis; a job of its own must give the same figures."""
    pair().options()
    job = anew()
    fresh = Pair(side(CAREFUL, job), side(SIMPLE, job), job)
    for one, other in zip(there().options(), fresh.options(), strict=True):
        np.testing.assert_array_equal(one.judged.values, other.judged.values)
        np.testing.assert_array_equal(one.scores, other.scores)
        assert one.judged.gates == other.judged.gates


@pytest.mark.parametrize("budget", [None, 60.0], ids=["open", "budget"])
def test_scored_along_an_axis_is_as_judged_anew(budget):
    job = near({} if budget is None else {"limit.budget": budget})
    two = Pair(side(CAREFUL, job), side(SIMPLE, job), job)
    for line in lines(two):
        for x in (line.ends[0], line.now, line.ends[1]):
            there = line.at(x)
            anew = tuple(option.score for option in there.options())
            scorer = scorer_of(there.job, reference_cost(there.job))
            assert there.scores(scorer) == anew, (line.axis, x)
