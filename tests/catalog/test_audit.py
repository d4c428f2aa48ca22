"""Each rule of the audit stays silent on the shipped catalogue and fires on a broken one."""

from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import Catalog, load_catalog
from catalog.audit import RULES, audit
from catalog.caution import Family, Source
from catalog.values import Number

ORIGIN = {"source": "own-estimate", "at": "test", "basis": "estimated", "seen": "memory"}


@pytest.fixture(scope="module")
def shipped() -> Catalog:
    return load_catalog()


def with_entry(catalog: Catalog, group: str, key: str, entry: object) -> Catalog:
    return replace(
        catalog, **{group: MappingProxyType({**getattr(catalog, group), key: entry})}
    )


def without(catalog: Catalog, group: str, *keys: str) -> Catalog:
    left = {key: entry for key, entry in getattr(catalog, group).items() if key not in keys}
    return replace(catalog, **{group: MappingProxyType(left)})


def changed(catalog: Catalog, group: str, key: str, **update: object) -> Catalog:
    entry = getattr(catalog, group)[key].model_copy(update=update)
    return with_entry(catalog, group, key, entry)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.__name__)
def test_the_shipped_catalogue_keeps_the_rule(rule, shipped):
    assert list(rule(shipped)) == []


def test_unknown_source_is_reported(shipped):
    rating = Number(value=57, **{**ORIGIN, "source": "no-such-book"})
    assert audit(changed(shipped, "steels", "c45", machinability_pct=rating)) == (
        "c45.toml: machinability_pct.source: must be a key of sources.toml (got no-such-book)",
    )


def test_unknown_source_of_a_caution_is_reported(shipped):
    fact = shipped.cautions["oil-fire"].fact.model_copy(update={"source": "no-such-book"})
    assert audit(changed(shipped, "cautions", "oil-fire", fact=fact)) == (
        "cautions.toml: oil-fire.fact.source: must be a key of sources.toml (got no-such-book)",
    )


def test_unused_source_is_reported(shipped):
    dead = Source(citation="A book nobody opened")
    assert audit(with_entry(shipped, "sources", "dead-book", dead)) == (
        "sources.toml: dead-book: must be the source of some value (got no use of it)",
    )


def test_empty_family_is_reported(shipped):
    assert audit(with_entry(shipped, "families", "bronze", Family(name="Bronze"))) == (
        "families.toml: bronze: must be the family of some steel (got no steel in it)",
    )


def test_a_usual_steel_of_another_family_is_reported(shipped):
    family = shipped.families["cr-12-tool"].model_copy(update={"usual": "c45"})
    assert audit(with_entry(shipped, "families", "cr-12-tool", family)) == (
        "families.toml: cr-12-tool.usual: must be the slug of a steel of the family (got c45)",
    )


def test_what_a_user_replaces_does_not_make_shipped_entries_dead(shipped):
    alone = shipped.steels["115crv3"]
    assert [s.slug for s in shipped.steels.values() if s.family == alone.family] == ["115crv3"]
    assert audit(changed(shipped, "steels", "115crv3", family="water-tool")) == ()


@pytest.mark.parametrize(
    ("group", "key"), [("routes", "age-harden"), ("media", "oil"), ("heat_sources", "forge")]
)
def test_unknown_caution_is_reported(shipped, group, key):
    assert audit(changed(shipped, group, key, cautions=("no-such-caution",))) == (
        f"{key}.toml: cautions: must be a key of cautions.toml (got no-such-caution)",
    )


def test_unknown_caution_of_a_limitation_is_reported(shipped):
    first, *others = shipped.steels["unknown"].limitation
    wrong = first.model_copy(update={"caution": "no-such-caution"})
    broken = changed(shipped, "steels", "unknown", limitation=(wrong, *others))
    assert audit(broken) == (
        (
            "unknown.toml: limitation.1.caution: must be a key of cautions.toml "
            "(got no-such-caution)"
        ),
    )


@pytest.mark.parametrize("key", ["heat_sources", "media"])
def test_unknown_equipment_is_reported(shipped, key):
    assert audit(changed(shipped, "routes", "through-torch", **{key: ("sunlight",)})) == (
        f"through-torch.toml: {key}: must be the name of a file in {key} (got sunlight)",
    )


@pytest.mark.parametrize(
    "table", ["steel_per_kg", "condition_factor", "subcontract_minimum", "subcontract_per_kg"]
)
def test_a_price_of_nothing_is_reported(shipped, table):
    prices = shipped.prices
    listed = prices.model_copy(update={table: {**getattr(prices, table), "unobtainium": 1.0}})
    assert audit(replace(shipped, prices=listed)) == (
        (
            f"prices.toml: {table}.unobtainium: must be the price of something in the "
            "catalogue (got no such name)"
        ),
    )


@pytest.mark.parametrize("table", ["subcontract_minimum", "subcontract_per_kg"])
def test_work_sent_out_without_a_price_is_reported(shipped, table):
    listed = dict(getattr(shipped.prices, table))
    del listed["subcontract-nitride"]
    prices = shipped.prices.model_copy(update={table: listed})
    assert audit(replace(shipped, prices=prices)) == (
        f"prices.toml: {table}.subcontract-nitride: must be given (got nothing)",
    )


def test_a_missing_class_of_steel_is_reported(shipped):
    ageing = [slug for slug, steel in shipped.steels.items() if steel.kind == "maraging"]
    lines = audit(without(shipped, "steels", *ageing))
    assert "steels: kind: must include maraging (got none)" in lines


def test_too_small_a_choice_is_reported(shipped):
    few = without(shipped, "steels", *list(shipped.steels)[29:])
    assert "steels: (folder): must be 30 files or more (got 29)" in audit(few)
    few = without(shipped, "routes", *list(shipped.routes)[15:])
    assert "routes: (folder): must be 16 files or more (got 15)" in audit(few)


def test_several_faults_come_in_one_pass(shipped):
    broken = changed(shipped, "routes", "local-torch", media=("moonlight",))
    broken = changed(broken, "routes", "through-torch", media=("sunlight",))
    assert len(audit(broken)) == 2


def test_a_furnace_that_heats_a_zone_is_reported(shipped):
    named = changed(shipped, "routes", "local-torch", heat_sources=("kiln",))
    (fault,) = audit(named)
    assert fault.startswith("local-torch.toml: heat_sources: must be of kind flame, fire, ")
    assert fault.endswith("(got kiln, a furnace)")
