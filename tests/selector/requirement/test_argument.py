import pytest

from catalog import load_catalog
from selector.errors import RequirementError
from selector.requirement import argument

CATALOG = load_catalog()


@pytest.mark.parametrize(
    ("text", "size", "width", "bore"),
    [
        ("round 30 mm", 30.0, None, None),
        ("Square 1 1/8 in", 28.575, None, None),
        ("hexagon 17mm", 17.0, None, None),
        ("flat 8 x 30 mm", 8.0, 30.0, None),
        ("flat 30x8 mm", 8.0, 30.0, None),
        ("flat 1/4 x 1 in", 6.35, 25.4, None),
        ('flat 1/4" × 30 mm', 6.35, 30.0, None),
        ("tube 24 by 10 mm", 24.0, None, 10.0),
    ],
)
def test_sections_as_people_write_them(text, size, width, bore):
    bar = argument.section("--section", text)
    assert (bar.size, bar.width, bar.bore) == pytest.approx((size, width, bore))
    assert bar.length >= 10 * bar.size


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("30 mm", r"--section must be a shape \(round, .*\) with its sizes; got '30 mm'"),
        ("rond 3 mm", "--section must be a shape"),
        ("round 3 x 4 mm", "--section must be a shape"),
        ("flat 8 mm", "--section must be a shape"),
        ("", "--section must be a shape"),
        ("round", "--section.size must be a length"),
        ("round 30", "--section.size must be a length with its unit; got '30'"),
        ("round 30 kg", "--section.size must be a length in a unit of length"),
        ("round -3 mm", "--section.size must be between 0.01 and 5000 mm; got '-3 mm'"),
        ("tube 10 x 24 mm", "--section.bore must be smaller than size, 10 mm"),
    ],
)
def test_what_is_no_section_is_refused_by_name_rule_value_and_step(text, said):
    with pytest.raises(RequirementError, match=said):
        argument.section("--section", text)


@pytest.mark.parametrize(
    ("read", "text", "value"),
    [
        (argument.temperature_c, "1436 degF", 780.0),
        (argument.temperature_c, "780 °C", 780.0),
        (argument.duration_s, "1 h", 3600.0),
        (argument.duration_s, "90 min", 5400.0),
        (argument.hardness_hrc, "56 HRC", 56.0),
        (argument.hardness_hrc, "56", 56.0),
        (argument.hardness_hrc, "697 HV", 60.0),
    ],
)
def test_quantities_with_their_units(read, text, value):
    assert read("--x", text) == pytest.approx(value, abs=0.05)


@pytest.mark.parametrize(
    ("read", "text", "said"),
    [
        (argument.temperature_c, "780", "--x must be a temperature with its unit; got '780'"),
        (argument.duration_s, "1", "--x must be a time with its unit; got '1'"),
        (argument.duration_s, "0 s", "--x must be between 1 and"),
        (argument.hardness_hrc, "80 HRC", "--x must be inside the conversion table"),
        (argument.hardness_hrc, "hard", "--x must be a hardness; got 'hard'"),
    ],
)
def test_what_is_no_quantity_is_refused(read, text, said):
    with pytest.raises(RequirementError, match=said):
        read("--x", text)


def test_names_of_steels_and_baths():
    assert argument.steel("STEEL", "silver steel", CATALOG).slug == "115crv3"
    assert argument.medium("--bath", "Warm  Water", CATALOG).slug == "warm-water"
    with pytest.raises(RequirementError, match="STEEL must be a known steel; got 'adamant'"):
        argument.steel("STEEL", "adamant", CATALOG)
    with pytest.raises(RequirementError, match=r"--bath must be a known bath; .* warm-water"):
        argument.medium("--bath", "lead", CATALOG)


def test_a_name_that_several_steels_carry_is_asked_back():
    several = next(
        name
        for steel in CATALOG.steels.values()
        for name in steel.names()
        if len(CATALOG.find(name)) > 1
    )
    with pytest.raises(RequirementError, match=r"the name of one steel; .* say which"):
        argument.steel("STEEL", several, CATALOG)


@pytest.mark.parametrize(
    ("text", "given"),
    [
        ("Wear", {"preset": "wear"}),
        ("safe hands", {"preset": "safe hands"}),
        ("hardness > Cost > snap margin", {"order": ("hardness", "cost", "snap_margin")}),
        ("cost", {"order": ("cost",)}),
        ("hardness=40, cost=20", {"points": {"hardness": 40.0, "cost": 20.0}}),
        ("hardness/cost = 3", {"pairwise": {"hardness/cost": 3.0}}),
    ],
)
def test_weights_are_read_as_a_preset_an_order_points_or_comparisons(text, given):
    assert argument.priorities("--weights", text).model_dump(exclude_none=True) == given


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("beauty", "--weights must be a preset"),
        ("", "--weights must be a preset"),
        ("hardness=", "--weights must be a preset"),
        ("hardness=forty", "weights.points.hardness must be a number"),
        ("hardness=-1", "weights.points.hardness must be at least 0"),
        ("beauty=3", "beauty"),
        ("cost > beauty", "weights.order.2"),
        ("hardness/cost=3, cost/days=2", "Add hardness/days"),
        ("hardness/cost=3, cost=2", "two criteria"),
    ],
)
def test_weights_that_are_none_are_refused_by_name_and_rule(text, message):
    with pytest.raises(RequirementError, match=message):
        argument.priorities("--weights", text)
