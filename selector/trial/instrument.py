"""The tests a workshop reads a coupon with, and by how much each errs.

Errors are estimates of practice: no test of a small workshop has a certificate.
"""

from dataclasses import dataclass

from selector.procedure.quenching import FILE_EDGES_HRC, FILES, GLASS_HRC
from selector.requirement.workshop import Check

COMMON = "common practice, no source"


@dataclass(frozen=True, slots=True)
class Instrument:
    """One test of hardness, or of how deep it goes.

    `bias` is the error it has in every reading, `scatter` that from one to the next, both as
    standard deviations in HRC or mm; it reads a number, or between which `edges` a piece lies.
    """

    slug: str
    words: str
    bias: float
    scatter: float
    edges: tuple[float, ...] = ()
    source: str = COMMON


# A bench tester set by a block keeps within 1.5 HRC (ISO 6508-2, from memory); one in the hand
# errs twice that, by how the piece lies too.
TESTER = Instrument("tester", "the hardness tester", 0.75, 0.5)
REBOUND = Instrument("rebound", "the rebound tester", 1.5, 1.0)
HARDNESS_FILES = Instrument(
    "hardness-files", "the hardness files", 1.5, 1.0, tuple(float(file) for file in FILES)
)
NEW_FILE = Instrument("file", "a new file", 2.0, 1.5, FILE_EDGES_HRC)
GLASS = Instrument("glass", "a piece of glass", 2.5, 2.0, (GLASS_HRC,))
# The rim of a snapped coupon, fine and grey, beside its dull core, by a steel rule.
SNAPPED = Instrument("snap", "a vice, a hammer and a steel rule", 0.2, 0.3)

_BY_CHECK: dict[Check, Instrument] = {
    "tester": TESTER,
    "rebound": REBOUND,
    "hardness-files": HARDNESS_FILES,
    "file": NEW_FILE,
    "glass": GLASS,
}


def instruments(check: tuple[Check, ...]) -> tuple[Instrument, ...]:
    """Return the tests of hardness that a workshop has; a new file anyone can have.

    Parameters
    ----------
    check : tuple of str
        What the workshop tests hardness with.

    Returns
    -------
    tuple of Instrument
        At least one.
    """
    return tuple(_BY_CHECK[name] for name in _BY_CHECK if name in check) or (NEW_FILE,)
