"""Cost of one good part: a sum over what can happen, coupon included.

The part is good, or it is straightened, tempered again, hardened again or scrapped; for scrap a
new blank is bought, machined and treated. Failure in service is not in the sum. Every rate,
hour and share stands in the price file.
"""

from dataclasses import dataclass, replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from catalog.price import Practice, Prices
from catalog.steel import Steel
from selector.hazards.decarburisation import bar_allowance_mm
from selector.job.blank import Blank, blank
from selector.job.geometry import DENSITY_KG_PER_MM3, mass_kg
from selector.job.job import Job
from selector.job.ready_hard import is_screw
from selector.job.treatment import Temper, Treatment
from selector.option.labour import labour_h
from selector.requirement.part import Part

Floats = NDArray[np.float64]
Bools = NDArray[np.bool_]
REFERENCE_MACHINABILITY = 70.0
# How tests fall with the number of parts: they are spot checks. Common practice. [-]
SPOT_CHECKED = 0.5
# Bark of black bar of carbon and alloy steel, a side. Common practice. [mm]
USUAL_BARK_MM = 1.0


@dataclass(frozen=True, slots=True, eq=False)
class Mishaps:
    """What goes wrong, over the sample: a rate of cracking, and which parts come out bent.

    Bent is beyond what is permitted; too hard and too soft are against the demanded window.
    """

    crack_rate: Floats | float = 0.0
    bent: Floats | Bools | float = 0.0
    too_hard: Floats | Bools | float = 0.0
    too_soft: Floats | Bools | float = 0.0


@dataclass(frozen=True, slots=True, eq=False)
class Bill:
    """Cost per good part over the sample, its items at the middle, and days."""

    cost: Floats
    items: dict[str, float]
    days: float
    currency: str
    invented: bool

    def as_json(self) -> dict[str, Any]:
        """Return the items as plain data."""
        return {name: round(value, 2) for name, value in self.items.items()}


@dataclass(frozen=True, slots=True, eq=False)
class Order:
    """The part to be made, the price list, and the sample of the price level. [-]."""

    part: Part
    prices: Prices
    price_level: Floats


def order_of(job: Job) -> Order:
    """Return the part of a job with the prices it is costed at."""
    return Order(job.asked.part, job.catalog.prices, job.shared()["price_level"])


def bark_mm(steel: Steel, thickness_mm: float) -> float:
    """Return what comes off each side of black bar before it may be hardened. [mm]."""
    tool = steel.kind.endswith("-tool") or steel.kind == "high-speed"
    return float(bar_allowance_mm(thickness_mm)) if tool else USUAL_BARK_MM


def bar_per_kg(treatment: Treatment, prices: Prices) -> float:
    """Return the price of a treatment's bar, per kg in the currency of the list."""
    if treatment.condition.name == "hard-element":
        return prices.hard_element_per_kg
    factor = prices.condition_factor.get(treatment.condition.name, 1.0)
    return prices.steel_per_kg.get(treatment.steel.slug, prices.default_per_kg) * factor


def _is_skimmed(treatment: Treatment) -> bool:
    """Return whether the skin of black bar has to come off: where it is hardened."""
    return treatment.route.process != "none"


def _blank(treatment: Treatment, part: Part) -> Blank:
    """Return the bar a part is cut from, bark and smallest size sold included."""
    net, sold, bark = blank(part, treatment.condition.shapes), treatment.condition, 0.0
    if sold.surface == "black" and _is_skimmed(treatment):
        bark = 2 * bark_mm(treatment.steel, net.size_mm)
    return net.thicker(bark, sold.size_mm.low)


def _material(treatment: Treatment, order: Order, bar: Blank) -> float:
    """Return the price of the blank and its cut, at least of the shortest piece sold."""
    prices, count = order.prices, order.part.quantity
    if treatment.stock is not None:
        # A bar of the rack is bought again some day, without a charge for the cut.
        return float(bar.volume_mm3 * DENSITY_KG_PER_MM3 * bar_per_kg(treatment, prices))
    bought = replace(bar, length_mm=max(bar.length_mm, prices.minimum_length_mm / count))
    weight = bought.volume_mm3 * DENSITY_KG_PER_MM3
    return float(weight * bar_per_kg(treatment, prices) + prices.cut_charge / count)


def _machining(treatment: Treatment, order: Order, bar: Blank) -> float:
    """Return the cost of cutting the part from its blank in the condition it is bought in."""
    if is_screw(treatment.condition) and treatment.route.process == "none":
        # It comes with its thread and its point.
        return 0.0
    part, prices = order.part, order.prices
    removed = bar.volume_mm3 - mass_kg(part) / DENSITY_KG_PER_MM3
    rating = treatment.steel.machinability_pct
    ease = (rating.value if rating else 55.0) / REFERENCE_MACHINABILITY
    practice = prices.practice
    if treatment.condition.name == "prehard":
        ease *= practice.removal_prehard_factor
    if treatment.condition.name == "hard-element":
        ease = practice.removal_hard_factor
    hours = max(removed, 0.0) / 1000 / (prices.removal_cm3_per_h * ease)
    surface = treatment.condition.surface
    if surface == "black" and not _is_skimmed(treatment):
        surface = "bright"
    extra = {
        "black": practice.skin_black_bar_h,
        "bright": 0.0,
        "ground": -practice.ground_bar_saves_h,
    }[surface]
    hours += max(practice.setup_h + extra, 0.0) / part.quantity**0.5
    return float(hours * prices.labour_per_h)


