"""What is kept for records goes by which record it is, and is let go in turn."""

import gc
import weakref
from types import MappingProxyType

import pytest

from selector.per_record import per_record


class Record:
    """Equal to every other of its kind."""

    def __eq__(self, other):
        return isinstance(other, Record)

    __hash__ = None


@pytest.fixture
def counted():
    """A kept function that counts its calls, of the latest two records."""
    calls = []

    @per_record(2)
    def work(record, *, flag=False):
        calls.append(type(record))
        return None if flag else len(calls)

    return work, calls


def test_one_record_is_worked_out_once_and_its_equal_apart(counted):
    work, calls = counted
    one, other = Record(), Record()
    assert work(one) == work(one) == 1
    assert work(other) == 2
    assert len(calls) == 2


def test_a_flag_tells_answers_apart_and_nothing_is_an_answer(counted):
    work, calls = counted
    one = Record()
    assert work(one, flag=True) is None
    assert work(one, flag=True) is None
    assert work(one, flag=False) == 2
    assert len(calls) == 2


def test_a_record_is_held_until_its_turn_is_over(counted):
    """No other can be taken for it: its number is not given out while an answer stands."""
    work, _ = counted
    one = Record()
    seen = weakref.ref(one)
    work(one)
    del one
    gc.collect()
    assert seen() is not None
    work(Record())
    work(Record())
    gc.collect()
    assert seen() is None


def test_another_kind_is_worked_out_at_every_call():
    """A dictionary may be changed between two calls, a view of one that nobody holds cannot."""
    counted = per_record(2, MappingProxyType)(sum)
    given = {1: "one"}
    frozen = MappingProxyType({1: "one"})
    assert (counted(given), counted(frozen)) == (1, 1)
    given[2] = "two"
    assert (counted(given), counted(frozen)) == (3, 1)
