import numpy as np
import pytest

from selector.decision.firmness import CONCENTRATION, dirichlet, firmness
from selector.decision.standing import standing_of
from selector.requirement.priority import CRITERIA


@pytest.fixture(scope="module")
def standing(advice):
    return standing_of(advice.options, advice.asked, advice.ranges)


@pytest.fixture(scope="module")
def weights(advice):
    return np.array([advice.weights[name] for name in CRITERIA])


def test_scattered_weights_add_up_and_keep_their_mean_and_spread():
    given = np.array([0.5, 0.3, 0.2, 0.0])
    sets = dirichlet(given, 20_000)
    np.testing.assert_allclose(sets.sum(axis=1), 1.0)
    np.testing.assert_allclose(sets.mean(axis=0), given, atol=0.003)
    spread = np.sqrt(given * (1.0 - given) / (CONCENTRATION + 1.0))
    np.testing.assert_allclose(sets.std(axis=0), spread, rtol=0.03)
    assert not sets[:, 3].any()


def test_one_weight_alone_has_nothing_to_scatter():
    np.testing.assert_array_equal(dirichlet(np.array([1.0, 0.0]), 3), [[1.0, 0.0]] * 3)


def test_weights_scatter_the_same_at_every_call():
    given = np.array([0.7, 0.3])
    np.testing.assert_array_equal(dirichlet(given, 5), dirichlet(given, 5))


def test_shares_add_up(standing, weights):
    known = firmness(standing, weights)
    for shares in (known.first, known.by_outcome, known.by_weights):
        assert shares.sum() == pytest.approx(1.0)
        assert (shares >= 0.0).all()
    assert known.three.sum() == pytest.approx(3.0)
    assert (known.three >= known.first).all()


def test_more_sets_of_weights_give_the_same_answer(standing, weights):
    few, many = firmness(standing, weights), firmness(standing, weights, each=10)
    np.testing.assert_allclose(few.first, many.first, atol=0.03)
    np.testing.assert_allclose(few.three, many.three, atol=0.03)
    np.testing.assert_allclose(few.regret_money, many.regret_money, rtol=0.1, atol=0.5)


def test_regret_is_never_a_gain_and_nothing_for_the_only_option(standing, weights):
    known = firmness(standing, weights)
    assert (known.regret >= 0.0).all()
    assert (known.regret_money >= 0.0).all()
    assert (known.regret_money_p95 >= 0.0).all()
    alone = firmness(standing.of((0,)), weights)
    assert alone.first.tolist() == alone.three.tolist() == [1.0]
    assert alone.regret_money.tolist() == [0.0]


def test_a_spoilt_part_loses_what_it_has_cost(standing, weights):
    # Two alike, but the second never comes right: choosing it wastes its cost every time.
    two = standing.of((0, 0))
    two.right[0], two.right[1] = True, False
    two.cost[:], two.claims.ease[:] = 20.0, 0
    known = firmness(two, weights)
    assert known.first.tolist() == [1.0, 0.0]
    assert known.regret_money.tolist() == [0.0, 20.0]
