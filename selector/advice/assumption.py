"""What is assumed because the requirement does not say."""

from selector.advice.advise import Advice
from selector.duty.strength import has_load
from selector.job.demand import Demand
from selector.job.drive import is_key
from selector.job.geometry import cut_mm
from selector.job.supply import presumed
from selector.option.movement import permitted_movement
from selector.option.reference_bar import reference_bar
from selector.requirement import Requirement
from selector.requirement.part import CUTS, Part
from selector.requirement.workshop import Skill
from selector.wording import shown

# How many options the assumptions look at: those a reader compares.
LEADING = 3


def _zone(demand: Demand) -> str:
    """Return what was derived for one zone."""
    where = f"Zone {demand.zone + 1}"
    if demand.low_hrc is None or demand.high_hrc is None:
        return f"{where}: no hardness window ({demand.reason})."
    return (
        f"{where}: window {shown(demand.low_hrc)} to {shown(demand.high_hrc)} and "
        f"{demand.depth_mm:g} mm deep, derived from {demand.reason}."
    )


def assumptions(advice: Advice) -> tuple[str, ...]:
    """Return every assumption that changes the advice, in sentences."""
    job, asked = advice.job, advice.asked
    said = [_zone(demand) for demand in job.demands if demand.derived]
    permitted = permitted_movement(asked)
    if not permitted.stated:
        said.append(f"No run-out given: {permitted.mm:g} mm of bow is taken as permitted.")
    if not has_load(asked.load):
        said.append("No torque, bending or axial load given: strength is not judged.")
    else:
        said += _of_cuts(asked.part)
    if asked.part.shape_class != "plain":
        said.append(f"Shape class {asked.part.shape_class}: shape not simulated.")
    said += _of_kind(asked)
    return (*said, *_of_models(advice), *_of_money(advice), *_of_workshop(advice))


def _of_kind(asked: Requirement) -> list[str]:
    """Return what a part is taken as by its name or form."""
    said = [
        f"Zone {number}: taken as a key, which shears along its length: the torque does not "
        "twist it."
        for number, zone in enumerate(asked.zone, start=1)
        if is_key(asked, zone)
    ]
    if asked.is_spring and asked.part.shape_class != "coil-spring":
        said.append("Taken as a spring, because it is called one.")
    return said


def _of_cuts(part: Part) -> list[str]:
    """Return the size assumed for holes, slots and keyways whose size is not given."""
    return [
        f"Feature {n}, {cut.kind}: no size given, {cut_mm(part, cut):.2g} mm wide presumed."
        for n, cut in enumerate(part.feature, start=1)
        if cut.kind in CUTS and cut.size is None
    ]


def _of_models(advice: Advice) -> list[str]:
    """Return which leading options rest on a figure outside the range of its model."""
    left = {
        option.treatment.steel.name: option.judged.prediction.provenance["surface"].validity
        for option in advice.options[:LEADING]
    }
    return [
        f"{steel}: its hardness is outside the range of the model ({'; '.join(limits)}). Prove "
        "it on a coupon."
        for steel, limits in left.items()
        if limits
    ]


def _not_used(asked: Requirement) -> list[str]:
    """Return the fields the user filled in that no computation reads yet."""
    shop = asked.workshop
    given = {
        "workshop.machine": shop.machine,
        "workshop.held_by": shop.held_by,
        "workshop.heat.tip": any(heat.tip for heat in shop.heat),
        "workshop.heat.chamber": any(heat.chamber for heat in shop.heat),
    }
    return [name for name, value in given.items() if value]


def _of_money(advice: Advice) -> list[str]:
    """Return what is assumed about prices and budget."""
    limit, prices = advice.asked.limit, advice.job.catalog.prices
    said = []
    if limit.budget is None:
        bar = reference_bar(advice.job.catalog)
        by = (
            f"the part made of pre-hardened {bar.steel.name} as bought"
            if bar
            else "an hour of work"
        )
        said.append(
            f"No budget given: cost is judged against {advice.reference_cost:.0f} "
            f"{prices.currency}, {by}."
        )
    elif limit.currency and limit.currency != prices.currency:
        said.append(
            f"Your budget is in {limit.currency}, the price list in {prices.currency}: "
            "they are compared as they stand."
        )
    if prices.invented:
        said.append(f"Prices are invented for demonstration ({prices.currency}).")
    return said


def _of_workshop(advice: Advice) -> list[str]:
    """Return what is assumed about eye, baths and stock."""
    shop, said = advice.asked.workshop, []
    if shop.measure == ("eye",):
        hand = "a practised hand" if shop.skill == Skill() else "the hand you described"
        said.append(f"Heat is judged by eye in {shop.light}, by {hand}.")
    said += [
        f"{bath.medium}: {bath.agitation} agitation, bath so large that it does not warm."
        for bath in shop.bath
        if bath.volume is None
    ]
    said += presumed(advice.job.bench.stock, advice.job.catalog.marks)
    unused = _not_used(advice.asked)
    if unused:
        said.append(f"Given, but no figure of this advice uses it yet: {', '.join(unused)}.")
    for unclear in advice.job.bench.unclear:
        names = ", ".join(steel.name for steel in unclear.steels)
        said.append(
            f"'{unclear.bar.steel}' in the rack may be any of {names}: make sure which."
        )
    return said
