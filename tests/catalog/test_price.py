"""Prices: one currency, never negative, invented ones say so."""

import pytest
from pydantic import ValidationError

from catalog import load_catalog
from catalog.price import Prices

SHIPPED = load_catalog().prices


def test_the_shipped_prices_are_marked_invented():
    assert SHIPPED.invented
    assert "invented" in SHIPPED.note


@pytest.mark.parametrize("key", ["labour_per_h", "default_per_kg", "currency", "invented"])
def test_a_missing_price_is_refused(key):
    listed = {name: value for name, value in SHIPPED.model_dump().items() if name != key}
    with pytest.raises(ValidationError, match=rf"{key}\n  Field required"):
        Prices.model_validate(listed)


def test_a_misspelt_price_is_refused():
    with pytest.raises(ValidationError, match=r"labour_h\n  Extra inputs.*input_value=38"):
        Prices.model_validate({**SHIPPED.model_dump(), "labour_h": 38.0})


@pytest.mark.parametrize("bad", [-1.0, float("inf")])
def test_a_price_that_cannot_be_is_refused(bad):
    with pytest.raises(ValidationError, match=rf"steel_per_kg\.c45\n.*input_value={bad}"):
        Prices.model_validate({**SHIPPED.model_dump(), "steel_per_kg": {"c45": bad}})


def test_every_steel_sold_by_mass_has_its_own_price():
    by_mass = {
        steel.slug
        for steel in load_catalog().steels.values()
        if {condition.name for condition in steel.condition} != {"hard-element"}
    }
    assert by_mass
    assert by_mass - SHIPPED.steel_per_kg.keys() == set()
