from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.job.job import resolved
from selector.option.prediction import predict
from selector.option.preparation import prepare
from selector.option.temper_choice import Choice
from selector.versus.axis import at_prices, of_quantity
from selector.versus.option_id import option_of
from selector.versus.side import Side, both
from tests.dog import asked

CATALOG = load_catalog()
CAREFUL = "c45/cold-drawn/through-torch.oil/oven-200c-60min"
SIMPLE = "42crmo4/annealed/subcontract-vacuum.oil/furnace-200c-60min"
SENT_OUT = {"workshop.subcontract": True}


def near(changes=None):
    return resolved(asked({**SENT_OUT, **(changes or {})}), CATALOG)


def side(name, job):
    treatment, temper = option_of(name, job)
    ready = prepare(treatment, job)
    return Side(ready, predict(ready, temper, job), Choice(temper, None, 50.0, 2.0))


JOB = near()
PAIR = (side(CAREFUL, JOB), side(SIMPLE, JOB))


def test_a_bill_drawn_up_anew_is_the_bill_of_the_prediction():
    for one in PAIR:
        assert one.cost(JOB) == pytest.approx(one.prediction.bill.cost)


def test_cracking_changes_rate_and_cracks_alone():
    one = PAIR[0].cracking(0.5)
    assert np.mean(one.prediction.crack.cracked) == pytest.approx(0.5, abs=0.02)
    assert np.all(one.prediction.surface_hrc == PAIR[0].prediction.surface_hrc)


@pytest.mark.parametrize(
    ("there", "anew"),
    [
        (of_quantity(JOB, 70), near({"part.quantity": 70})),
        (
            at_prices(JOB, {"labour_per_h": 90.0}),
            resolved(
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
    both(PAIR, JOB)
    fresh = (side(CAREFUL, anew), side(SIMPLE, anew))
    for one, other in zip(both(PAIR, there), both(fresh, anew), strict=True):
        np.testing.assert_array_equal(one.judged.values, other.judged.values)
        np.testing.assert_array_equal(one.scores, other.scores)
        assert one.judged.gates == other.judged.gates
