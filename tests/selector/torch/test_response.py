from types import SimpleNamespace

import numpy as np
import pytest

from selector.torch.response import Torched


@pytest.mark.parametrize(
    ("under_mm", "turned_round", "end_mm"),
    [(np.inf, False, 30.0), (20.0, False, 20.0), (np.inf, True, 70.0), (20.0, True, 80.0)],
)
def test_a_part_is_hard_no_farther_than_it_is_hot_and_under(under_mm, turned_round, end_mm):
    """A part of 100 mm that is hot to 30 mm from its end, counted from either end."""
    along_mm = np.arange(5.0, 100.0, 10.0)
    part = SimpleNamespace(
        grid=SimpleNamespace(along_mm=along_mm),
        _surface_peak_c=np.where(along_mm < 30.0, 850.0, 300.0),
        whole=SimpleNamespace(under_mm=under_mm),
        part=SimpleNamespace(turned_round=turned_round),
        long_mm=100.0,
    )
    assert Torched.hard_ends_mm(part, 740.0) == (end_mm,)
