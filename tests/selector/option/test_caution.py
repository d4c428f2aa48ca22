import pytest

from selector.option.caution import (
    BY_CONDITION,
    BY_MEANS,
    BY_SHAPE,
    HARD_FACE,
    SOFT_HEAD,
    STEPS,
    cautions,
    of_part,
)
from tests.dog import GONE, asked
from tests.procedure import doing

NAMED = {
    key
    for table in (BY_CONDITION, BY_MEANS, BY_SHAPE)
    for keys in table.values()
    for key in keys
}


@pytest.mark.parametrize("key", sorted(NAMED))
def test_every_id_named_here_is_on_the_one_list(catalog, key):
    assert key in catalog.cautions


def test_every_step_of_the_list_has_its_place(catalog):
    assert {caution.step for caution in catalog.cautions.values()} <= set(STEPS)


def test_one_on_the_list_is_a_sentence_with_a_source(catalog):
    for key, caution in catalog.cautions.items():
        assert caution.fact.text[-1] in ".!)", key
        assert caution.fact.source in catalog.sources


def test_a_part_without_an_option_brings_its_own(job):
    assert [key for key, _ in cautions(job, [])] == ["local-codes"]


STRUCK = {"load.impact": "hammered"}
BLOCK = {
    **STRUCK,
    "part.name": "bench block",
    "part.section": [{"shape": "flat", "size": "20 mm", "width": "65 mm", "length": "65 mm"}],
    "part.feature": [],
    "zone.0.wear": "edge-impact",
    "zone.1": GONE,
    "load.torque": GONE,
}


@pytest.mark.parametrize(
    ("changes", "warned", "silent"),
    [
        (STRUCK, SOFT_HEAD, HARD_FACE),
        (BLOCK, HARD_FACE, SOFT_HEAD),
        ({**BLOCK, "part.feature": [{"kind": "edge", "at": "0 mm"}]}, SOFT_HEAD, HARD_FACE),
    ],
)
def test_a_head_is_left_soft_where_a_part_has_one_besides_its_hard_face(
    changes, warned, silent
):
    ids = of_part(asked(changes))
    assert warned in ids
    assert silent not in ids


def test_nobody_is_told_how_to_leave_a_head_that_he_is_not_to_make():
    ids = of_part(asked({**STRUCK, "safety_use": "fast rotation"}))
    assert not {SOFT_HEAD, HARD_FACE} & set(ids)


@pytest.mark.parametrize(
    ("route", "medium", "changes", "warned"),
    [("through-torch", "oil", {}, True), ("prehard-bar", None, {}, False),
     ("prehard-bar", None, {"safety_use": "lifting"}, False)],
)  # fmt: skip
def test_a_bath_tempts_only_where_something_is_quenched(route, medium, changes, warned):
    sold = "prehard" if route == "prehard-bar" else None
    found = doing("42crmo4", route, medium, changes, sold)
    assert ("water-for-oil-steel" in dict(cautions(found.job, [found.prediction]))) is warned
