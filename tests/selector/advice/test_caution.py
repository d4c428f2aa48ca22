import pytest

from selector.advice.advise import advise
from selector.advice.caution import advice_cautions as cautions
from selector.option.caution import STEPS
from tests.dog import GONE, asked, only
from tests.once import advised

NO_STEEL_DOES_THIS = {"zone.0.hardness": {"min": "67 HRC", "must": True}}


def ids(changes, *steels):
    return [key for key, _ in cautions(advised(changes, *steels, "42crmo4"))]


def test_they_come_once_each_in_the_order_of_the_work(advice):
    found = cautions(advice)
    steps = [STEPS.index(caution.step) for _, caution in found]
    assert steps == sorted(steps)
    assert len({key for key, _ in found}) == len(found)


def test_local_codes_are_always_named(advice):
    assert "local-codes" in dict(cautions(advice))
    assert ids(NO_STEEL_DOES_THIS) == ["local-codes"]


def test_the_bath_of_a_leading_option_brings_its_own(advice):
    found = dict(cautions(advice))
    for option in advice.options[:3]:
        medium, route = option.treatment.medium, option.treatment.route
        if medium is not None and route.place == "workshop":
            assert set(medium.cautions) <= set(found)
        assert set(route.cautions) <= set(found)


FURNACE_AND_WATER = {
    "workshop.protect": ["coat"],
    "workshop.heat": [{"source": "muffle-furnace"}],
    "workshop.bath": [{"medium": "water"}],
}


def test_neither_gas_nor_oil_is_warned_of_where_there_is_none():
    found = ids(FURNACE_AND_WATER, "c45")
    assert "electric-furnace" in found
    assert not {"gas-cylinders-flashback", "oil-fire", "oil-flash-point"} & set(found)


@pytest.mark.parametrize(("steel", "warned"), [("c45", False), ("100mncrw4", True)])
def test_a_water_bath_is_warned_of_for_steel_meant_for_oil_alone(steel, warned):
    found = [key for key, _ in cautions(advised({}, steel))]
    assert ("water-for-oil-steel" in found) is warned


BROUGHT = [
    ({"safety_use": "lifting"}, "lifting-brakes-pressure"),
    ({"load.impact": "hammered"}, "struck-head-chips"),
    ({"part.condition": "plated"}, "zinc-fume"),
    ({"part.condition": "hard"}, "anneal-before-requench"),
    ({"part.condition": "welded"}, "weld-hardened"),
    ({"part.shape_class": "coil-spring"}, "spring-under-load"),
    ({"part.name": "Door-lock spring", "zone.0.wear": "none"}, "spring-under-load"),
    ({"workshop.stock": [{"steel": "unknown"}]}, "unknown-steel-coupon"),
]


@pytest.mark.parametrize(("changes", "key"), BROUGHT, ids=[key for _, key in BROUGHT])
def test_part_use_and_stock_bring_theirs(changes, key):
    # No option is left, so none brings cautions of its own.
    assert key in ids({**NO_STEEL_DOES_THIS, **changes}, "unknown")
    assert key not in ids(NO_STEEL_DOES_THIS, "unknown")


@pytest.mark.parametrize(
    ("key", "changes", "raised"),
    [
        ("sharp-notch-quench", {}, True),
        ("finish-after-heat", {}, True),
        ("dim-light", {}, True),
        ("shield-the-flame", {}, True),
        ("shield-the-flame", {"workshop.heat": [{"source": "muffle-furnace"}]}, False),
        ("shield-the-flame", {"workshop.heat": [{"source": "charcoal-forge"}]}, True),
        ("bar-out-of-round", {"limit.runout": 0.01}, True),
        ("bar-out-of-round", {"limit.runout": 0.2}, False),
        ("dim-light", {"workshop.heat": [{"source": "muffle-furnace"}]}, False),
        ("edge-runs-hot", {"zone.0.wear": "abrasive"}, True),
        ("edge-runs-hot", {}, False),
        ("temper-by-zone", {}, True),
    ],
)
def test_a_way_of_working_that_spoils_the_part_is_warned_of(key, changes, raised):
    assert (key in ids(changes)) == raised


def test_one_zone_hardened_whole_needs_no_second_temper():
    found = advise(asked({"zone.1": GONE}), only("42crmo4"), route="through-torch")
    assert found.options
    assert "temper-by-zone" not in dict(cautions(found))


def test_how_to_temper_is_no_matter_of_a_part_that_a_firm_hardens():
    sent = {"workshop.subcontract": True, "workshop.heat": []}
    found = advise(asked(sent), only("42crmo4"), route="subcontract-vacuum")
    assert found.options
    assert "temper-by-zone" not in dict(cautions(found))
    assert "finish-after-heat" in dict(cautions(found))
