"""What the outputs of several questions say of a demand, a temper and an option's failures."""

import numpy as np

from selector.decision.option import Option
from selector.errors import OutOfRangeError
from selector.heat.colour import temper_colour
from selector.job.demand import Demand
from selector.job.treatment import Temper
from selector.option.cost import Bill
from selector.option.movement import Movement
from selector.option.temper_choice import Choice
from selector.record import Spread, TemperOut, ZoneOut, rounded, sampled_out
from selector.requirement import Requirement


def zone_out(demand: Demand) -> ZoneOut:
    """Return the demand of a zone as plain data, zones counted from 1."""
    return ZoneOut(
        zone=demand.zone + 1,
        low_hrc=demand.low_hrc,
        high_hrc=demand.high_hrc,
        floor_hrc=demand.floor_hrc,
        ceiling_hrc=demand.ceiling_hrc,
        depth_mm=demand.depth_mm,
        derived=demand.derived,
        reason=demand.reason,
    )


def temper_out(choice: Choice) -> TemperOut:
    """Return a chosen temper with its colour, where it shows one."""
    temper = choice.temper
    if temper.means == "none":
        return TemperOut(
            label="none", means="none", temperature_c=None, time_min=None, cycles=0,
            band_c=None, colour=None,
        )  # fmt: skip
    return TemperOut(
        label=temper.label,
        means=temper.means,
        temperature_c=temper.temperature_c,
        time_min=temper.time_s / 60,
        cycles=temper.cycles,
        band_c=choice.band_c,
        colour=_colour(temper),
    )


def _colour(temper: Temper) -> str | None:
    """Return the colour a polished part shows at a temper, None where the tables end."""
    try:
        return temper_colour(temper.temperature_c, temper.time_s).name
    except OutOfRangeError:
        return None


def cost_out(money: Bill) -> Spread:
    """Return the cost of a good part, its items at the middle as inputs."""
    relation, source = "sum over good, reworked, scrapped", "price list"
    return sampled_out(money.cost, money.currency, relation, source, money.as_json())


def movement_out(moved: Movement) -> Spread:
    """Return how far a part moves, in mm."""
    relation = "bow and growth by route and slenderness"
    source = "distortion.bow, distortion.size_change"
    return sampled_out(moved.moved_mm, "mm", relation, source)


def failing_out(option: Option) -> Spread:
    """Return the chance of failing in service; unknown where its toughness is."""
    return sampled_out(
        option.judged.failing,
        "-",
        "least factor of strength or contact below 1, or it snaps",
        "strength_factor.least_factor; mechanics.toughness.snap_likelihood, estimated",
    )


def failure_cost_out(option: Option, asked: Requirement) -> Spread | None:
    """Return what failures in service cost a part; None where no such cost is stated."""
    price = asked.load.failure_cost
    if price is None:
        return None
    return sampled_out(
        np.full(1, price * option.judged.failing_all),
        option.judged.prediction.bill.currency,
        "cost of a failure × chance of failing in service",
        "load.failure_cost",
        {"failure_cost": price, "chance": rounded(option.judged.failing_all) or "unknown"},
    )
