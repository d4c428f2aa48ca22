from dataclasses import replace

import numpy as np

from selector.decision.near_tie import DEARER, NEAR, Claims, by_ease, leaders, standings, tied

SURE = 0.9


def claims(ease, *, back=0.0, enough=1.0, mark=SURE, cost=1.0) -> Claims:
    """Return claims of as many options as have an ease, alike but for what is given."""
    size = np.ones(len(ease))
    each = back * size, np.array(ease), enough * size, mark * size, cost * size
    return Claims(*each, DEARER * cost * size)


def first(scores, held) -> int:
    return int(leaders(held, np.array(scores)[:, None])[0, 0])


def test_the_easier_of_near_equals_leads_and_no_other():
    assert first([0.70, 0.70 - 0.9 * NEAR], claims([1, 0])) == 1
    assert first([0.70, 0.70 - 1.1 * NEAR], claims([1, 0])) == 0
    assert first([0.70, 0.70 - 0.9 * NEAR], claims([0, 0])) == 0


def test_what_is_not_sure_enough_ties_with_nothing():
    held = claims([1, 0], enough=np.array([1.0, SURE - 0.01]))
    assert first([0.70, 0.69], held) == 0


def test_what_costs_much_more_ties_with_nothing():
    assert first([0.70, 0.69], claims([1, 0], cost=np.array([10.0, 9.9 * DEARER]))) == 1
    assert first([0.70, 0.69], claims([1, 0], cost=np.array([10.0, 10.1 * DEARER]))) == 0


def test_what_is_set_back_leads_only_before_what_scores_less_still():
    held = claims([0, 0], back=np.array([0.1, 0.0]))
    assert first([0.75, 0.70], held) == 1
    assert first([0.85, 0.70], held) == 0


def test_all_places_are_filled_once_in_every_case():
    scores = np.random.default_rng(1).uniform(size=(5, 30))
    order = leaders(claims([2, 0, 1, 0, 2]), scores, 5)
    assert all(sorted(column) == list(range(5)) for column in order.T)
    assert leaders(claims([0]), scores[:1], 3).shape == (1, 30)


def test_what_stands_above_another_ties_with_it():
    held = claims([0, 0])
    left = standings(held, np.array([[0.4], [0.9]]))
    assert tied(held, left, np.array([0]))[:, 0].tolist() == [True, True]
    assert tied(held, left, np.array([1]))[:, 0].tolist() == [False, True]


def test_ease_decides_only_against_what_scores_no_less_and_is_near():
    assert by_ease(claims([0, 1]), np.array([0.68, 0.70]))
    assert not by_ease(claims([0, 1]), np.array([0.72, 0.70]))
    assert not by_ease(claims([0, 1]), np.array([0.60, 0.70]))
    assert not by_ease(claims([1, 1]), np.array([0.68, 0.70]))
    dear = claims([0, 1], cost=np.array([10.1 * DEARER, 10.0]))
    assert not by_ease(dear, np.array([0.68, 0.70]))


def test_of_a_few_each_keeps_its_own():
    held = claims([3, 1, 2], back=np.array([0.0, 0.1, 0.2])).of([2, 0])
    assert held.ease.tolist() == [2, 3]
    assert held.back.tolist() == [0.2, 0.0]


def test_what_sets_no_standard_makes_nothing_too_dear_to_tie():
    held = claims([1, 0], cost=np.array([10.0, 30.0]))
    assert first([0.70, 0.69], held) == 0
    assert first([0.70, 0.69], replace(held, dear=np.array([np.inf, 60.0]))) == 1
