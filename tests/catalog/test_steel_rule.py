from dataclasses import replace
from types import MappingProxyType

import pytest

from catalog import Catalog, load_catalog
from catalog.audit import audit
from catalog.steel import Hardened, Tempered
from catalog.steel_rule import STEEL_RULES
from catalog.values import Curve, Number, Span

ORIGIN = {"source": "own-estimate", "at": "test", "basis": "estimated", "seen": "memory"}


@pytest.fixture(scope="module")
def shipped() -> Catalog:
    return load_catalog()


def changed(catalog: Catalog, slug: str, **update: object) -> Catalog:
    """Return a catalogue in which one steel is changed."""
    steel = catalog.steels[slug].model_copy(update=update)
    return replace(catalog, steels=MappingProxyType({**catalog.steels, slug: steel}))


def span(low: float, high: float) -> Span:
    return Span(min=low, max=high, **ORIGIN)


def hardened(steel, **update: object) -> Hardened:
    assert steel.hardened is not None
    return steel.hardened.model_copy(update=update)


def curve(*points: tuple[float, float]) -> Tempered:
    return Tempered(curve_hrc=Curve(points=points, **ORIGIN), time_h=Number(value=1, **ORIGIN))


@pytest.mark.parametrize("rule", STEEL_RULES, ids=lambda rule: rule.__name__)
def test_the_shipped_steels_keep_the_rule(rule, shipped):
    assert list(rule(shipped)) == []


def test_a_name_of_two_steels_is_reported_at_both(shipped):
    named = shipped.steels["c45"].designations.model_copy(update={"old_en": ("EN 24",)})
    assert audit(changed(shipped, "c45", designations=named)) == (
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
        return changed(shipped, "l6", designations=named)

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
    broken = changed(shipped, "c45", temperature_c=known)
    assert (
        f"c45.toml: temperature_c.{lower}: must be below {upper} (got {low} over {high} °C)"
    ) in audit(broken)


@pytest.mark.parametrize(("heat", "floor", "at"), [(770, "ac3", 780), (735, "ac1", 735)])
def test_a_hardening_heat_that_is_too_low_is_reported(shipped, heat, floor, at):
    cold = hardened(shipped.steels["c45"], temperature_c=span(heat, 860))
    assert (
        f"c45.toml: hardened.temperature_c.min: must be above {floor}, {at} °C (got {heat} °C)"
    ) in audit(changed(shipped, "c45", hardened=cold))


def test_a_case_is_hardened_between_ac1_and_ac3(shipped):
    steel = shipped.steels["16mncr5"]
    assert steel.hardened is not None
    assert steel.hardened.temperature_c.low < steel.temperature_c["ac3"].middle
    cold = hardened(steel, temperature_c=span(740, 780))
    assert audit(changed(shipped, "16mncr5", hardened=cold)) == (
        "16mncr5.toml: hardened.temperature_c.min: must be above ac1, 740 °C (got 740 °C)",
    )


def test_a_curve_that_rises_is_reported(shipped):
    rising = curve((150, 63), (200, 60), (300, 61), (400, 61.5))
    assert audit(changed(shipped, "c105u", tempered=rising)) == (
        (
            "c105u.toml: tempered.curve_hrc.points: must not rise by more than 1 HRC without "
            "secondary hardening (got 61.5 HRC at 400 °C after 60)"
        ),
    )


def test_a_curve_may_rise_where_carbides_harden_again(shipped):
    rising = curve((300, 56), (520, 61))
    assert audit(changed(shipped, "x153crmov12", tempered=rising)) == ()


def test_a_curve_above_the_hardness_as_quenched_is_reported(shipped):
    hard = curve((100, 69), (200, 60))
    assert audit(changed(shipped, "c105u", tempered=hard)) == (
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
    assert audit(changed(shipped, "115crv3", hardened=odd)) == (
        (
            f"115crv3.toml: hardened.section_limit_mm.{severe}: must be at least that of "
            f"{mild} (got {smaller} under {larger} mm)"
        ),
    )


def test_a_condition_given_twice_is_reported(shipped):
    first, *others = shipped.steels["c45"].condition
    broken = changed(shipped, "c45", condition=(first, first, *others))
    assert audit(broken) == (
        f"c45.toml: condition.name: must differ within a steel (got {first.name} twice)",
    )
