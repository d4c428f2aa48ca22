"""The set-up of an option as plain data: what the man at the fire needs to know."""

import math

from selector.errors import OutOfRangeError
from selector.heat.boiling import bath_temperature_c
from selector.heat.colour import heat_colour
from selector.heat.operator import READING_C
from selector.job.job import Job
from selector.job.process import hardening_heat, reading_error
from selector.job.screening import heated_thickness
from selector.job.treatment import Treatment, is_torched
from selector.option.set_up import bath_of
from selector.option.torched import meant_torched
from selector.record import SetUpOut
from selector.requirement.part import Part
from selector.torch.response import Torched

# A part so many times longer than thick is let down upright. Common practice. [-]
SLENDER = 4.0


def set_up_out(job: Job, work: Treatment) -> SetUpOut | None:
    """Return how an option is heated and quenched."""
    # None where nothing is hardened by a quench. Of a torch or fire it is the set-up that was
    # forecast.
    shop = job.asked.workshop
    thick_mm = heated_thickness(job.asked, work)
    heat = hardening_heat(work, shop, job.middle().shared(), thick_mm)
    if heat is None:
        return None
    error, bath = reading_error(work, shop), bath_of(work, shop, job.mass_kg)
    torch = _at_torch(meant_torched(job, work)) if is_torched(work) else {}
    heat_c = torch.get("heat_c", heat.target_c)
    colour, tables = _colour(heat_c - error.shift_c)
    described = bath.bath if bath is not None else None
    return SetUpOut(
        heat_c=heat_c,
        colour=colour if work.by_eye else None,
        tables_c=tables if work.by_eye else None,
        light=shop.light if work.by_eye else None,
        read_by=_read_by(work, shop.measure),
        misread_c=round(math.hypot(error.bias_c, error.scatter_c), 1),
        looks_duller_c=error.shift_c,
        hold_s=torch.get("hold_s", float(heat.hold_s)),
        even_s=torch.get("even_s"),
        to_heat_s=torch.get("to_heat_s"),
        past_zone_mm=torch.get("past_zone_mm"),
        flame_share=torch.get("flame_share"),
        gas_l=torch.get("gas_l"),
        source=work.source.slug if work.source else None,
        medium=work.medium.slug if work.medium else None,
        bath_c=round(bath_temperature_c(described), 0) if described else None,
        motion=described.agitation if described else None,
        delay_s=round(bath.delay_s, 1) if bath is not None else None,
        way_in=_way_in(job.asked.part, work) if work.medium is not None else None,
    )


def _at_torch(part: Torched) -> dict[str, float]:
    """Return the set-up of a torch or fire, and what it takes."""
    flow = part.whole.heatings.torching.flame.gas_flow_l_per_min
    lit_s = part.to_heat_s + part.hold_s
    return {
        "heat_c": part.set_up.heat_c,
        "hold_s": part.hold_s,
        "even_s": round(part.even_s, 1),
        "to_heat_s": round(part.to_heat_s, 1),
        "past_zone_mm": 0.0 if part.part.is_whole else round(part.set_up.past_mm, 1),
        "flame_share": round(part.flame_share, 2),
        "gas_l": round(part.flame_share * flow * lit_s / 60.0, 1),
    }


def _read_by(work: Treatment, measure: tuple[str, ...]) -> str:
    """Return the best instrument that the heat is read by."""
    if not work.by_eye:
        return "furnace"
    return next((name for name in READING_C if name in measure), "eye")


def _colour(heat_c: float) -> tuple[str | None, tuple[float, float] | None]:
    """Return what a heat looks like and how far printed tables spread; none past their end."""
    try:
        colour = heat_colour(heat_c)
    except OutOfRangeError:
        return None, None
    return colour.name, (round(colour.low_c, 1), round(colour.high_c, 1))


def _way_in(part: Part, work: Treatment) -> str:
    """Return how the part goes into its bath. Common practice."""
    if work.route.extent == "local":
        return "hot end first, straight down, and kept moving"
    thick = max(section.size for section in part.section)
    if part.length_mm >= SLENDER * thick:
        return "upright, straight down, right under"
    return "edge first, right under, and kept moving"
