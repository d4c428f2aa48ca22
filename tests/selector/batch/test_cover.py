"""The exact cover against all covers there are, on small random cases."""

from itertools import combinations
from random import Random

import pytest

from selector.batch.cover import fewest, greedy, least

NAMES = "abcdefgh"


def case(number):
    """Return random demands on eight names, and how much each is disliked."""
    dice = Random(number)  # noqa: S311 - nothing here is secret
    demands = [
        frozenset(dice.sample(NAMES, dice.randint(1, 4))) for _ in range(dice.randint(1, 12))
    ]
    return demands, {name: dice.random() for name in NAMES}


def by_hand(demands, dislike):
    """Return the smallest covers there are, the least disliked first."""
    for count in range(len(NAMES) + 1):
        covers = [
            frozenset(names)
            for names in combinations(NAMES, count)
            if all(demand & set(names) for demand in demands)
        ]
        if covers:
            return sorted(covers, key=lambda cover: sum(dislike[name] for name in cover))
    raise AssertionError


@pytest.mark.parametrize("block", range(4))
def test_the_cover_is_the_smallest_and_of_those_the_least_disliked(block):
    for number in range(40 * block, 40 * (block + 1)):
        demands, dislike = case(number)
        names, proved = fewest(demands, dislike)
        assert proved
        assert names == by_hand(demands, dislike)[0], number


def test_greedy_alone_would_not_do_on_some_of_these():
    worse = [
        number
        for number in range(160)
        if len(greedy(*case(number))) > len(by_hand(*case(number))[0])
    ]
    assert worse


def test_greedy_covers_and_drops_what_is_idle():
    for number in range(160):
        demands, dislike = case(number)
        found = greedy(demands, dislike)
        assert all(demand & found for demand in demands)
        for name in found:
            assert not all(demand & (found - {name}) for demand in demands)


def test_a_demand_met_by_another_is_dropped():
    assert least([frozenset("abc"), frozenset("ab"), frozenset("ab"), frozenset("c")]) == [
        frozenset("c"),
        frozenset("ab"),
    ]


def test_nothing_asked_needs_nothing():
    assert fewest([], {}) == (frozenset(), True)


def test_no_time_leaves_a_cover_that_is_not_called_the_fewest():
    demands, dislike = case(3)
    names, _ = fewest(demands, dislike, longest_s=0.0)
    assert all(demand & names for demand in demands)
