import pytest

from catalog import load_catalog
from selector.option.protection import protection, protection_cost
from tests.dog import asked, work

PRICES = load_catalog().prices
FURNACE = {"route": "through-furnace", "source": "muffle-furnace"}


@pytest.mark.parametrize(
    ("treatment", "stock", "kept"),
    [
        (work("x153crmov12", medium="air", **FURNACE), 0.0, "foil"),
        (work("100mncrw4", medium="oil", **FURNACE), 0.0, "paste"),
        (work("100mncrw4", medium="oil", **FURNACE), 0.4, "none"),
        (work("42crmo4"), 0.0, "none"),
        (work("42crmo4", "subcontract-vacuum", "air", None), 0.0, "none"),
    ],
    ids=["air", "oil", "ground", "torch", "firm"],
)
def test_the_skin_is_kept_by_what_the_quench_allows(treatment, stock, kept):
    part = asked({"part.stock_removal": stock}).part
    assert protection(treatment, part) == kept
    assert (protection_cost(treatment, part, PRICES) > 0) == (kept != "none")


def test_foil_is_dearer_than_coating():
    part = asked().part
    by_air, by_oil = (
        protection_cost(work("x153crmov12", medium=medium, **FURNACE), part, PRICES)
        for medium in ("air", "oil")
    )
    assert by_air > by_oil
