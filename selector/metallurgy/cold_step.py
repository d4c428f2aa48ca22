"""What a cold step right after the quench adds: soft austenite that turns to martensite."""

import numpy as np
from numpy.typing import ArrayLike, NDArray

from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.metallurgy.martensite import (
    KOISTINEN_MARBURGER,
    RETAINED_AUSTENITE_HV,
    hardness,
)

Floats = NDArray[np.float64]

ROOM_C = 20.0
# Hardness missing beyond this share of austenite is something else: carbide, bainite. [-]
MOST_AUSTENITE = 0.35


def after_cold_step(
    as_quenched_hrc: ArrayLike, carbon_wt_pct: ArrayLike, cold_c: float
) -> Floats:
    """Return the hardness of martensite with retained austenite after a cold step at once.

    What the quenched steel misses against full martensite of its carbon is put down to soft
    austenite, and the cold leaves a share of that.

    Parameters
    ----------
    as_quenched_hrc : array_like
        Hardness of the hardened structure at room temperature. [HRC]
    carbon_wt_pct : array_like
        Carbon dissolved in the austenite. [wt %]
    cold_c : float
        Temperature of the cold step. [°C]

    Returns
    -------
    ndarray
        Hardness, never less than before. [HRC]

    Notes
    -----
    By the equation of [1]_ austenite falls to exp(-0.011 (20 - T)) of what the quench left,
    whatever the martensite start. Mixed by volume in Vickers, austenite at 250 HV. No more
    than 35 % austenite is taken to be there. A part that waits at room temperature keeps more
    of it than this.

    References
    ----------
    .. [1] D. P. Koistinen and R. E. Marburger, Acta Metallurgica 7, 1959, 59-60.

    Examples
    --------
    >>> float(after_cold_step(62.0, 0.8, -75.0).round(1))
    64.9
    """
    before = np.asarray(as_quenched_hrc, dtype=float)
    full_hv = hv_from_hrc(hardness(carbon_wt_pct, 0.999), outside="extend")
    missing = (full_hv - hv_from_hrc(before, outside="extend")) / (
        full_hv - RETAINED_AUSTENITE_HV
    )
    kept = np.clip(missing, 0.0, MOST_AUSTENITE)
    turned = kept * -np.expm1(-KOISTINEN_MARBURGER * max(ROOM_C - cold_c, 0.0))
    gain_hv = turned * (full_hv - RETAINED_AUSTENITE_HV)
    after = hrc_from_hv(hv_from_hrc(before, outside="extend") + gain_hv, outside="extend")
    return np.asarray(np.maximum(after, before))
