"""Hard chromium on a bar as it is: a thin layer, harder than steel; the core stays."""

import numpy as np

from selector.option.preparation import Prepared
from selector.option.zone import ZoneHardness

# Hard chromium takes up to half of the fatigue limit (R. G. Budynas, J. K. Nisbett, Shigley's
# Mechanical Engineering Design, 9th ed. 2011, 6-9, from memory); counted as all of it. [-]
FATIGUE_KEPT = 0.5
# Thickness of a plate against what was ordered, as a logarithm. Common practice. [-]
THICKNESS_LOG_SD = 0.1


def chromed(ready: Prepared) -> ZoneHardness:
    """Return the hardness of a plated part: chromium on the bar as sold. [HRC]."""
    route, job, normals = ready.treatment.route, ready.job, ready.normals
    span, depth = route.surface_hrc, route.depth_mm
    if span is None or depth is None:
        msg = f"{route.slug} needs surface_hrc and depth_mm"
        raise ValueError(msg)
    spread = np.clip(normals["as_quenched"], -2.0, 2.0)
    hard = span.middle + 0.25 * (span.high - span.low) * spread
    ordered_mm = float(np.clip(job.leading.depth_mm * 1.2, depth.low, depth.high))
    core = ready.supply_hrc
    return ZoneHardness(
        np.asarray(hard),
        core,
        core,
        ordered_mm * np.exp(THICKNESS_LOG_SD * normals["depth"]),
        np.repeat(core[:, None], len(job.asked.part.section), axis=1),
        "published hardness of hard chromium; core as sold",
        span.source,
    )
