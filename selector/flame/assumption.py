"""What the flame verdict took for granted because it was not said, and what it did not use."""

from selector.heat.boiling import DELAY_S, bath_temperature_c
from selector.job.demand import Demand
from selector.job.job import Job
from selector.job.process import reading_error
from selector.job.supply import presumed
from selector.job.treatment import Treatment
from selector.option.movement import permitted_movement
from selector.option.set_up import bath_of
from selector.requirement import Requirement
from selector.requirement.part import Section
from selector.requirement.workshop import Skill, Workshop
from selector.torch.part import flame_of, round_like
from selector.wording import shown


def flame_assumptions(work: Treatment, job: Job) -> tuple[str, ...]:
    """Return every assumption that changes the verdict on a flame hardening."""
    asked = job.asked
    permitted = permitted_movement(asked)
    said = [*_of_zone(job.leading), *_of_shape(asked), *_of_flame(work, asked.workshop)]
    said += [*_of_bath(work, asked.workshop, job.mass_kg), *_of_hand(work, asked.workshop)]
    if not permitted.stated:
        said.append(f"No run-out given: {permitted.mm:g} mm of bow is taken as permitted.")
    if not asked.load.torque:
        said.append("No torque given: whether the soft place bears its load is not judged.")
    said += presumed(job.bench.stock, job.catalog.marks)
    unused = _not_used(asked)
    if unused:
        said.append(f"Given, but the flame verdict does not use it: {', '.join(unused)}.")
    return tuple(said)


def _of_zone(lead: Demand) -> list[str]:
    """Return what hardness and depth were derived for the zone that is heated."""
    if not lead.derived or lead.low_hrc is None or lead.high_hrc is None:
        return []
    window = f"{shown(lead.low_hrc)} to {shown(lead.high_hrc)} and {lead.depth_mm:g} mm deep"
    return [f"Zone {lead.zone + 1}: {window}, derived from {lead.reason}."]


def _of_shape(asked: Requirement) -> list[str]:
    """Return what stands for a section that is not round."""
    part = asked.part
    said = [
        f"A flat of {s.size:g} × {s.width:g} mm stands as a round of {round_like(s):.1f} mm; "
        "its depth is put back to the true thickness."
        for s in dict.fromkeys(map(_like, part.section))
        if s.shape == "flat" and s.width
    ]
    if part.shape_class != "plain":
        said.append(f"Shape class {part.shape_class}: shape not simulated.")
    return said


def _like(section: Section) -> Section:
    """Return a section without what does not show across it, so that equals are said once."""
    return Section(shape=section.shape, size=section.size, width=section.width, length=1.0,
                   bore=section.bore)  # fmt: skip


def _of_flame(work: Treatment, shop: Workshop) -> list[str]:
    """Return what was taken for granted of the flame, its gas and where the part lies."""
    source = work.source
    if source is None:
        return []
    said = []
    if source.kind == "flame":
        said.append(
            "The part lies in a hearth of firebricks; in the open a flame brings less heat."
        )
    given = next((h for h in shop.heat if h.source == source.slug), None)
    if given is None or given.gas_flow is None:
        flow = flame_of(source, shop).gas_flow_l_per_min
        said.append(
            f"No gas flow given for the {source.name.lower()}: the usual {flow:.0f} l/min."
        )
    said.append("Whatever holds the part takes no heat from it.")
    return said


def _of_bath(work: Treatment, shop: Workshop, mass_kg: float) -> list[str]:
    """Return what was taken for granted of the bath."""
    medium = work.medium
    if medium is None or medium.kind == "air":
        return []
    kept = next((b for b in shop.bath if b.medium == medium.slug), None)
    given = kept.model_fields_set if kept is not None else set()
    quench, said = bath_of(work, shop, mass_kg), []
    bath = quench.bath if quench is not None else None
    if bath is None:
        return []
    if "temperature" not in given:
        said.append(f"as warm as usual, {bath_temperature_c(bath):.0f} °C")
    if "agitation" not in given:
        said.append(f"{bath.agitation} motion")
    if "volume" not in given:
        said.append("so large that it does not warm")
    return [f"{medium.name}: {', '.join(said)}."] if said else []


def _of_hand(work: Treatment, shop: Workshop) -> list[str]:
    """Return what was taken for granted of the eye, the light and the hand."""
    given, said = shop.model_fields_set, []
    hand = "a practised hand" if shop.skill == Skill() else "the hand you described"
    if work.by_eye and not {"measure", "light"} <= given:
        read = " and ".join(shop.measure)
        said.append(f"The heat is read by {read} in {shop.light}, by {hand}.")
    shift = reading_error(work, shop).shift_c
    if shift > 0.0:
        said.append(
            f"In {shop.light} a heat looks duller than it is: computed as taken {shift:.0f} °C "
            "too hot by whoever waits for the colour of the table."
        )
    delay = DELAY_S * shop.skill.delay
    said.append(f"From the flame into the bath it takes {delay:.1f} s.")
    return said


def _not_used(asked: Requirement) -> list[str]:
    """Return the fields the user filled in that no step of the verdict reads."""
    shop, load = asked.workshop, asked.load
    given = {
        "workshop.machine": shop.machine,
        "workshop.heat.tip": any(heat.tip for heat in shop.heat),
        "workshop.heat.chamber": any(heat.chamber for heat in shop.heat),
        "load.bending": load.bending,
        "load.axial": load.axial,
    }
    return [name for name, value in given.items() if value]
