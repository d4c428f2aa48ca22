"""The bar that cost is measured by where no budget is given."""

import numpy as np

from catalog import Catalog
from selector.job.job import Job
from selector.job.treatment import NO_TEMPER, Treatment
from selector.option.prediction import predict
from selector.option.preparation import prepare

STEEL, CONDITION, ROUTE = "42crmo4", "prehard", "prehard-bar"


def reference_bar(catalog: Catalog) -> Treatment | None:
    """Return the bar that cost is measured by, as bought; None where it is not catalogued."""
    steel = catalog.steels.get(STEEL)
    sold = steel.condition if steel else ()
    condition = next((c for c in sold if c.name == CONDITION), None)
    if steel is None or condition is None:
        return None
    return Treatment(steel, condition, catalog.routes[ROUTE])


def reference_cost(job: Job) -> float:
    """Return what the part costs in the reference bar, an hour of labour without one."""
    treatment = reference_bar(job.catalog)
    if treatment is None:
        return job.catalog.prices.labour_per_h
    ready = prepare(treatment, job)
    return float(np.median(predict(ready, NO_TEMPER).bill.cost))
