"""The price list: shipped demo prices, marked invented, or a workshop's own file."""

from typing import Annotated

from pydantic import Field

from catalog.values import Record, Text

Positive = Annotated[float, Field(ge=0)]


class Prices(Record):
    """What things cost, in one currency.

    Steel prices are per kg of cut bar by steel slug, `default_per_kg` for the rest, times the
    factor of the supply condition. Subcontract charges are by route slug. `invented` prices say
    so wherever they are shown.
    """

    currency: Text
    invented: bool
    note: Text
    default_per_kg: Positive
    steel_per_kg: dict[str, Positive]
    condition_factor: dict[str, Positive]
    hard_element_per_kg: Positive
    cut_charge: Positive
    minimum_length_mm: Positive
    labour_per_h: Positive
    gas_per_kg: Positive
    furnace_per_h: Positive
    consumables_per_batch: Positive
    carriage: Positive
    subcontract_minimum: dict[str, Positive]
    subcontract_per_kg: dict[str, Positive]
    removal_cm3_per_h: Positive
