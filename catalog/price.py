"""The price list: shipped demo prices, marked invented, or a workshop's own file."""

from typing import Annotated

from pydantic import Field

from catalog.values import Record, Text

# Money, hours or days; nothing is an amount too.
Amount = Annotated[float, Field(ge=0)]
Above0 = Annotated[float, Field(gt=0)]
Share = Annotated[float, Field(ge=0, le=1)]


class Practice(Record):
    """Hours, shares and factors that turn a price list into the cost of a part.

    Common practice, no source; each may be replaced in the price file.
    """

    price_log_sd: Amount = 0.15
    setup_h: Amount = 0.4
    skin_black_bar_h: Amount = 0.2
    ground_bar_saves_h: Amount = 0.15
    # Cutting pre-hardened bar at about 30 HRC, and grinding a ready-hard element to length.
    removal_prehard_factor: Above0 = 0.75
    removal_hard_factor: Above0 = 0.15
    heat_by_flame_h: Amount = 0.4
    heat_by_furnace_h: Amount = 2.0
    inspect_h: Amount = 0.1
    straighten_h: Amount = 0.5
    # Of the parts of a route, what goes through the heat again for reasons no model holds.
    rework_workshop_fraction: Share = 0.12
    rework_subcontract_fraction: Share = 0.02
    # Of the cost of the treatment, what tempering a part again costs.
    retemper_fraction: Share = 0.3
    coupon_bar_fraction: Share = 0.3
    coupon_treatment_fraction: Share = 0.4
    easy_days: Amount = 1.0
    order_days: Amount = 4.0
    rare_days: Amount = 12.0
    workshop_days: Amount = 0.5


class Prices(Record):
    """What things cost, in one currency.

    Steel prices are per kg of cut bar by steel slug, `default_per_kg` for the rest, times the
    factor of the supply condition. Subcontract charges are by route slug; those by the hour
    are for the hours that a layer is grown. `minimum_length_mm` is the shortest piece that is
    sold, if any. `wrapping` is foil or coating of one part.
    `invented` prices say so wherever they are shown.
    """

    currency: Text
    invented: bool
    note: Text
    default_per_kg: Amount
    steel_per_kg: dict[str, Amount]
    condition_factor: dict[str, Amount]
    hard_element_per_kg: Amount
    cut_charge: Amount
    minimum_length_mm: Amount = 0.0
    labour_per_h: Amount
    gas_per_kg: Amount
    furnace_per_h: Amount
    consumables_per_batch: Amount
    wrapping: Amount = 0.0
    carriage: Amount
    subcontract_minimum: dict[str, Amount]
    subcontract_per_kg: dict[str, Amount]
    subcontract_per_h: Annotated[dict[str, Amount], Field(default_factory=dict)]
    removal_cm3_per_h: Above0
    practice: Practice = Practice()
