import numpy as np
import pytest

from selector import sampling
from selector.trial.lasting import GROUPS, SCATTER, taken_apart

NORMALS = sampling.with_shared("42crmo4")


def test_every_uncertainty_has_one_group_and_is_sampled():
    members = [name for group in GROUPS.values() for name in group]
    assert len(members) == len(set(members))
    assert set(members) <= {*sampling.SHARED, *sampling.STEEL}
    assert set(members) >= SCATTER


def test_what_changes_from_heat_to_heat_is_taken_out():
    lasting = 50.0 + 2.0 * NORMALS["C"]
    parts = taken_apart(lasting + 1.5 * NORMALS["eye_scatter"], NORMALS)
    assert parts.scatter == pytest.approx(1.5, abs=0.1)
    np.testing.assert_allclose(parts.centre, lasting, atol=0.4)


def test_each_group_has_its_share_of_the_variance():
    value = 3.0 * NORMALS["temper_bias"] + 4.0 * NORMALS["bath_bias"]
    share = taken_apart(value, NORMALS).share
    assert share["temper"] == pytest.approx(9 / 25, abs=0.06)
    assert share["bath"] == pytest.approx(16 / 25, abs=0.06)
    assert share["bar"] + share["heat"] < 0.1


def test_a_heat_that_misses_to_either_side_counts():
    parts = taken_apart(55.0 - 2.0 * NORMALS["eye_bias"] ** 2, NORMALS)
    assert max(parts.share, key=lambda group: parts.share[group]) == "heat"
    assert parts.scatter < 0.2


def test_what_does_not_vary_has_no_parts():
    parts = taken_apart(np.full(512, 30.0), NORMALS)
    assert parts.scatter == 0.0
    assert set(parts.share.values()) == {0.0}


def test_what_chance_alone_explains_is_no_share():
    """Seventy columns fit a seventh of any 512 values."""
    noise = np.random.default_rng(7).normal(size=512)
    assert sum(taken_apart(noise, NORMALS).share.values()) < 0.09
