"""What is kept goes by record or by its arguments, and is let go in turn."""

import gc
import weakref
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
import pytest

from selector.kept import array_bytes, kept_within, per_record

HALF_MB = 2**16  # numbers of eight bytes


@dataclass(frozen=True)
class Record:
    """One array and another of the same memory."""

    whole: np.ndarray
    part: np.ndarray


@pytest.fixture
def made():
    """A function whose answers take half a megabyte each, two of which fit, and its calls."""
    calls = []

    @kept_within(1.0)
    def work(name, *, halves=1):
        calls.append(name)
        return np.zeros(halves * HALF_MB)

    return work, calls


def test_what_is_kept_is_worked_out_once(made):
    work, calls = made
    assert work("a") is work("a")
    assert calls == ["a"]


def test_what_was_asked_for_least_lately_goes_first(made):
    work, calls = made
    for name in ("a", "b", "a", "c", "a", "b"):
        work(name)
    assert calls == ["a", "b", "c", "b"]


def test_one_answer_beyond_the_bound_is_kept_until_the_next(made):
    work, calls = made
    assert work("a", halves=5) is work("a", halves=5)
    work("b")
    work("a", halves=5)
    assert calls == ["a", "b", "a"]


def test_nothing_is_an_answer_and_takes_no_room():
    calls = []

    @kept_within(1.0)
    def work(name):
        calls.append(name)

    assert work("a") is None
    assert work("a") is None
    assert calls == ["a"]


def test_memory_that_is_shared_counts_once_and_a_part_as_all_it_holds_on_to():
    whole = np.zeros(100)
    assert array_bytes(whole[:1]) == whole.nbytes
    assert array_bytes({"one": (Record(whole, whole[5:]), [np.ones(2)])}) == whole.nbytes + 16
    assert array_bytes("words") == 0


class Named:
    """Equal to every other of its kind."""

    def __eq__(self, other):
        return isinstance(other, Named)

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
    one, other = Named(), Named()
    assert work(one) == work(one) == 1
    assert work(other) == 2
    assert len(calls) == 2


def test_a_flag_tells_answers_apart_and_nothing_is_an_answer(counted):
    work, calls = counted
    one = Named()
    assert work(one, flag=True) is None
    assert work(one, flag=True) is None
    assert work(one, flag=False) == 2
    assert len(calls) == 2


def test_a_record_is_held_until_its_turn_is_over(counted):
    """No other can be taken for it: its number is not given out while an answer stands."""
    work, _ = counted
    one = Named()
    seen = weakref.ref(one)
    work(one)
    del one
    gc.collect()
    assert seen() is not None
    work(Named())
    work(Named())
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
