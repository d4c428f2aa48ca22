from types import SimpleNamespace

import pytest

from selector.gate import Gate
from selector.trial.subject import _quantity


@pytest.mark.parametrize(
    ("shares", "read"),
    [
        ({"hard_enough": 0.99, "depth": 0.98}, "surface"),
        ({"hard_enough": 0.95, "depth": 0.90}, "depth_mm"),
        ({"cracking": 0.80, "depth": 0.90}, "crack_rate"),
        ({"movement": 0.10, "not_too_hard": 0.90}, "surface"),
    ],
)
def test_what_an_option_fails_by_most_often_is_read(shares, read):
    """Hardness where nothing fails often, and where a coupon would not show what does."""
    gates = [Gate(name, "marginal", "", share) for name, share in shares.items()]
    assert _quantity(SimpleNamespace(judged=SimpleNamespace(gates=gates))) == read
