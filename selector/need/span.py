"""The hardness that bears a load: softest and hardest, and the figure that shows them."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from selector.duty.strength import LOAD_LOG_SD
from selector.hardness_scale import hrc_from_hv
from selector.need.words import Window
from selector.record import Spread

Floats = NDArray[np.float64]
# Nine loads in ten, and nineteen in twenty, lie within this many standard deviations.
NINE_IN_TEN, NINETEEN_IN_TWENTY = 1.2816, 1.6449
# A light, the stated and a heavy load.
LIGHT_TO_HEAVY = (-NINETEEN_IN_TWENTY, 0.0, NINETEEN_IN_TWENTY)
# Hardness looked at: from the softest bar to the hardest tool.
HV = np.linspace(90.0, 850.0, 761)
# Where each relation is published; its function holds the full citation.
SOURCES = {
    "least hardness whose factor of strength is 1": (
        "mechanics.strength: ISO 18265; Pavlina and Van Tyne 2008; Murakami 2002; notches by "
        "Peterson 1974"
    ),
    "greatest hardness at which its notch does not decide": (
        "mechanics.strength.static_factor: common practice"
    ),
    "corner bearing": "mechanics.contact.corner_bearing_mpa: common practice, estimated",
    "least hardness that springs back from the blow": (
        "mechanics.strength.impact_force_n: Timoshenko, strain energy; yield as strength"
    ),
    "Hertz line contact": "mechanics.contact.hertz_line: Johnson 1985, chapter 4",
    "least hardness that bears the pressure": (
        "mechanics.contact: ISO 6336-5 rolling, ISO 76 and bearing catalogues at rest"
    ),
    "depth of shear beyond what the core bears": (
        "mechanics.contact.line_shear_mpa: Johnson 1985, Eq. 4.46"
    ),
    "hardness as sold": "catalogue",
}


def over(deviation: float) -> float:
    """Return the load over the stated one at a standard deviation of its logarithm.

    Parameters
    ----------
    deviation : float
        In standard deviations. [-]

    Returns
    -------
    float
        1 at none. [-]
    """
    return float(np.exp(LOAD_LOG_SD * deviation))


def hrc(hv: float) -> float:
    """Return a Vickers hardness on the C scale, carried on below its end.

    Parameters
    ----------
    hv : float
        Vickers hardness. [HV]

    Returns
    -------
    float
        Rockwell hardness. [HRC]
    """
    return float(hrc_from_hv(hv, outside="extend"))


SOFTEST_HRC, HARDEST_HRC = hrc(HV[0]), hrc(HV[-1])


@dataclass(frozen=True, slots=True)
class Span:
    """The softest that bears a load, and the hardest of the run above it. [HRC]."""

    low_hrc: float
    high_hrc: float


@dataclass(frozen=True, slots=True)
class Spans:
    """What bears a light, the stated and a heavy load; None where nothing does."""

    light: Span | None
    stated: Span | None
    heavy: Span | None

    def softest(self) -> tuple[float, float, float]:
        """Return the softest that bears each load, the hardest of all where nothing does."""
        low, middle, high = (
            HARDEST_HRC if span is None else span.low_hrc
            for span in (self.light, self.stated, self.heavy)
        )
        return low, middle, high


def span_of(factor: Floats, over_stated: float) -> Span | None:
    """Return what bears a load, by the factor at each hardness looked at.

    Parameters
    ----------
    factor : ndarray
        Load borne over the stated one at each of `HV`. [-]
    over_stated : float
        Load to be borne over the stated one. [-]

    Returns
    -------
    Span or None
        None where no hardness bears it.
    """
    bears = factor >= over_stated
    if not bears.any():
        return None
    first = int(np.argmax(bears))
    stops = np.flatnonzero(~bears[first:])
    return Span(hrc(HV[first]), hrc(HV[first + int(stops[0]) - 1 if stops.size else -1]))


def spans_of(factor: Floats, power: float = 1.0) -> Spans:
    """Return what bears three loads, where the stress follows a power of the load.

    Parameters
    ----------
    factor : ndarray
        Stress borne over the stated one at each of `HV`. [-]
    power : float, optional
        By which the stress follows the load. [-]

    Returns
    -------
    Spans
        For a light, the stated and a heavy load.
    """
    light, stated, heavy = (span_of(factor, over(d) ** power) for d in LIGHT_TO_HEAVY)
    return Spans(light, stated, heavy)


def window(span: Span | None) -> Window | None:
    """Return a span whose end is None where all steels lie beyond it.

    Parameters
    ----------
    span : Span or None
        What bears a load.

    Returns
    -------
    Window or None
        None where nothing bears it.
    """
    if span is None:
        return None
    low = None if span.low_hrc <= SOFTEST_HRC else span.low_hrc
    return Window(low, None if span.high_hrc >= HARDEST_HRC else span.high_hrc)


def spread(
    values: tuple[float, float, float], unit: str, relation: str, **inputs: float | str
) -> Spread:
    """Return a figure known by its values at a light, the stated and a heavy load.

    Parameters
    ----------
    values : tuple of float
        At a light, the stated and a heavy load.
    unit, relation : str
        What they are, and what relates them to the load; one of `SOURCES`.
    **inputs : float or str
        What went in.

    Returns
    -------
    Spread
        Rounded, with its source.
    """
    low, middle, high = values
    return Spread(
        p05=round(low, 3),
        p50=round(middle, 3),
        p95=round(high, 3),
        unit=unit,
        relation=relation,
        inputs=dict(inputs),
        source=SOURCES[relation],
        validity=(),
    )
