import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.special import ndtr, ndtri

from selector import sampling
from tests.examples import few

NET = Path(sampling.__file__).with_name("sobol.npy")


@pytest.mark.parametrize("names", [sampling.SHARED, sampling.STEEL])
def test_no_dimension_is_named_twice(names):
    assert len(set(names)) == len(names)


def test_shared_and_steel_dimensions_do_not_hide_each_other():
    assert not set(sampling.SHARED) & set(sampling.STEEL)


def test_the_stored_net_is_the_one_scipy_makes():
    from scipy.stats import qmc  # noqa: PLC0415 - it loads long, in one process is enough

    made = qmc.Sobol(20, rng=20_261).random(sampling.COUNT)
    np.testing.assert_array_equal(np.load(NET) / 2**sampling.BITS, made)


@pytest.mark.parametrize("count", [16, sampling.COUNT])
def test_one_column_a_dimension(count):
    for names, computed in (
        (sampling.SHARED, sampling.shared(count)),
        (sampling.STEEL, sampling.of_steel("a", count)),
    ):
        assert tuple(computed) == names
        assert {column.shape for column in computed.values()} == {(count,)}


@pytest.mark.parametrize(
    "computed", [sampling.shared(), sampling.of_steel("c45")], ids=["shared", "steel"]
)
def test_every_dimension_is_standard_normal(computed):
    for name, column in computed.items():
        assert np.isfinite(column).all(), name
        # Quasi-random points miss the mean and the deviation by far less than 1/sqrt(count).
        assert abs(column.mean()) < 0.02, name
        assert column.std() == pytest.approx(1.0, abs=0.03), name


def test_dimensions_are_not_correlated():
    sets = (sampling.shared(), sampling.of_steel("c45"), sampling.of_steel("42crmo4"))
    table = np.stack([column for computed in sets for column in computed.values()])
    off = np.corrcoef(table) - np.eye(len(table))
    # Independent samples correlate by about 1/sqrt(512) = 0.044; this is the largest of 1500.
    assert np.abs(off).max() < 4 * 0.044


def test_a_steel_does_not_feel_other_steels():
    alone = {name: column.copy() for name, column in sampling.of_steel("c45").items()}
    sampling.of_steel.cache_clear()
    for slug in ("a-new-steel", "42crmo4", "another"):
        sampling.of_steel(slug)
    again = sampling.of_steel("c45")
    for name, column in alone.items():
        np.testing.assert_array_equal(again[name], column)


def test_two_steels_differ():
    first, second = sampling.of_steel("c45"), sampling.of_steel("c60")
    assert not np.array_equal(first["hardenability"], second["hardenability"])


def test_samples_are_the_same_in_every_process():
    # Python's own hash of text changes from process to process; the seed must not.
    script = (
        "from selector import sampling; "
        "print(repr(float(sampling.of_steel('c45', 16)['C'][3])), "
        "repr(float(sampling.shared(16)['load'][3])))"
    )
    said = {
        subprocess.run(  # noqa: S603
            [sys.executable, "-c", script],
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    own, shared = sampling.of_steel("c45", 16)["C"][3], sampling.shared(16)["load"][3]
    here = f"{float(own)!r} {float(shared)!r}\n"
    assert said == {here}


def test_samples_cannot_be_written_to():
    with pytest.raises(ValueError, match="read-only"):
        sampling.shared()["load"][0] = 0.0


@given(st.floats(-1e3, 1e3), st.floats(0, 1e3), st.floats(0.5, 4))
@settings(max_examples=few(50))
def test_truncated_keeps_to_its_range(low, width, tail):
    computed = sampling.truncated(sampling.of_steel("c45")["C"], low, low + width, tail)
    slack = 1e-9 * (abs(low) + width + 1)
    assert computed.min() >= low - slack
    assert computed.max() <= low + width + slack


def test_truncated_keeps_order_centre_and_extremes():
    normal = np.array([-40.0, -1.0, 0.0, 1.0, 40.0])
    computed = sampling.truncated(normal, 0.4, 0.5)
    assert (np.diff(computed) > 0).all()
    assert computed[2] == pytest.approx(0.45)
    assert computed[[0, -1]] == pytest.approx([0.4, 0.5])


def test_normal_probabilities_and_quantiles_are_those_of_scipy():
    z = np.linspace(-9.0, 9.0, 20_001)
    np.testing.assert_allclose(sampling.probability(z), ndtr(z), rtol=1e-13)
    p = np.concatenate([np.linspace(1e-6, 1 - 1e-6, 20_001), 10.0 ** -np.arange(1, 30)])
    np.testing.assert_allclose(sampling.quantile(p), ndtri(p), rtol=1e-14, atol=1e-15)


def test_a_quantile_has_the_shape_of_its_shares():
    assert sampling.quantile(0.5) == 0.0
    assert sampling.quantile([[0.1, 0.9]]).shape == (1, 2)
