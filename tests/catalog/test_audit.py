"""Each rule of the audit stays silent on the shipped catalogue and fires on a broken one."""

from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import Catalog, load_catalog
from catalog.audit import RULES, audit
from catalog.caution import Family, Source
from catalog.steel import Hardened, Tempered
from catalog.values import Curve, Number, Span

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


def span(low: float, high: float) -> Span:
    return Span(min=low, max=high, **ORIGIN)


def hardened(steel, **update: object) -> Hardened:
    assert steel.hardened is not None
    return steel.hardened.model_copy(update=update)


def curve(*points: tuple[float, float]) -> Tempered:
    return Tempered(curve_hrc=Curve(points=points, **ORIGIN), time_h=Number(value=1, **ORIGIN))


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
            "unknown.toml: limitation.0.caution: must be a key of cautions.toml "
            "(got no-such-caution)"
        ),
    )


@pytest.mark.parametrize("key", ["heat_sources", "media"])
def test_unknown_equipment_is_reported(shipped, key):
    assert audit(changed(shipped, "routes", "through-torch", **{key: ("sunlight",)})) == (
        f"through-torch.toml: {key}: must be the name of a file in {key} (got sunlight)",
    )


def test_a_name_of_two_steels_is_reported_at_both(shipped):
    named = shipped.steels["c45"].designations.model_copy(update={"old_en": ("EN 24",)})
    assert audit(changed(shipped, "steels", "c45", designations=named)) == (
        (
            "817m40.toml: designations: name must belong to one steel, or be a trade name of "
            "each (got en24 also in c45)"
        ),
        (
            "c45.toml: designations: name must belong to one steel, or be a trade name of "
            "each (got en24 also in 817m40)"
        ),
    )


def test_a_loose_trade_name_may_belong_to_several_but_not_be_standard_for_one(shipped):
    def with_drill_rod(system: str) -> Catalog:
        named = shipped.steels["l6"].designations.model_copy(update={system: ("Drill Rod",)})
        return changed(shipped, "steels", "l6", designations=named)

    assert audit(with_drill_rod("trade")) == ()
    (line,) = audit(with_drill_rod("aisi"))
    assert line.startswith("l6.toml: designations: ")


@pytest.mark.parametrize(
    ("lower", "upper", "low", "high"),
    [("ms", "ac1", 760, 735), ("ac1", "ac3", 790, 780), ("ac3", "normalise", 815, 810)],
)
def test_transformations_out_of_order_are_reported(shipped, lower, upper, low, high):
    steel = shipped.steels["c45"]
    known = {**steel.temperature_c, lower: span(low, low), upper: span(high, high)}
    broken = changed(shipped, "steels", "c45", temperature_c=known)
    assert (
        f"c45.toml: temperature_c.{lower}: must be below {upper} (got {low} over {high} °C)"
    ) in audit(broken)


@pytest.mark.parametrize(("heat", "floor", "at"), [(770, "ac3", 780), (735, "ac1", 735)])
def test_a_hardening_heat_that_is_too_low_is_reported(shipped, heat, floor, at):
    cold = hardened(shipped.steels["c45"], temperature_c=span(heat, 860))
    assert (
        f"c45.toml: hardened.temperature_c.min: must be above {floor}, {at} °C (got {heat} °C)"
    ) in audit(changed(shipped, "steels", "c45", hardened=cold))


def test_a_case_is_hardened_between_ac1_and_ac3(shipped):
    steel = shipped.steels["16mncr5"]
    assert steel.hardened is not None
    assert steel.hardened.temperature_c.low < steel.temperature_c["ac3"].middle
    cold = hardened(steel, temperature_c=span(740, 780))
    assert audit(changed(shipped, "steels", "16mncr5", hardened=cold)) == (
        "16mncr5.toml: hardened.temperature_c.min: must be above ac1, 740 °C (got 740 °C)",
    )


def test_a_curve_that_rises_is_reported(shipped):
    rising = curve((150, 63), (200, 60), (300, 61), (400, 61.5))
    assert audit(changed(shipped, "steels", "c105u", tempered=rising)) == (
        (
            "c105u.toml: tempered.curve_hrc.points: must not rise by more than 1 HRC without "
            "secondary hardening (got 61.5 HRC at 400 °C after 60)"
        ),
    )


def test_a_curve_may_rise_where_carbides_harden_again(shipped):
    rising = curve((300, 56), (520, 61))
    assert audit(changed(shipped, "steels", "x153crmov12", tempered=rising)) == ()


def test_a_curve_above_the_hardness_as_quenched_is_reported(shipped):
    hard = curve((100, 69), (200, 60))
    assert audit(changed(shipped, "steels", "c105u", tempered=hard)) == (
        "c105u.toml: tempered.curve_hrc.points: must not pass 67 HRC as quenched (got 69 HRC)",
    )


@pytest.mark.parametrize(
    ("severe", "mild", "smaller", "larger"), [("water", "oil", 8, 9), ("oil", "air", 9, 10)]
)
def test_section_limits_out_of_order_are_reported(shipped, severe, mild, smaller, larger):
    limits = {
        severe: Number(value=smaller, **ORIGIN),
        mild: Number(value=larger, **ORIGIN),
    }
    odd = hardened(shipped.steels["115crv3"], section_limit_mm=limits)
    assert audit(changed(shipped, "steels", "115crv3", hardened=odd)) == (
        (
            f"115crv3.toml: hardened.section_limit_mm.{severe}: must be at least that of "
            f"{mild} (got {smaller} under {larger} mm)"
        ),
    )


def test_a_condition_given_twice_is_reported(shipped):
    first, *others = shipped.steels["c45"].condition
    broken = changed(shipped, "steels", "c45", condition=(first, first, *others))
    assert audit(broken) == (
        f"c45.toml: condition.name: must differ within a steel (got {first.name} twice)",
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
