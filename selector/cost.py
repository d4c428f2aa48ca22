"""Cost of one good part: a sum over what can happen, coupon included.

Paths: the part comes out good; it is re-tempered or re-hardened; it is scrapped, and a new
blank is bought, machined and treated. Failure in service is told apart, not in the sum.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from catalog.price import Prices
from selector.geometry import DENSITY_KG_PER_MM3, blank_mm
from selector.surroundings import Surroundings
from selector.treatment import Temper, Treatment

Floats = NDArray[np.float64]
# Spread of prices about the list, and share of parts that go through the heat twice.
PRICE_SD = 0.15
REWORK_SHARE = {"subcontract": 0.02, "supplier": 0.0, "workshop": 0.12}
DELIVERY_DAYS = {"easy": 1.0, "order": 4.0, "rare": 12.0}
REFERENCE_MACHINABILITY = 70.0
# Setting up and measuring, skinning black bar, and the size that ground bar brings along. [h]
SETUP_H, SKIN_H, GROUND_SAVES_H = 0.4, 0.2, 0.15
BARK_MM = 2.0


@dataclass(frozen=True, slots=True, eq=False)
class Bill:
    """Cost per good part over the draws, its items at the middle, and days."""

    cost: Floats
    items: dict[str, float]
    days: float
    currency: str
    invented: bool

    def as_json(self) -> dict[str, Any]:
        """Return the items as plain data."""
        return {name: round(value, 2) for name, value in self.items.items()}


def _blank(treatment: Treatment, around: Surroundings) -> tuple[float, float]:
    """Return diameter and length of the bar, bark and smallest size sold included. [mm]."""
    diameter, length = blank_mm(around.asked.part)
    if treatment.condition.surface == "black":
        diameter += BARK_MM
    return max(diameter, treatment.condition.size_mm.low), length


def _material(treatment: Treatment, around: Surroundings, prices: Prices) -> float:
    """Return the price of the blank, minimum cut length shared over the quantity."""
    if treatment.stock is not None:
        return 0.0
    diameter, length = _blank(treatment, around)
    count = around.asked.part.quantity
    bought = max(length, prices.minimum_length_mm / count)
    weight = np.pi / 4 * diameter**2 * bought * DENSITY_KG_PER_MM3
    if treatment.condition.name == "hard-element":
        per_kg = prices.hard_element_per_kg
    else:
        per_kg = prices.steel_per_kg.get(treatment.steel.slug, prices.default_per_kg)
        per_kg *= prices.condition_factor.get(treatment.condition.name, 1.0)
    return float(weight * per_kg + prices.cut_charge / count)


def _machining(treatment: Treatment, around: Surroundings, prices: Prices) -> float:
    """Return the cost of cutting the part from its blank in the condition it is bought in."""
    diameter, length = _blank(treatment, around)
    removed = np.pi / 4 * diameter**2 * length - around.mass_kg / DENSITY_KG_PER_MM3
    rating = treatment.steel.machinability_pct
    ease = (rating.value if rating else 55.0) / REFERENCE_MACHINABILITY
    if treatment.condition.name == "prehard":
        ease *= 0.75
    if treatment.condition.name == "hard-element":
        ease = 0.15
    hours = max(removed, 0.0) / 1000 / (prices.removal_cm3_per_h * ease)
    surface = treatment.condition.surface
    extra = {"black": SKIN_H, "bright": 0.0, "ground": -GROUND_SAVES_H}[surface]
    hours += (SETUP_H + extra) / around.asked.part.quantity**0.5
    return float(hours * prices.labour_per_h)


def _treatment(treatment: Treatment, temper: Temper, around: Surroundings) -> float:
    """Return the cost of heat, quench and temper of one part."""
    prices, count = around.catalog.prices, around.asked.part.quantity
    route = treatment.route
    labour = route.labour_h.value * prices.labour_per_h / count**0.3
    if route.place == "subcontract":
        minimum = prices.subcontract_minimum.get(route.slug, 80.0)
        by_mass = prices.subcontract_per_kg.get(route.slug, 5.0) * around.mass_kg
        return float(labour + max(minimum / count, by_mass) + prices.carriage / count)
    if route.process == "none":
        return 0.0
    source = treatment.source
    gas = source.gas_per_h_kg.value if source and source.gas_per_h_kg else 0.0
    hours = 0.4 if gas else 2.0
    energy = hours * (gas * prices.gas_per_kg if gas else prices.furnace_per_h)
    if temper.means in {"oven", "furnace"}:
        energy += prices.furnace_per_h * temper.time_s * temper.cycles / 3600
    return float(labour + (energy + prices.consumables_per_batch) / count**0.7)


def _coupon(treatment: Treatment, around: Surroundings, blank: float, treat: float) -> float:
    """Return the cost of a coupon of the same bar, shared over the quantity."""
    if treatment.route.place != "workshop" or treatment.route.process == "none":
        return 0.0
    return (0.3 * blank + 0.4 * treat) / around.asked.part.quantity


def bill(
    treatment: Treatment, temper: Temper, around: Surroundings, crack_rate: Floats
) -> Bill:
    """Return the cost of one good part and the days it takes.

    Parameters
    ----------
    treatment : Treatment
        What is done.
    temper : Temper
        How it is drawn.
    around : Surroundings
        Part, prices, draws.
    crack_rate : ndarray
        Rate of scrap by cracking; shape (draws,). [-]

    Returns
    -------
    Bill
        In the currency of the price list.
    """
    prices = around.catalog.prices
    blank = _material(treatment, around, prices)
    cut = _machining(treatment, around, prices)
    treat = _treatment(treatment, temper, around)
    coupon = _coupon(treatment, around, blank, treat)
    place = treatment.route.place
    rework = REWORK_SHARE[place] * treat
    scrap = crack_rate / (1.0 - crack_rate) * (blank + cut + treat)
    level = np.exp(PRICE_SD * around.shared()["price_level"])
    cost = (blank + cut + treat + rework + coupon + scrap) * level
    wait = 0.0 if treatment.stock else DELIVERY_DAYS[treatment.condition.availability]
    return Bill(
        cost=np.asarray(cost),
        items={
            "bar": blank,
            "machining": cut,
            "treatment": treat,
            "rework": rework,
            "coupon": coupon,
            "scrap": float(np.mean(scrap)),
        },
        days=wait + treatment.route.days.value + 0.5,
        currency=prices.currency,
        invented=prices.invented,
    )