def _treatment(treatment: Treatment, temper: Temper, order: Order, layer_h: float) -> float:
    """Return the cost of heat, layer, quench and temper of one part."""
    prices, count = order.prices, order.part.quantity
    route = treatment.route
    labour = labour_h(treatment, order.part) * prices.labour_per_h
    if route.place == "subcontract":
        minimum = prices.subcontract_minimum.get(route.slug, 80.0)
        by_mass = prices.subcontract_per_kg.get(route.slug, 5.0) * mass_kg(order.part)
        by_hour = prices.subcontract_per_h.get(route.slug, 0.0) * layer_h / count
        batch = max(minimum / count, by_mass) + by_hour
        return float(labour + batch + prices.carriage / count)
    if route.process == "none":
        return 0.0
    source = treatment.source
    gas = source.gas_per_h_kg.value if source and source.gas_per_h_kg else 0.0
    practice = prices.practice
    hours = layer_h + (practice.heat_by_flame_h if gas else practice.heat_by_furnace_h)
    energy = hours * (gas * prices.gas_per_kg if gas else prices.furnace_per_h)
    if temper.means in {"oven", "furnace"}:
        energy += prices.furnace_per_h * temper.time_s * temper.cycles / 3600
    return float(labour + (energy + prices.consumables_per_batch) / count**0.7)


def coupon_cost(treatment: Treatment, temper: Temper, order: Order, layer_h: float) -> float:
    """Return what one coupon of the same bar costs, treated as the part will be.

    Parameters
    ----------
    treatment : Treatment
        What is done to which steel.
    temper : Temper
        Its temper.
    order : Order
        The part and the price list.
    layer_h : float
        Hours that a case or nitrided layer is grown. [h]

    Returns
    -------
    float
        In the currency of the list; nothing where no heat is given here.
    """
    if treatment.route.place != "workshop" or treatment.route.process == "none":
        return 0.0
    practice = order.prices.practice
    blank_cost = _material(treatment, order, _blank(treatment, order.part))
    return (
        practice.coupon_bar_fraction * blank_cost
        + practice.coupon_treatment_fraction * _treatment(treatment, temper, order, layer_h)
    )


def _rework(treatment: Treatment, prices: Prices, treat: float, mishaps: Mishaps) -> Floats:
    """Return the cost of tempering again, and of hardening again, over the sample."""
    practice = prices.practice
    usual = {
        "workshop": practice.rework_workshop_fraction,
        "subcontract": practice.rework_subcontract_fraction,
    }.get(treatment.route.place, 0.0)
    too_hard, too_soft = (
        np.asarray(share, dtype=float) for share in (mishaps.too_hard, mishaps.too_soft)
    )
    again = practice.retemper_fraction * too_hard + too_soft
    return np.asarray(treat * np.maximum(usual, again))


def days_of(treatment: Treatment, practice: Practice) -> float:
    """Return how long a part takes: until the bar is there, the route, the bench. [days]."""
    delivery = {
        "easy": practice.easy_days,
        "order": practice.order_days,
        "rare": practice.rare_days,
    }[treatment.condition.availability]
    wait = 0.0 if treatment.stock else delivery
    return wait + treatment.route.days.value + practice.workshop_days


def bill(
    treatment: Treatment,
    temper: Temper,
    order: Order,
    mishaps: Mishaps | None = None,
    layer_h: float = 0.0,
    wrapped: bool = False,
) -> Bill:
    """Return the cost of one good part and its days: a layer by its hours, foil by the part."""
    prices, mishaps = order.prices, mishaps or Mishaps()
    practice = prices.practice
    bar = _blank(treatment, order.part)
    material, cut = _material(treatment, order, bar), _machining(treatment, order, bar)
    treat = _treatment(treatment, temper, order, layer_h) + prices.wrapping * wrapped
    coupon = coupon_cost(treatment, temper, order, layer_h) / order.part.quantity
    heated = treatment.route.process != "none"
    inspect = practice.inspect_h * prices.labour_per_h * heated
    inspect /= order.part.quantity**SPOT_CHECKED
    straight = (
        practice.straighten_h * prices.labour_per_h * np.asarray(mishaps.bent, dtype=float)
    )
    rework = _rework(treatment, prices, treat, mishaps)
    odds = mishaps.crack_rate / (1.0 - mishaps.crack_rate)
    scrap = odds * (material + cut + treat)
    level = np.exp(practice.price_log_sd * order.price_level)
    cost = (material + cut + treat + inspect + straight + rework + coupon + scrap) * level
    return Bill(
        cost=np.asarray(cost),
        items={
            "bar": material,
            "machining": cut,
            "treatment": treat,
            "inspection": inspect,
            "straightening": float(np.mean(straight)),
            "rework": float(np.mean(rework)),
            "coupon": coupon,
            "scrap": float(np.mean(scrap)),
        },
        days=days_of(treatment, practice),
        currency=prices.currency,
        invented=prices.invented,
    )
