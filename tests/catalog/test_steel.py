"""A steel's record agrees with itself: what it hardens by is described."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from catalog import load_catalog
from catalog.steel import Aged, Condition, Designations, Steel, Tempered, plain
from catalog.values import Span

ORIGIN = {"source": "own-estimate", "at": "test", "basis": "estimated", "seen": "memory"}
HARDNESS = Span(max=200, **ORIGIN)


def condition(**update: object) -> Condition:
    given = {
        "name": "annealed",
        "hardness_hb": HARDNESS,
        "surface": "black",
        "shapes": ["round"],
        "size_mm": Span(min=5, max=50, **ORIGIN),
        "availability": "easy",
    }
    return Condition.model_validate({**given, **update})


def steel(**update: object) -> Steel:
    given = {
        "slug": "x",
        "name": "X 1",
        "family": "mild",
        "kind": "mild",
        "summary": "A bar.",
        "toughness": "high",
        "designations": Designations(trade=("bar",)),
        "condition": [condition()],
    }
    return Steel.model_validate({**given, **update})


@pytest.mark.parametrize("text", ["EN 19", "en19", "EN-19", " En.19 ", "EN/19"])
def test_spelling_of_a_designation_does_not_matter(text):
    assert plain(text) == "en19"


@given(st.text())
def test_the_plain_form_is_stable(text):
    assert plain(plain(text)) == plain(text)


def test_a_dot_in_a_number_keeps_its_place_among_names():
    assert plain("1.7220") == "17220"
    assert plain("1.722") != plain("1.7220")


def test_all_names_come_with_the_main_one_first():
    bar = steel(designations=Designations(en=("A", "B"), number=("1.0",), trade=("bar",)))
    assert bar.names() == ("X 1", "A", "B", "1.0", "bar")


@pytest.mark.parametrize(
    ("how", "table"), [("quench", "hardened"), ("age", "aged"), ("nitride", "nitrided")]
)
def test_a_steel_that_hardens_says_how(how, table):
    with pytest.raises(ValidationError, match=rf"hardens by {how} needs an? \[{table}\] table"):
        steel(hardens_by=[how])


@pytest.mark.parametrize("given", [{}, {"hardness_hb": HARDNESS, "hardness_hrc": HARDNESS}])
def test_a_condition_has_one_hardness(given):
    both = {"hardness_hb": None, "hardness_hrc": None, **given}
    with pytest.raises(ValidationError, match="exactly one of hardness_hb, hardness_hrc"):
        condition(**both)


def test_an_unknown_bar_has_no_hardness():
    assert condition(name="unknown", hardness_hb=None).hardness_hb is None


@pytest.mark.parametrize("key", ["condition", "name", "summary"])
def test_a_steel_without_its_essentials_is_refused(key):
    with pytest.raises(ValidationError, match=rf"{key}\n.*input_value=(\[\]|'')"):
        steel(**{key: [] if key == "condition" else ""})


@pytest.mark.parametrize("model", [Tempered, Aged])
@pytest.mark.parametrize("hours", [0, 49, 200])
def test_a_temper_of_no_workshop_is_refused(model, hours):
    curve = {"points": [[200, 60], [300, 55]], **ORIGIN}
    with pytest.raises(ValidationError, match=rf"time_h\n.*input_value={hours}"):
        model.model_validate({"curve_hrc": curve, "time_h": hours})


@pytest.mark.parametrize("cycles", [0, 5])
def test_a_steel_is_tempered_one_to_four_times(cycles):
    curve = {"points": [[200, 60], [300, 55]], **ORIGIN}
    with pytest.raises(ValidationError, match=rf"cycles\n.*input_value={cycles}"):
        Tempered.model_validate({"curve_hrc": curve, "time_h": 1, "cycles": cycles})


def test_silver_steel_has_a_section_limit_in_oil():
    hardened = load_catalog().steels["115crv3"].hardened
    assert hardened is not None
    assert hardened.quench == "water"
    assert hardened.section_limit_mm["oil"].value <= 10
    assert 760 <= hardened.temperature_c.low < hardened.temperature_c.high <= 810


@pytest.mark.parametrize("slug", ["11smnpb30", "x5crni18-10", "dowel-pin"])
def test_what_never_hardens_in_a_workshop_claims_no_way(slug):
    assert load_catalog().steels[slug].hardens_by == ()


@pytest.mark.parametrize("slug", ["x100crmov5", "x153crmov12", "hs6-5-2"])
def test_a_steel_that_needs_a_soak_is_not_for_the_torch(slug):
    bar = load_catalog().steels[slug]
    assert ("torch", "no") in {(limit.process, limit.verdict) for limit in bar.limitation}
    assert bar.hardened is not None
    assert bar.hardened.soak_min is not None


@pytest.mark.parametrize(
    ("slug", "said"),
    [("115crv3", "silver steel (115CrV3)"), ("bolt-10.9", "10.9 bolt"), ("c45", "C45")],
)
def test_a_name_of_the_same_words_in_another_order_is_not_said_twice(slug, said):
    assert load_catalog().steels[slug].spoken == said
