"""The bar that cost is measured by where no budget is given."""

import numpy as np

from catalog import Catalog
from selector.job.job import Job
from selector.job.treatment import NO_TEMPER, Treatment
from selector.option.prediction import predict
from selector.option.preparation import prepare

REFERENCE = ("42crmo4", "prehard", "prehard-bar")


def reference_bar(catalog: Catalog) -> Treatment | None:
    """Return the bar that cost is measured by where no budget is given.

    Parameters
    ----------
    catalog : Catalog
        What is known.

    Returns
    -------
    Treatment or None
        As bought; None where the catalogue lacks it.
    """
    steel = catalog.steels.get(REFERENCE[0])
    sold = steel.condition if steel else ()
    condition = next((c for c in sold if c.name == REFERENCE[1]), None)
    if steel is None or condition is None:
        return None
    return Treatment(steel, condition, catalog.routes[REFERENCE[2]])


def reference_cost(job: Job) -> float:
    """Return what the part costs as bought in the named reference steel.

    Parameters
    ----------
    job : Job
        Part and prices.

    Returns
    -------
    float
        Cost of a good part; an hour of labour where that bar is not in the catalogue.
    """
    treatment = reference_bar(job.catalog)
    if treatment is None:
        return job.catalog.prices.labour_per_h
    ready = prepare(treatment, job)
    return float(np.median(predict(ready, NO_TEMPER, job).bill.cost))
