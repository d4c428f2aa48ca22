import pytest

from selector.advice.advise import advise
from selector.decision.bath_gate import bath_gates
from tests.dog import asked, only, work


def judged(treatment, litres=None, medium="oil"):
    """Return the verdicts on a bath of so many litres, for a dog of 0.69 kg, 0.12 of it hot."""
    bath = {"medium": medium} if litres is None else {"medium": medium, "volume": f"{litres} l"}
    there = asked({"workshop.bath": [bath]})
    return [gate.verdict for gate in bath_gates(treatment, there)]


WHOLE, LOCAL = (work("42crmo4", route) for route in ("through-torch", "local-torch"))


@pytest.mark.parametrize(
    ("treatment", "litres", "verdicts"),
    [
        (WHOLE, 6.0, []),
        (WHOLE, 4.0, ["marginal"]),
        (WHOLE, 2.0, ["fail"]),
        (LOCAL, 2.0, []),
        (LOCAL, 0.8, ["marginal"]),
        (LOCAL, 0.2, ["fail"]),
        (WHOLE, None, []),
    ],
)
def test_oil_is_wanted_by_the_steel_that_goes_in_hot(treatment, litres, verdicts):
    """Eight litres a kilogram: ASM Handbook vol. 4 (from memory)."""
    assert judged(treatment, litres) == verdicts


@pytest.mark.parametrize("medium", ["polymer", "water"])
def test_what_does_not_burn_is_not_refused_for_its_volume(medium):
    assert judged(work("c45", medium=medium), 0.2, medium) == []


@pytest.mark.parametrize(
    ("steel", "verdicts"), [("42crmo4", ["marginal"]), ("c45", []), ("25crmo4", [])]
)
def test_a_hot_zone_of_alloyed_steel_is_dipped_in_water_with_a_coupon_first(steel, verdicts):
    assert judged(work(steel, "local-torch", "water"), None, "water") == verdicts


def test_a_cup_of_oil_is_refused_and_the_water_beside_it_is_weighed():
    baths = [{"medium": "oil", "volume": "0.1 l"}, {"medium": "water", "volume": "15 l"}]
    weighed = advise(asked({"workshop.bath": baths}), only("c45", "42crmo4"))
    assert all(
        o.treatment.medium is None or not o.treatment.medium.is_oil for o in weighed.options
    )
    oily = [r for r in weighed.rejected if r.treatment.medium and r.treatment.medium.is_oil]
    assert any("may burn" in r.gate.text for r in oily)
    watery = [o for o in weighed.options if o.treatment.medium]
    assert watery


@pytest.mark.parametrize(("mm", "medium", "verdicts"), [
    (6, "oil", []), (14, "oil", ["marginal"]), (14, "water", []),
])  # fmt: skip
def test_oil_is_for_thin_silver_steel(mm, medium, verdicts):
    """Oil up to 8 mm, water above: the published limit of the catalogue."""
    there = asked({"part.section.0.size": mm, "part.section.1.size": mm})
    found = bath_gates(work("115crv3", "local-torch", medium=medium), there)
    assert [gate.verdict for gate in found] == verdicts


def test_steel_made_for_oil_is_in_its_bath_however_thick():
    there = asked({"part.section.0.size": 60, "part.section.1.size": 60})
    assert bath_gates(work("100mncrw4", "local-torch"), there) == []


@pytest.mark.parametrize(
    ("steel", "verdicts"),
    [("100mncrw4", ["marginal"]), ("80crv2", ["marginal"]), ("x100crmov5", []), ("aeb-l", [])],
)
def test_plates_are_for_steel_that_hardens_in_air(steel, verdicts):
    assert judged(work(steel, "through-furnace", "plates", "kiln"), None, "plates") == verdicts
