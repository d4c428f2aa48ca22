"""What keeps the carbon in the skin while a part soaks in a furnace, and how much of it.

A flame holds a part at heat for seconds to minutes; what it takes is left on and ground off.
"""

from typing import Literal

from catalog.price import Prices
from selector.job.geometry import skin_mm2
from selector.job.treatment import Treatment
from selector.requirement.part import Part

Protection = Literal["none", "foil", "paste"]
# A part in foil cannot be quenched in a liquid through it, and is cut out of it too late. Tool
# steel producers' sheets (from memory): foil for what hardens in air, coating for the rest.
# Foil for one part, folded over twice, as a multiple of its skin. Common practice. [-]
FOLDS = 2.5
# Stock this thick takes the skin off with it. Common practice: 0.25 to 0.4 mm. [mm]
GROUND_OFF_MM = 0.3
MM2_PER_M2 = 1e6


def protection(work: Treatment, part: Part) -> Protection:
    """Return what the skin of a part is kept from the furnace by.

    Parameters
    ----------
    work : Treatment
        What is done to which steel.
    part : Part
        What is treated; stock left on it takes the place of a coating.

    Returns
    -------
    str
        "foil", "paste" or "none".
    """
    source, medium = work.source, work.medium
    soaks = work.hardens and source is not None and source.kind == "furnace"
    if not soaks or medium is None or work.route.place != "workshop":
        return "none"
    if medium.severity_class == "air":
        return "foil"
    return "none" if (part.stock_removal or 0.0) >= GROUND_OFF_MM else "paste"


def protection_cost(work: Treatment, part: Part, prices: Prices) -> float:
    """Return what foil or coating for one part costs, in the currency of the list."""
    per_m2 = {
        "none": 0.0,
        "foil": FOLDS * prices.foil_per_m2,
        "paste": prices.paste_per_m2,
    }[protection(work, part)]
    return per_m2 * skin_mm2(part) / MM2_PER_M2
