from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.decision.turn import ENOUGH, turns
from selector.job.candidates import like_conditions_merged, screened
from selector.job.job import resolved
from tests.dog import asked as dog
from tests.dog import only


@pytest.fixture(scope="module")
def job():
    return resolved(dog(), load_catalog())


@pytest.fixture(scope="module")
def going(job):
    pool = screened(job.asked, job.catalog, job.bench)
    return like_conditions_merged(item.treatment for item in pool if item.gate is None)


def test_each_treatment_has_its_turn_once(going, job):
    taken = [work for turn in turns(going, job) for work in turn.treatments]
    assert sorted(work.label for work in taken) == sorted(work.label for work in going)


def test_the_easiest_had_of_a_family_has_the_first_turn(going, job):
    first, rarer, _ = (
        {work.steel.slug for work in turn.treatments} for turn in turns(going, job)
    )
    assert "42crmo4" in first
    families = {work.steel.family for work in turns(going, job)[0].treatments}
    assert {work.steel.family for work in turns(going, job)[1].treatments} <= families
    assert rarer.isdisjoint(first)


def test_a_bar_of_the_rack_is_never_put_off(going, job):
    stock = replace_stock(going)
    first = turns(stock, job)[0].treatments
    assert all(work in first for work in stock)


def replace_stock(going):
    held = object()
    return [replace(work, stock=held) for work in going[:20]]


def test_the_unheard_of_is_weighed_where_little_else_serves(going, job):
    unheard = turns(going, job)[2]
    work = unheard.treatments[0]
    few = MappingProxyType({("family", str(n)): None for n in range(ENOUGH - 1)})
    assert unheard.needless(work, few) is None
    many = MappingProxyType({("family", str(n)): None for n in range(ENOUGH)})
    assert unheard.needless(work, many).name == "custom"


def test_a_rarer_near_equal_is_weighed_where_none_of_its_family_serves():
    """Asked for by name it is alone, so nothing serves before it."""
    alone = advise(dog(), steel="C50")
    weighed = {option.treatment.steel.slug for option in alone.options}
    gates = {item.gate.name for item in (*alone.rejected, *alone.apart)}
    assert weighed == {"c50"} or "near" not in gates


def test_what_is_left_out_says_which_near_equal_serves():
    alike = (s.slug for s in load_catalog().steels.values() if s.family in {"cr-mo", "c-mn"})
    found = advise(dog(), only(*alike))
    gates = [item.gate for item in found.rejected if item.gate.name == "near"]
    assert gates
    assert all("easier had" in gate.text for gate in gates)
