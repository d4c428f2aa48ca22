"""The quasi-random sample of 512 that carries every uncertainty of the advice.

Two kinds of dimension. *Shared* ones are the same for every steel: how this operator reads
colour, how this torch and bath behave, what model families get wrong together, what prices do.
*Steel* ones belong to one steel and are seeded from its slug, so that adding a steel to the
catalogue changes nothing for the others.
"""

import zlib
from collections.abc import Mapping
from functools import cache
from math import erfc
from pathlib import Path

import numpy as np
from numpy.typing import ArrayLike, NDArray

Floats = NDArray[np.float64]
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


# Wichura's PPND16: numerator and denominator, highest power first, of the middle, the tails and
# the far tails. The special functions of scipy give the same to the last digits, but loading
# them takes a tenth of a cold advice.
_MIDDLE = (
    (
        2.5090809287301226727e3, 3.3430575583588128105e4, 6.7265770927008700853e4,
        4.5921953931549871457e4, 1.3731693765509461125e4, 1.9715909503065514427e3,
        1.3314166789178437745e2, 3.3871328727963666080,
    ),
    (
        5.2264952788528545610e3, 2.8729085735721942674e4, 3.9307895800092710610e4,
        2.1213794301586595867e4, 5.3941960214247511077e3, 6.8718700749205790830e2,
        4.2313330701600911252e1, 1.0,
    ),
)  # fmt: skip
_TAIL = (
    (
        7.74545014278341407640e-4, 2.27238449892691845833e-2, 2.41780725177450611770e-1,
        1.27045825245236838258, 3.64784832476320460504, 5.76949722146069140550,
        4.63033784615654529590, 1.42343711074968357734,
    ),
    (
        1.05075007164441684324e-9, 5.47593808499534494600e-4, 1.51986665636164571966e-2,
        1.48103976427480074590e-1, 6.89767334985100004550e-1, 1.67638483018380384940,
        2.05319162663775882187, 1.0,
    ),
)  # fmt: skip
_FAR = (
    (
        2.01033439929228813265e-7, 2.71155556874348757815e-5, 1.24266094738807843860e-3,
        2.65321895265761230930e-2, 2.96560571828504891230e-1, 1.78482653991729133580,
        5.46378491116411436990, 6.65790464350110377720,
    ),
    (
        2.04426310338993978564e-15, 1.42151175831644588870e-7, 1.84631831751005468180e-5,
        7.86869131145613259100e-4, 1.48753612908506148525e-2, 1.36929880922735805310e-1,
        5.99832206555887937690e-1, 1.0,
    ),
)  # fmt: skip


def _ratio(parts: tuple[tuple[float, ...], tuple[float, ...]], x: Floats) -> Floats:
    """Return the ratio of two polynomials given by their coefficients, highest power first."""
    above, below = parts
    return np.asarray(np.polyval(above, x) / np.polyval(below, x))


def quantile(share: ArrayLike) -> Floats:
    """Return the standard normal value that a share of all values lies below.

    Parameters
    ----------
    share : array_like
        The share, between 0 and 1. [-]

    Returns
    -------
    ndarray
        Standard normal values, same shape. [-]

    References
    ----------
    .. [1] M. J. Wichura, Algorithm AS 241, Applied Statistics 37 (1988), pages 477-484, routine
       PPND16, about 1 part in 10**16.
    """
    below = np.atleast_1d(np.asarray(share, dtype=float))
    off = below - 0.5
    normal = np.asarray(off * _ratio(_MIDDLE, 0.180625 - off * off))
    outside = np.abs(off) > 0.425
    if np.any(outside):
        tail = np.sqrt(-np.log(np.minimum(below, 1.0 - below)[outside]))
        value = np.where(tail <= 5.0, _ratio(_TAIL, tail - 1.6), _ratio(_FAR, tail - 5.0))
        normal[outside] = np.copysign(value, off[outside])
    return normal.reshape(np.shape(share))


def probability(value: ArrayLike) -> Floats:
    """Return the share of all standard normal values that lies below a value.

    Parameters
    ----------
    value : array_like
        Standard normal values. [-]

    Returns
    -------
    ndarray
        Shares between 0 and 1, same shape. [-]
    """
    z = np.asarray(value, dtype=float)
    missing = [erfc(x) for x in (-z / np.sqrt(2.0)).ravel().tolist()]
    return 0.5 * np.array(missing).reshape(z.shape)


@cache
def _net() -> NDArray[np.uint32]:
    """Return the stored net: 512 scrambled Sobol points, in 2**-30; shape (512, columns)."""
    # Made by scipy.stats.qmc.Sobol(20, rng=20_261).random(512); importing scipy.stats takes
    # longer than all sampling of an advice, and a test makes the net again.
    net: NDArray[np.uint32] = np.load(Path(__file__).with_name("sobol.npy"))
    return net


def _normals(names: tuple[str, ...], seed: int, count: int) -> Normals:
    """Return standard normal samples by dimension name, frozen."""
    # A net stays a net under a random digital shift: every steel has its own.
    dice = np.random.default_rng(seed)
    shift = dice.integers(2**BITS, size=len(names), dtype=np.uint32)
    points = (_net()[:count, : len(names)] ^ shift) / 2**BITS
    # Two nets run in step, dimension by dimension, however they are shifted; dealt in another
    # order each, the errors of a steel do not follow those of workshop or other steels.
    normals = quantile(np.clip(dice.permutation(points), 1e-6, 1 - 1e-6))
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
def middle() -> Normals:
    """Return the middle of all uncertainties, shared and of a steel, as a sample of one.

    Returns
    -------
    mapping of str to ndarray
        Zero by dimension name; shape (1,).
    """
    nothing = np.zeros(1)
    nothing.setflags(write=False)
    return dict.fromkeys((*SHARED, *STEEL), nothing)


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
    normal: NDArray[np.float64], low: ArrayLike, high: ArrayLike, tail: float = 2.0
) -> NDArray[np.float64]:
    """Return the sample of a normal that keeps to a range.

    The range is read as plus and minus `tail` standard deviations; what lies beyond is folded
    in at the ends by the quantile map, so none lies outside.

    Parameters
    ----------
    normal : ndarray
        Standard normal sample.
    low, high : array_like
        Ends of the range.
    tail : float
        How many standard deviations the half range spans.

    Returns
    -------
    ndarray
        Sample between `low` and `high`.
    """
    cut = probability(-tail)
    inside = cut + probability(normal) * (1 - 2 * cut)
    least, most = np.asarray(low, dtype=float), np.asarray(high, dtype=float)
    return np.asarray(0.5 * (least + most) + 0.5 * (most - least) / tail * quantile(inside))
