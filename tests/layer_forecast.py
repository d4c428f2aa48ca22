"""Forecasts of case, nitriding and skin with their stated scatter, for checks of them."""

import numpy as np
from scipy.special import ndtri

from selector.hazards.decarburisation import LOG_SD, soft_skin
from selector.metallurgy.carburising import MEDIA, carbon_potential, depth_of_carbon
from selector.metallurgy.nitriding import DEPTH_LOG_SD, nitrided_depth

# Carbon where a case ends: to 550 HV in alloy steel, and in all (Harris 1943).
EFFECTIVE_WT_PCT, OVER_CORE_WT_PCT = 0.35, 0.07
_NORMAL = ndtri((np.arange(512) + 0.5) / 512)


def celsius(fahrenheit):
    return (fahrenheit - 32.0) / 1.8


def spread(middle, log_sd):
    """Return the samples of a figure whose logarithm is normal."""
    return float(middle) * np.exp(log_sd * _NORMAL)


def case_samples(medium, heat_c, hours, core=0.18, total=False):
    """Return how deep a case is after some hours, in mm."""
    ends = core + OVER_CORE_WT_PCT if total else EFFECTIVE_WT_PCT
    potential = float(carbon_potential(heat_c, medium))
    depth = depth_of_carbon(ends, core, potential, heat_c, hours, medium)
    return spread(depth, MEDIA[medium].log_sd)


def nitride_samples(steel, heat_c, hours):
    """Return how deep a nitrided layer is after some hours, in mm."""
    return spread(nitrided_depth(steel, heat_c, hours), DEPTH_LOG_SD)


def skin_samples(heat_c, hours):
    """Return how deep a bare soak robs the skin, in mm."""
    return spread(soft_skin(heat_c, 3600.0 * hours).soft_mm, LOG_SD)


def inside(printed, samples):
    """Return whether a printed figure lies in the middle nine tenths of a forecast."""
    low, high = np.quantile(samples, (0.05, 0.95))
    return bool(low <= float(printed) <= high)
