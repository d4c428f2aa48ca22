"""The quasi-random sample of 512 that carries every uncertainty of the advice.

Two kinds of dimension. *Shared* ones are the same for every steel: how this operator reads
colour, how this torch and bath behave, what model families get wrong together, what prices do.
*Steel* ones belong to one steel and are seeded from its slug, so that adding a steel to the
catalogue changes nothing for the others.
"""

import zlib
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

COUNT = 512
BITS = 30
_SEED = 20_261

# One dimension each. "bias" lasts as long as the workshop does, "scatter" changes each heat.
SHARED = (
    "eye_bias",
    "eye_scatter",
    "furnace_bias",
    "temper_bias",
    "temper_scatter",
    "bath_bias",
    "torch_bias",
    "delay",
    "hardenability_family",
    "tempering_family",
    "wear_family",
    "load",
    "price_level",
    "rework",
    "check_reading",
)
STEEL = (
    "C", "Si", "Mn", "Cr", "Mo", "Ni", "V", "Cu", "W",
    "supply_hardness",
    "as_quenched",
    "hardenability",
    "tempering",
    "section_limit",
    "depth",
    "core",
    "crack_rate",
    "crack",
    "movement",
    "snap",
)  # fmt: skip

Normals = Mapping[str, NDArray[np.float64]]


@cache
def _net() -> NDArray[np.uint32]:
    """Return the stored net: 512 scrambled Sobol points, in 2**-30; shape (512, columns)."""
    # Made by scipy.stats.qmc.Sobol(20, rng=20_261).random(512); importing scipy.stats takes
    # longer than all sampling of an advice, and a test makes the net again.
    net: NDArray[np.uint32] = np.load(Path(__file__).with_name("sobol.npy"))
    return net


def _normals(names: tuple[str, ...], seed: int, count: int) -> Normals:
    """Return standard normal samples by dimension name, frozen."""
    from scipy.special import ndtri  # noqa: PLC0415 - slow to load

    # A net stays a net under a random digital shift: every steel has its own.
    dice = np.random.default_rng(seed)
    shift = dice.integers(2**BITS, size=len(names), dtype=np.uint32)
    points = (_net()[:count, : len(names)] ^ shift) / 2**BITS
    # Two nets run in step, dimension by dimension, however they are shifted; dealt in another
    # order each, the errors of a steel do not follow those of workshop or other steels.
    normals = ndtri(np.clip(dice.permutation(points), 1e-6, 1 - 1e-6))
    normals.setflags(write=False)
    return {name: normals[:, i] for i, name in enumerate(names)}


@cache
def shared(count: int = COUNT) -> Normals:
    """Return the sample that all steels share.

    Parameters
    ----------
    count : int
        Size of the sample, a power of two up to 512.

    Returns
    -------
    mapping of str to ndarray
        Standard normal values by dimension name; shape (count,).
    """
    return _normals(SHARED, _SEED, count)


@cache
def of_steel(slug: str, count: int = COUNT) -> Normals:
    """Return the sample of one steel, seeded from its slug.

    Parameters
    ----------
    slug : str
        The steel's file name in the catalogue.
    count : int
        Size of the sample, a power of two up to 512.

    Returns
    -------
    mapping of str to ndarray
        Standard normal values by dimension name; shape (count,).
    """
    return _normals(STEEL, zlib.crc32(slug.encode()), count)


def with_shared(slug: str, count: int = COUNT) -> dict[str, NDArray[np.float64]]:
    """Return one steel's samples together with those that all steels share.

    Parameters
    ----------
    slug : str
        The steel's file name in the catalogue.
    count : int
        Size of the sample, a power of two up to 512.

    Returns
    -------
    dict of str to ndarray
        Standard normal values by dimension name; shape (count,).
    """
    return {**shared(count), **of_steel(slug, count)}


def truncated(
    normal: NDArray[np.float64], low: float, high: float, tail: float = 2.0
) -> NDArray[np.float64]:
    """Return the sample of a normal that keeps to a range.

    The range is read as plus and minus `tail` standard deviations; what lies beyond is folded
    in at the ends by the quantile map, so none lies outside.

    Parameters
    ----------
    normal : ndarray
        Standard normal sample.
    low, high : float
        Ends of the range.
    tail : float
        How many standard deviations the half range spans.

    Returns
    -------
    ndarray
        Sample between `low` and `high`.
    """
    from scipy.special import ndtr, ndtri  # noqa: PLC0415 - slow to load

    inside = ndtr(-tail) + ndtr(normal) * (1 - 2 * ndtr(-tail))
    return 0.5 * (low + high) + 0.5 * (high - low) / tail * ndtri(inside)
