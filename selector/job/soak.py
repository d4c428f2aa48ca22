"""How long a steel is held at its hardening heat in a furnace."""

from catalog.steel import Steel

# A published soak runs from its short end at this thickness to its long one at that. Common
# practice, no source. [mm]
THIN_MM, THICK_MM = 12.0, 50.0
# Steel whose sheet gives none: a minute a millimetre, within these. ASM Handbook vol. 4 (from
# memory): 20 to 30 minutes for each 25 mm once the part is at heat. [min]
LEAST_MIN, MOST_MIN = 10.0, 60.0
ROUND_MIN = 5.0


def soak_min(steel: Steel, thick_mm: float) -> float:
    """Return how long a part is soaked in a furnace, once it is as hot as the chamber. [min].

    Parameters
    ----------
    steel : Steel
        Its own soak counts where one is published.
    thick_mm : float
        Thickest section that is heated. [mm]

    Returns
    -------
    float
        Whole minutes; in steps of five from ten up.
    """
    published = steel.hardened.soak_min if steel.hardened else None
    if published is None:
        minutes = min(max(thick_mm, LEAST_MIN), MOST_MIN)
    else:
        share = (thick_mm - THIN_MM) / (THICK_MM - THIN_MM)
        more = (published.high - published.low) * min(max(share, 0.0), 1.0)
        minutes = published.low + more
    return float(round(minutes) if minutes < 10.0 else ROUND_MIN * round(minutes / ROUND_MIN))


def soak_source(steel: Steel) -> str:
    """Return where the soak of a steel comes from."""
    published = steel.hardened.soak_min if steel.hardened else None
    if published is None:
        return "ASM Handbook vol. 4, 20 to 30 min for each 25 mm (from memory)"
    return published.source
