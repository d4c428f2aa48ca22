"""The tempering coefficients of tempering.toml, fitted to published readings and written out.

The form is fixed by `temper_curve`: Vickers hardness of tempered martensite at the nodes of the
additive parameter, a straight line in carbon at each node, and for each alloying element the
published increments of Grange and Baughman times one fitted multiplier. That is two numbers a
node and one an element, by one weighted linear least-squares solution.
"""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Literal

import numpy as np

from selector.hardness_scale import LOWEST_HRC, hrc_from_hv, hv_from_hrc
from selector.metallurgy.fitting.left_out import leave_one_out
from selector.metallurgy.fitting.reading import Readings
from selector.metallurgy.temper_curve import (
    ELEMENTS,
    Coefficients,
    Floats,
    along,
    coefficients,
    parameter_k,
)

# Fully hard steels, the start of every curve: carbon, as-quenched HRC at 99.9 % martensite.
# Hodge and Orehoski, Trans. AIME 167, 1946, 627-642, as tabled by Timken (from memory);
# 0.8 and 1.0 % C: common practice, no source.
HARD_CARBON_WT_PCT = np.array([0.10, 0.20, 0.30, 0.40, 0.50, 0.60, 0.80, 1.00])
HARD_HRC = np.array([38.5, 44.2, 50.3, 56.1, 60.9, 64.3, 66.0, 66.5])

# Readings below 20 HRC are off the scale and count less.
SOFT_WEIGHT = 0.3
# Weight of a fully hard steel beside that of a reading.
HARD_WEIGHT = 0.9
# Weight of a multiplier's departure from 1, the published increments as they stand; chosen
# where steels and laboratories left out are both missed least. [HRC]
MULTIPLIER_WEIGHT = 20.0
# How the comment in tempering.toml begins that says what was fitted to.
FITTED = "# Fitted to "
# Weight of a bend in a curve, so that no node stands out of its neighbours. [HRC per HV/1000 K]
SMOOTH_WEIGHT = 0.05


def _hrc_per_hv(hv: Floats) -> Floats:
    """Return the slope of the Rockwell scale, which turns Vickers residuals into HRC."""
    ends = [hrc_from_hv(hv + step, outside="extend") for step in (0.5, -0.5)]
    return np.asarray(ends[0] - ends[1])


def _rows(given: Readings, form: Coefficients) -> tuple[Floats, Floats]:
    """Return the weighted equations of the readings."""
    parameter = parameter_k(given.temperature_c, given.time_s)
    share = np.stack(
        [np.interp(parameter, form.node_k, node) for node in np.eye(form.node_k.size)], axis=-1
    )
    carbon = np.minimum(given.composition_wt_pct["C"], form.carbon_limit_wt_pct)
    alloy = [
        given.composition_wt_pct[e] * (share @ form.published_hv_per_wt_pct[e])
        for e in ELEMENTS
    ]
    table = np.concatenate([share, share * carbon[:, None], np.stack(alloy, axis=-1)], axis=1)
    aim = hv_from_hrc(given.hrc, outside="extend")
    weight = np.where(given.hrc < LOWEST_HRC, SOFT_WEIGHT, 1.0) * _hrc_per_hv(aim)
    return table * weight[:, None], aim * weight


def _prior(form: Coefficients) -> tuple[Floats, Floats]:
    """Return the equations of fully hard steels, multipliers near 1 and smooth curves."""
    size, count = form.node_k.size, len(ELEMENTS)
    hard = np.zeros((HARD_HRC.size, 2 * size + count))
    hard[:, 0] = 1.0
    hard[:, size] = np.minimum(HARD_CARBON_WT_PCT, form.carbon_limit_wt_pct)
    hv = hv_from_hrc(HARD_HRC)
    weight = HARD_WEIGHT * _hrc_per_hv(hv)
    slope = np.diff(np.eye(size), axis=0) / (np.diff(form.node_k) / 1000.0)[:, None]
    bend = SMOOTH_WEIGHT * np.diff(slope, axis=0)
    smooth = np.zeros((2 * len(bend), 2 * size + count))
    smooth[: len(bend), :size] = smooth[len(bend) :, size : 2 * size] = bend
    near_one = np.eye(2 * size + count)[2 * size :] * MULTIPLIER_WEIGHT
    rows = np.concatenate([hard * weight[:, None], near_one, smooth])
    aims = [hv * weight, np.full(count, MULTIPLIER_WEIGHT), np.zeros(len(smooth))]
    return rows, np.concatenate(aims)


