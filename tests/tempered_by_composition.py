"""Hardness after a temper, by composition, beside a printed table."""

import numpy as np

from selector.metallurgy.tempering import tempered_hardness

# Two laboratories differ by 2.7 HRC for 4140 and by 3.7 HRC for 4340. [HRC]
SCATTER_HRC = 2.7


def miss_and_sd_hrc(composition_wt_pct, temperature_c, time_h, printed_hrc):
    """Return predicted less printed hardness, and the stated error, at each place."""
    printed = np.array([float(text) for text in printed_hrc.split()])
    hour_s = 3600.0 * np.asarray(time_h, dtype=float)
    predicted = tempered_hardness(composition_wt_pct, np.asarray(temperature_c, float), hour_s)
    return predicted.hrc - printed, np.broadcast_to(predicted.sd_hrc, printed.shape)


def share_inside(pairs):
    """Return the share of readings that the 90 % interval holds."""
    miss, sd = (np.concatenate(column) for column in zip(*pairs, strict=True))
    return np.mean(np.abs(miss) <= 1.645 * sd)
