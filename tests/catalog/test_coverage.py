import re
from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import load_catalog
from catalog.coverage import gaps, read_share, untried_cold, wanted_count
from catalog.quantity import sourced

KNOWN = load_catalog()
# Of the values that a steel's own routes ask for, this share at least is there. [-]
LEAST_SHARE = 0.95


def without(slug, **update):
    steel = KNOWN.steels[slug].model_copy(update=update)
    return replace(KNOWN, steels=MappingProxyType({slug: steel}))


def keys(catalog, slug):
    return {gap.key for gap in gaps(catalog) if gap.steel == slug}


def test_the_shipped_catalogue_is_nearly_whole():
    assert 1 - len(list(gaps(KNOWN))) / wanted_count(KNOWN) >= LEAST_SHARE


@pytest.mark.parametrize(
    ("slug", "update", "key"),
    [
        ("c45", {"machinability_pct": None}, "machinability_pct"),
        ("c45", {"temperature_c": {}}, "temperature_c.anneal"),
        ("115crv3", {"tempered": None}, "tempered"),
        ("31crmo12", {"strength_hb": ()}, "strength_hb"),
        ("x153crmov12", {"carbide_vol_pct": {}}, "carbide_vol_pct"),
        ("31crmo12", {"nitrided": None}, "nitrided"),
    ],
)
def test_what_is_taken_away_is_a_gap(slug, update, key):
    assert key not in keys(KNOWN, slug)
    assert key in keys(without(slug, **update), slug)


def test_nearly_all_steels_have_all_that_their_routes_ask():
    lacking = {gap.steel for gap in gaps(KNOWN)}
    assert 1 - len(lacking) / len(KNOWN.steels) >= LEAST_SHARE


def test_frost_is_asked_of_steel_hardened_for_strength_alone():
    untried, strong = untried_cold(without("42crmo4", temperature_c={}))
    assert (untried, strong) == (["42crmo4"], 1)
    assert untried_cold(without("115crv3")) == ([], 0)


def test_what_was_read_is_counted_value_by_value():
    read, part, every = read_share(KNOWN)
    fewer, _, all_of_one = read_share(without("c45"))
    assert 0 < fewer < read
    assert 0 < part < every - read
    assert all_of_one < every


# What the place of a value says where some of it was not read there.
NOT_READ = re.compile(
    r"(rest|by|and \w+) common practice|from memory|as recalled|recalled of|, recalled"
    r"|\bestimate\b|usual practice"
)


def test_what_is_called_read_says_of_no_part_that_it_was_not():
    groups = (KNOWN.steels, KNOWN.routes, KNOWN.media, KNOWN.heat_sources, KNOWN.cautions)
    half_read = [
        f"{slug}: {key}: {value.at}"
        for group in groups
        for slug, record in group.items()
        for key, value in sourced(record)
        if value.seen == "read" and NOT_READ.search(value.at)
    ]
    assert half_read == []


def test_what_a_steel_is_not_for_is_no_gap():
    assert not {"tempered", "nitrided", "carbide_vol_pct"} & keys(KNOWN, "c45")
    assert keys(KNOWN, "unknown") == set()
    assert "hardened.soak_min" not in keys(without("s235"), "s235")


def test_a_steel_without_a_price_is_a_gap():
    prices = KNOWN.prices.model_copy(update={"steel_per_kg": {}})
    assert "prices.steel_per_kg.c45" in keys(replace(KNOWN, prices=prices), "c45")
