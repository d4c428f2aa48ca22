import numpy as np
import pytest

from selector import sampling
from selector.decision.measuring import explained, ranked

NORMALS = sampling.shared()
A, B, C = (NORMALS[name] for name in ("eye_bias", "load", "bath_bias"))


def test_independent_causes_share_the_variance_as_the_squares_of_their_parts():
    # Closed form: 9 of 10 parts and 1.
    gap = 3.0 * A + B
    assert explained(gap, [A]) == pytest.approx(0.9, abs=0.02)
    assert explained(gap, [B]) == pytest.approx(0.1, abs=0.02)
    assert explained(gap, [A, B]) == pytest.approx(1.0, abs=1e-9)


def test_what_has_nothing_to_do_with_it_explains_next_to_nothing():
    gap = 3.0 * A + B
    assert explained(gap, [C]) < 0.01
    assert explained(gap, [NORMALS[n] for n in ("delay", "rework", "price_level")]) < 0.02


def test_an_optimum_between_the_ends_is_seen():
    assert explained(A**2, [A]) == pytest.approx(1.0)


def test_nothing_to_explain_or_nothing_that_moves_is_nothing():
    assert explained(np.ones_like(A), [A]) == 0.0
    assert explained(A, []) == 0.0
    assert explained(A, [np.zeros_like(A)]) == 0.0


def test_groups_come_the_largest_first():
    rows = ranked(3.0 * A + B, {"load": [B], "eye": [A], "none": []})
    assert [name for name, _ in rows] == ["eye", "load", "none"]
