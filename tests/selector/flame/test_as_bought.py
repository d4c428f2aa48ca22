"""A torch is not needed where bar as bought is hard enough, and such parts are made of it."""

import pytest

from selector.flame.as_bought import as_bought_words, left_as_bought
from selector.job.job import resolved
from selector.requirement import requirement_from
from tests.dog import only, varied, work

SOFT = {
    "part.feature": [],
    "zone.0.wear": "none",
    "zone.0.hardness": {"min": "28 HRC", "max": "34 HRC"},
}
HARDER = {**SOFT, "zone.0.hardness": {"min": "38 HRC", "max": "44 HRC"}}


def job_of(changes, *steels):
    return resolved(requirement_from(varied(changes)), only(*steels), 1)


def test_every_condition_that_is_sold_is_looked_at():
    bare = left_as_bought(job_of(SOFT, "42crmo4"), work("42crmo4", condition="annealed"))
    assert (bare.condition.name, bare.route.kind) == ("prehard", "prehard")
    assert as_bought_words(bare, job_of(SOFT, "42crmo4").leading).startswith("prehard bar is 3")


@pytest.mark.parametrize(
    ("changes", "steel"),
    [(HARDER, "42crmo4"), (HARDER, "55nicrmov7"), (SOFT, "115crv3")],
    ids=["too soft", "nobody makes such a part of die block", "not sold hard"],
)
def test_other_bar_wants_a_heat(changes, steel):
    assert left_as_bought(job_of(changes, steel), work(steel)) is None