def fit(given: Readings) -> Coefficients:
    """Return the tempering coefficients that fit `given` best.

    Parameters
    ----------
    given : Readings
        Published readings of fully hardened steels, whatever their order. [-]

    Returns
    -------
    Coefficients
        Nodes, carbon limit and published increments as shipped; the rest fitted. [-]

    Notes
    -----
    Least squares in HRC: Vickers residuals times the slope of the Rockwell scale there. Weights
    and the equations that stand for prior knowledge are the constants of this module.

    References
    ----------
    .. [1] R. A. Grange and R. W. Baughman, Hardness of tempered martensite in carbon and
       low-alloy steels, Trans. ASM 48, 1956, 165-197.
    .. [2] J. H. Hollomon and L. D. Jaffe, Time-temperature relations in tempering steel, Trans.
       AIME 162, 1945, 223-249.
    """
    form = coefficients()
    pairs = zip(_rows(given, form), _prior(form), strict=True)
    table, aim = (np.concatenate(pair) for pair in pairs)
    solution = np.linalg.lstsq(table, aim, rcond=None)[0]
    base, carbon, multiplier = np.split(solution, [form.node_k.size, 2 * form.node_k.size])
    return replace(
        form,
        base_hv=base,
        carbon_hv_per_wt_pct=carbon,
        multiplier=dict(zip(ELEMENTS, map(float, multiplier), strict=True)),
    )


def residual_hrc(given: Readings, by: Coefficients) -> Floats:
    """Return the predicted less the published hardness of each reading.

    Parameters
    ----------
    given : Readings
        Published readings. [-]
    by : Coefficients
        Coefficients to predict with. [-]

    Returns
    -------
    ndarray
        Positive where the prediction is harder. [HRC]

    References
    ----------
    .. [1] J. H. Hollomon and L. D. Jaffe, Trans. AIME 162, 1945, 223-249.
    """
    curve = by.curve_hv(given.composition_wt_pct)
    hv = along(curve, by.node_k, parameter_k(given.temperature_c, given.time_s))
    return np.asarray(hrc_from_hv(hv, outside="extend") - given.hrc)


def left_out_hrc(
    given: Readings,
    group: Literal["steel", "source"],
    progress: Callable[[str, float], None] | None = None,
) -> Floats:
    """Return the residual of each reading, its whole steel or laboratory left out of the fit.

    Parameters
    ----------
    given : Readings
        Published readings of two groups or more. [-]
    group : {"steel", "source"}
        What is left out at once. [-]
    progress : callable, optional
        Called with what is left out, and the share done so far. [-]

    Returns
    -------
    ndarray
        Predicted less published hardness. [HRC]

    References
    ----------
    .. [1] M. Stone, Cross-validatory choice and assessment of statistical predictions, J. Royal
       Statistical Society B 36, 1974, 111-147.
    """
    return leave_one_out(
        given.steel if group == "steel" else given.source,
        lambda out: residual_hrc(given.where(out), fit(given.where(~out))),
        progress,
    )


def mean_error_hrc(given: Readings, miss_hrc: Floats) -> float:
    """Return the mean absolute error over readings on the Rockwell scale.

    Parameters
    ----------
    given : Readings
        Published readings. [-]
    miss_hrc : ndarray
        Predicted less published hardness. [HRC]

    Returns
    -------
    float
        Over readings from 20 HRC up; over all, if there is none. [HRC]

    References
    ----------
    .. [1] ASTM E140, whose Rockwell C scale begins at 20 HRC.
    """
    counted = given.hrc >= LOWEST_HRC
    return float(np.abs(miss_hrc[counted] if counted.any() else miss_hrc).mean())


def as_toml(fitted: Coefficients) -> str:
    """Return the fitted tables in the form in which tempering.toml keeps them.

    Parameters
    ----------
    fitted : Coefficients
        Coefficients to write. [-]

    Returns
    -------
    str
        The `[martensite]` and `[multiplier]` tables. [-]

    References
    ----------
    .. [1] TOML version 1.0.0, toml.io.
    """

    def row(values: Floats) -> str:
        return "[" + ", ".join(f"{value:.1f}" for value in values) + "]"

    lines = [
        "[martensite]",
        f"base_hv = {row(fitted.base_hv)}",
        f"carbon_hv_per_wt_pct = {row(fitted.carbon_hv_per_wt_pct)}",
        "",
        "[multiplier]",
        *(f"{element} = {value:.3f}" for element, value in fitted.multiplier.items()),
    ]
    return "\n".join(lines) + "\n"


def tempering_toml(given: Readings) -> str:
    """Return the whole of tempering.toml as fitted to `given`, with what it was fitted to.

    Parameters
    ----------
    given : Readings
        Published readings. [-]

    Returns
    -------
    str
        The form as shipped, its comments too, and the fitted tables. [-]

    References
    ----------
    .. [1] TOML version 1.0.0, toml.io.
    """
    shipped = Path(__file__).parent.with_name("tempering.toml").read_text(encoding="utf-8")
    form = shipped[: shipped.index(FITTED)]
    steels, sources = np.unique(given.steel).size, np.unique(given.source)
    heading = f"{FITTED}{given.hrc.size} readings of {steels} steels by `temperwright fit`:"
    counted = [
        f"#   {np.sum(given.source == name)} of {' '.join(name.split())}" for name in sources
    ]
    return "\n".join([form + heading, *counted, as_toml(fit(given))])
