import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.extra.numpy import arrays

from selector.decision.comparison import other_methods, places, weighted_sum
from selector.decision.ranking import reference_ideal
from selector.decision.second_opinion import second_opinion
from tests.criteria_library import matrix_of, method

COUNT = 7
EVEN = np.full(COUNT, 1 / COUNT)


@pytest.fixture
def only_orders(monkeypatch):
    """Leave out how firm the orders are, which asks every method many times over."""
    monkeypatch.setattr("selector.decision.second_opinion._invariance", lambda *_: "unasked")


def random_table(seed, options=6):
    rng = np.random.default_rng(seed)
    return rng.beta(0.7, 0.7, (options, COUNT)), rng.dirichlet(np.ones(COUNT))


@pytest.mark.parametrize("seed", range(10))
def test_methods_left_out_order_as_the_weighted_sum(seed):
    merit, weights = random_table(seed, 12)
    matrix = matrix_of(merit, weights)
    ours = places(weighted_sum(merit, weights))
    for name in ("mabac.MABAC", "ram.RAM", "moora.RatioMOORA"):
        assert tuple(method(name).evaluate(matrix).rank_) == ours
    assert tuple(method("aras.ARAS").evaluate(matrix, ideal=np.ones(COUNT)).rank_) == ours


@pytest.mark.usefixtures("only_orders")
def test_each_method_asked_can_disagree_with_every_other():
    """Over 12 tables each pair of orders differs in at least a third."""
    orders = []
    for seed in range(12):
        merit, weights = random_table(seed)
        asked = second_opinion(merit, weights).orders + other_methods(merit, weights)
        orders.append([places(reference_ideal(merit, weights)), *(o.places for o in asked[:5])])
    count = len(orders[0])
    for first in range(count):
        for second in range(1, 5):
            differing = sum(order[first] != order[second] for order in orders)
            assert first == second or differing >= 4


@given(
    arrays(float, (5, COUNT), elements=st.floats(0, 1)),
    arrays(float, COUNT, elements=st.floats(0.01, 1)).map(lambda w: w / w.sum()),
)
@settings(max_examples=10)
def test_one_that_dominates_is_first_by_all(merit, weights):
    merit = 0.1 + 0.6 * merit
    merit[2] = 0.95
    opinion = second_opinion(merit, weights)
    assert len(opinion.orders) == 4
    assert all(order.places[2] == 1 for order in opinion.orders)
    assert "stayed first" in opinion.remark or "no third" in opinion.remark


def test_equal_options_share_every_place_and_the_answer_is_the_same_twice():
    merit, weights = random_table(3)
    twice = merit[[0, 1, 2, 1, 3, 1]]
    opinion = second_opinion(twice, weights)
    assert all(len({order.places[k] for k in (1, 3, 5)}) == 1 for order in opinion.orders)
    assert second_opinion(twice, weights) == opinion


def test_an_order_that_hangs_on_an_also_ran_is_called_less_firm():
    opinion = second_opinion(np.array([[0.0, 1.0], [1.0, 0.0], [0.5, 0.5]]), np.full(2, 0.5))
    assert "of 100 trials" in opinion.remark
    assert "less firm" in opinion.remark


@pytest.mark.parametrize(
    ("merit", "said"),
    [
        (np.ones((1, COUNT)), "only one option"),
        (np.empty((0, COUNT)), "no option"),
        (np.full((4, COUNT), 0.5), "sets the options apart"),
        (np.zeros((4, COUNT)), "sets the options apart"),
    ],
    ids=["one option", "no option", "equal options", "all nil"],
)
def test_nothing_to_compare_is_said_in_a_sentence(merit, said):
    opinion = second_opinion(merit, EVEN)
    assert opinion.orders == ()
    assert said in opinion.remark


@pytest.mark.parametrize(
    "merit",
    [
        np.vstack([np.zeros(COUNT), np.ones(COUNT)]),
        np.tile(np.linspace(0, 1, 4)[:, None], COUNT),
        np.eye(COUNT),
        np.column_stack([np.linspace(0, 1, 5), np.full((5, COUNT - 1), 0.5)]),
    ],
    ids=["two options", "a ladder", "each best in one", "equal columns"],
)
def test_columns_without_spread_nil_and_two_options_are_compared(merit, monkeypatch):
    monkeypatch.setattr("selector.decision.second_opinion.REPEATS", 1)
    for weights in (EVEN, np.eye(COUNT)[0]):
        opinion = second_opinion(merit, weights)
        assert len(opinion.orders) == 4
        assert opinion.remark


@pytest.mark.usefixtures("only_orders")
def test_a_criterion_without_weight_has_no_veto():
    merit, _ = random_table(5)
    weights = EVEN.copy()
    weights[0] = 0.0
    other = merit.copy()
    other[:, 0] = merit[::-1, 0]
    assert second_opinion(merit, weights / weights.sum()) == second_opinion(
        other, weights / weights.sum()
    )
