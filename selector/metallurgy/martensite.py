"""Hardness of quenched steel: martensite by its carbon, less what stays austenite."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.bounded import bounded
from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.metallurgy.transformation import martensite_start

Floats = NDArray[np.float64]

# Hodge and Orehoski 1946: hardness by carbon (rows) and martensite (columns). [HRC]
# Every third or fourth row of the table as printed; straight lines between hold 0.2 HRC, and
# from half martensite to none (the first edge) they run to the structure without any.
EDGES = np.array([0.0, 0.50, 0.80, 0.90, 0.95, 0.999])
CARBON_WT_PCT = np.array([0.10, 0.16, 0.22, 0.28, 0.34, 0.40, 0.46, 0.52, 0.60])
HODGE_OREHOSKI_HRC = np.array(
    [
        [26.2, 27.8, 30.7, 32.9, 38.5],
        [29.5, 32.3, 35.3, 37.6, 41.8],
        [33.0, 36.3, 39.6, 41.9, 45.4],
        [36.4, 40.0, 43.4, 45.8, 49.1],
        [39.5, 43.4, 46.9, 49.3, 52.7],
        [42.4, 46.4, 50.0, 52.4, 56.1],
        [45.1, 49.0, 52.7, 55.2, 59.1],
        [47.7, 51.3, 55.0, 57.5, 61.7],
        [50.7, 53.8, 57.5, 60.0, 64.3],
    ]
)
# Above the table full martensite gains little more: ASTM A255 gives 65 HRC from 0.62 % C, and
# files of tool steels 66 to 67 (from memory).
RICH_CARBON_WT_PCT = np.array([0.60, 0.69, 0.80, 1.00])
RICH_GAIN_HRC = np.array([0.0, 1.0, 2.0, 2.7])

KOISTINEN_MARBURGER = 0.011
RETAINED_AUSTENITE_HV = 250.0


@dataclass(frozen=True, slots=True, eq=False)
class AsQuenched:
    """The quenched structure and its hardness, with the error at known composition."""

    hrc: Floats
    sd_hrc: Floats
    martensite_fraction: Floats
    retained_austenite_fraction: Floats


def hardness(carbon_wt_pct: ArrayLike, martensite_fraction: ArrayLike) -> Floats:
    """Return the hardness of quenched steel by carbon and martensite fraction.

    The rest of the structure is bainite, pearlite or ferrite, not retained austenite.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon dissolved in the austenite. [wt %]
    martensite_fraction : array_like
        Martensite in the structure. [-]

    Returns
    -------
    ndarray
        Hardness; below 20 HRC only a place holder for a softer scale. [HRC]

    Notes
    -----
    Table of [1]_ by straight lines, 0.10 to 0.60 % C and 50 to 99.9 % martensite. Below that
    carbon the first slope goes on; above 0.60 % C hardness gains 1 HRC to 0.69 % C and 2.7 HRC
    to 1 % C, then nothing (ASTM A255 table and, above it, from memory). Below 50 % martensite a
    straight line runs to 8 + 30 C at none (common practice, no source). Scatter of [1]_: about
    2 HRC.

    References
    ----------
    .. [1] J. M. Hodge and M. A. Orehoski, Relationship between hardenability and percentage of
       martensite in some low-alloy steels, Trans. AIME 167, 1946, 627-642, as tabled in Timken,
       Practical Data for Metallurgists (from memory).

    Examples
    --------
    >>> float(hardness(0.40, 0.999))
    56.1
    """
    carbon = np.asarray(carbon_wt_pct, dtype=float)
    share = bounded(np.asarray(martensite_fraction, dtype=float), 0.0, EDGES[-1])
    if share.ndim == 0:
        # Of one fraction only the nodes beside it count.
        k = int(bounded(np.searchsorted(EDGES, share), 1, len(EDGES) - 1))
        part = float(share - EDGES[k - 1]) / (EDGES[k] - EDGES[k - 1])
        if part == 1.0:
            return _node_hrc(carbon, k)
        start, end = (_node_hrc(carbon, number) for number in (k - 1, k))
        return np.asarray(start + part * (end - start))
    nodes = _nodes_hrc(carbon)
    hrc = nodes[0]
    for low, high, start, end in zip(EDGES, EDGES[1:], nodes, nodes[1:], strict=False):
        hrc = np.where(share > low, start + (end - start) * (share - low) / (high - low), hrc)
    return np.asarray(hrc)


def fraction_from_hardness(carbon_wt_pct: ArrayLike, hrc: ArrayLike) -> Floats:
    """Return the martensite fraction that gives quenched steel its hardness.

    The inverse of `hardness`.

    Parameters
    ----------
    carbon_wt_pct : array_like
        Carbon dissolved in the austenite. [wt %]
    hrc : array_like
        As-quenched hardness. [HRC]

    Returns
    -------
    ndarray
        Martensite, 0 to 0.999. [-]

    Notes
    -----
    Straight lines between the columns of [1]_, read backwards.

    References
    ----------
    .. [1] J. M. Hodge and M. A. Orehoski, Trans. AIME 167, 1946, 627-642.

    Examples
    --------
    >>> float(fraction_from_hardness(0.40, 42.4).round(3))
    0.5
    """
    carbon = np.asarray(carbon_wt_pct, dtype=float)
    given = np.asarray(hrc, dtype=float)
    nodes = _nodes_hrc(carbon)
    share = np.zeros(np.broadcast_shapes(carbon.shape, given.shape))
    for low, high, start, end in zip(EDGES, EDGES[1:], nodes, nodes[1:], strict=False):
        share = np.where(
            given > start, low + (high - low) * (given - start) / (end - start), share
        )
    return np.asarray(np.minimum(share, EDGES[-1]))


def _nodes_hrc(carbon: Floats) -> list[Floats]:
    """Return the hardness at each martensite fraction of `EDGES`."""
    return [_node_hrc(carbon, number) for number in range(len(EDGES))]


def _node_hrc(carbon: Floats, number: int) -> Floats:
    """Return the hardness at one of the martensite fractions of `EDGES`."""
    if number == 0:
        return np.asarray(8.0 + 30.0 * np.minimum(carbon, 0.8))
    column = HODGE_OREHOSKI_HRC[:, number - 1]
    within = bounded(carbon, CARBON_WT_PCT[0], CARBON_WT_PCT[-1])
    poor = np.minimum(carbon - CARBON_WT_PCT[0], 0.0) / (CARBON_WT_PCT[1] - CARBON_WT_PCT[0])
    rich = np.interp(carbon, RICH_CARBON_WT_PCT, RICH_GAIN_HRC)
    line = np.interp(within, CARBON_WT_PCT, column) + poor * (column[1] - column[0]) + rich
    return np.asarray(line)


def fraction(ms_c: ArrayLike, quench_end_c: ArrayLike) -> Floats:
    """Return the share of austenite that has turned to martensite at the end of a quench.

    Parameters
    ----------
    ms_c : array_like
        Martensite start of the austenite. [°C]
    quench_end_c : array_like
        Lowest temperature reached: the bath, the room, or the cold box. [°C]

    Returns
    -------
    ndarray
        Martensite, 0 at or above Ms; the rest is retained austenite. [-]

    Notes
    -----
    1 - exp(-0.011 (Ms - T)), the equation of [1]_. A sub-zero step is the same law with a
    colder end; a day at room temperature first makes the austenite resist, so cool on at once.

    References
    ----------
    .. [1] D. P. Koistinen and R. E. Marburger, A general equation prescribing the extent of the
       austenite-martensite transformation, Acta Metallurgica 7, 1959, 59-60.

    Examples
    --------
    >>> round(float(fraction(220.0, 20.0)), 3)
    0.889
    """
    below = np.asarray(ms_c, dtype=float) - np.asarray(quench_end_c, dtype=float)
    return np.asarray(-np.expm1(-KOISTINEN_MARBURGER * np.maximum(below, 0.0)))


def retained_austenite(
    ms_c: ArrayLike, quench_end_c: ArrayLike, subzero_c: ArrayLike | None = None
) -> Floats:
    """Return the austenite left after a quench and, if there is one, a sub-zero step at once.

    A warm bath leaves more, until the part has cooled to the room.

    Parameters
    ----------
    ms_c : array_like
        Martensite start of the austenite. [°C]
    quench_end_c : array_like
        Lowest temperature of the quench. [°C]
    subzero_c : array_like, optional
        Temperature of the cold step. [°C]

    Returns
    -------
    ndarray
        Retained austenite. [-]

    Notes
    -----
    Complement of `fraction` at the colder of the two ends.

    References
    ----------
    .. [1] D. P. Koistinen and R. E. Marburger, Acta Metallurgica 7, 1959, 59-60.

    Examples
    --------
    >>> round(float(retained_austenite(150.0, 20.0, -75.0)), 3)
    0.084
    """
    end = quench_end_c if subzero_c is None else np.minimum(quench_end_c, subzero_c)
    return np.asarray(1.0 - fraction(ms_c, end))


def as_quenched(
    dissolved_wt_pct: Mapping[str, ArrayLike],
    quench_end_c: ArrayLike = 20.0,
    transformed_fraction: ArrayLike = 0.0,
) -> AsQuenched:
    """Return the quenched structure and hardness of austenite of known composition.

    What had turned to ferrite, pearlite or bainite as it cooled is given; the rest becomes
    martensite down to the end of the quench, and what is left is soft austenite.

    Parameters
    ----------
    dissolved_wt_pct : mapping of str to array_like
        Element to content in the austenite; a missing element is 0. [wt %]
    quench_end_c : array_like
        Lowest temperature reached. [°C]
    transformed_fraction : array_like
        Share that is ferrite, pearlite or bainite. [-]

    Returns
    -------
    AsQuenched
        Hardness and its error. [HRC]

    Notes
    -----
    Hardness of `hardness` mixed by volume in Vickers with retained austenite at 250 HV (from
    memory): 30 % of it takes a 1 % C martensite from 67 to about 61 HRC. Error 1.5 HRC, growing
    with the austenite, whose share is uncertain by some 40 %.

    References
    ----------
    .. [1] G. Krauss, Steels: Processing, Structure, and Performance, ASM, 2005 (from memory).

    Examples
    --------
    >>> float(as_quenched({"C": 0.15, "Mn": 0.5}).hrc.round())
    41.0
    """
    carbon = np.asarray(dissolved_wt_pct.get("C", 0.0), dtype=float)
    other = np.asarray(transformed_fraction, dtype=float)
    retained = retained_austenite(martensite_start(dissolved_wt_pct), quench_end_c)
    # The table's own martensite already holds the few per cent of austenite a poor steel keeps.
    kept = retained * (1.0 - other)
    excess = np.maximum(kept - 0.03, 0.0)
    sound_hv = hv_from_hrc(hardness(carbon, 1.0 - other), outside="extend")
    hv = (1.0 - excess) * sound_hv + excess * RETAINED_AUSTENITE_HV
    hrc = hrc_from_hv(hv, outside="extend")
    sd = np.hypot(1.5, 8.0 * excess)
    martensite = (1.0 - other) * (1.0 - retained)
    return AsQuenched(*np.broadcast_arrays(hrc, sd, martensite, kept))
