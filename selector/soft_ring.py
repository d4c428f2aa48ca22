"""The soft ring beside a local heat: what bears the load where the hardness ends."""

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from selector.hardness_scale import hrc_from_hv, hv_from_hrc
from selector.preparation import Prepared, supply_hrc
from selector.surroundings import Surroundings

Floats = NDArray[np.float64]
# Of its hardness, what the ring of pre-hardened bar keeps after seconds below Ac1. Estimate.
RING_SHARE = 0.85
UNWORKED = frozenset({"hot-rolled", "normalised", "annealed"})


def beside(around: Surroundings) -> list[int]:
    """Return the soft sections that adjoin a hard one.

    Parameters
    ----------
    around : Surroundings
        Part and demands.

    Returns
    -------
    list of int
        Counted from 0.
    """
    hard = set(around.hard)
    count = len(around.asked.part.section)
    return [i for i in range(count) if i not in hard and {i - 1, i + 1} & hard]


def soft_ring_hrc(ready: Prepared) -> Floats:
    """Return the hardness of the ring that a local heat draws below its transformation.

    Cold work is gone there, and a quench of the maker's is drawn further; soft bar stays as it
    is.

    Parameters
    ----------
    ready : Prepared
        A local treatment.

    Returns
    -------
    ndarray
        Never above the bar as sold. [HRC]
    """
    work, sold = ready.treatment, ready.supply_hrc
    if work.condition.name == "prehard":
        hv = RING_SHARE * np.asarray(hv_from_hrc(sold, outside="extend"))
        return np.asarray(hrc_from_hv(np.maximum(hv, 90.0), outside="extend"))
    plain = next((c for c in work.steel.condition if c.name in UNWORKED), None)
    if work.condition.name != "cold-drawn" or plain is None:
        return sold
    unworked = supply_hrc(replace(work, condition=plain), ready.normals)
    return np.asarray(np.fmin(sold, unworked))
