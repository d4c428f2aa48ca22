"""What a contact asks of the surface, and how deep over which core."""

from selector.duty.contact import Pressing
from selector.need import words
from selector.need.record import ContactNeed
from selector.need.span import HV, LIGHT_TO_HEAVY, over, spans_of, spread

# Cores a hard layer is laid over: soft bar and pre-hardened bar. Common practice. [HV]
_CORES = (("soft bar", 200.0), ("pre-hardened bar", 300.0))


def contact_need(pressing: Pressing) -> ContactNeed:
    """Return what one contact asks of surface, depth and core.

    Parameters
    ----------
    pressing : Pressing
        Force, mate and geometry of the contact.

    Returns
    -------
    ContactNeed
        Ready for JSON.
    """
    pressure, half = pressing.pressure_mpa, float(pressing.hertz.half_width_mm)
    loads = [over(d) ** 0.5 for d in LIGHT_TO_HEAVY]
    inputs = {"half_width_mm": round(half, 4)}
    # Pressure follows the root of the load on a line.
    spans, surface = spans_of(pressing.bears_mpa(HV) / pressure, power=0.5), None
    if spans.stated is not None:
        name = "least hardness that bears the pressure"
        surface = spread(spans.softest(), "HRC", name, pressure_mpa=round(pressure))
    depths = {
        core: spread(
            (pressing.depth_mm(hv),) * 3,
            "mm",
            "depth of shear beyond what the core bears",
            core_hv=hv,
            **inputs,
        )
        for core, hv in _CORES
    }
    line = "Hertz line contact"
    shear = float(pressing.hertz.shear_depth_mm)
    return ContactNeed(
        zone=pressing.zone + 1,
        pressure=spread(tuple(pressure * s for s in loads), "MPa", line, **inputs),
        shear_depth=spread(tuple(shear * s for s in loads), "mm", line, **inputs),
        surface=surface,
        depth_over_core=depths,
        text=words.contact(pressure, surface, depths, rolling=pressing.rolling),
    )
