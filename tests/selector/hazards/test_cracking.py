from typing import get_args

import pytest

from selector.hazards.cracking import (
    EDGE_POINTS,
    PROBABILITY,
    CrackShape,
    CrackSteel,
    Feature,
    crack_equivalent_wt_pct,
    crack_risk,
)

C45 = CrackSteel(0.45, 345.0, "water", 0.59)
SILVER = CrackSteel(0.85, 220.0, "water", 1.3)
CR_MO = CrackSteel(0.41, 335.0, "oil", 0.71)
O1 = CrackSteel(0.75, 210.0, "oil", 1.2)
A2 = CrackSteel(0.60, 230.0, "air", 1.3)
PLAIN = CrackShape()


@pytest.mark.parametrize("steel", [CR_MO, O1], ids=["CrMo", "O1"])
@pytest.mark.parametrize("medium", ["water", "brine"])
def test_water_on_an_oil_hardening_steel_is_high_whatever_the_shape(steel, medium):
    risk = crack_risk(steel, medium, PLAIN)
    assert risk.crack_class == "high"
    assert risk.reasons[0].name == "medium"


def test_plain_045_carbon_in_water_is_not_high():
    assert crack_risk(C45, "water", PLAIN).crack_class in {"low", "some"}


def test_silver_steel_in_water_cracks_some_and_with_a_hole_and_corners_high():
    assert crack_risk(SILVER, "water", PLAIN).crack_class == "some"
    holed = CrackShape(features=("cross-hole", "sharp-corner"))
    assert crack_risk(SILVER, "water", holed).crack_class == "high"


def test_a_thin_rod_of_silver_steel_with_its_edge_stands_water():
    """What silver steel is made for: a D-bit of 6 mm, common practice."""
    thin = crack_risk(SILVER, "water", CrackShape(features=("edge",), thickness_mm=6.0))
    thick = crack_risk(SILVER, "water", CrackShape(features=("edge",), thickness_mm=20.0))
    assert thin.crack_class == "some"
    assert thin.score < thick.score


@pytest.mark.parametrize("medium", ["warm-water", "polymer"])
@pytest.mark.parametrize("steel", [C45, SILVER, CR_MO, O1, A2])
def test_warm_water_and_polymer_lie_between_oil_and_water(medium, steel):
    oil, between, water = (crack_risk(steel, m, PLAIN).score for m in ("oil", medium, "water"))
    assert oil < between < water


@pytest.mark.parametrize(("steel", "medium"), [(O1, "oil"), (CR_MO, "oil"), (A2, "air")])
def test_a_steel_in_its_own_medium_is_low(steel, medium):
    assert crack_risk(steel, medium, PLAIN).crack_class == "low"


@pytest.mark.parametrize("feature", get_args(Feature))
def test_every_feature_adds_with_its_name_and_a_remedy(feature):
    plain = crack_risk(SILVER, "water", PLAIN)
    featured = crack_risk(SILVER, "water", CrackShape(features=(feature, feature)))
    assert featured.score == plain.score + (EDGE_POINTS if feature == "edge" else 1)
    assert feature in {reason.name for reason in featured.reasons}
    assert len(featured.mitigations) == len(featured.reasons)
    assert all(featured.mitigations)


@pytest.mark.parametrize(("medium", "tolerated"), [("water", 1.5), ("oil", 2.5), ("air", 4.0)])
def test_section_change_counts_from_the_ratio_the_medium_tolerates(medium, tolerated):
    def names(ratio):
        return {r.name for r in crack_risk(A2, medium, CrackShape(ratio)).reasons}

    assert "section" not in names(tolerated)
    assert "section" in names(tolerated * 1.1)


def test_skin_and_overheating_count():
    plain = crack_risk(C45, "water", PLAIN).score
    assert crack_risk(C45, "water", CrackShape(surface="hot-rolled")).score == plain + 0.5
    assert crack_risk(C45, "water", PLAIN, overheated=True).score == plain + 1


def test_mild_steel_has_no_reason_to_crack():
    risk = crack_risk(CrackSteel(0.15, 450.0, "water"), "water", PLAIN)
    assert (risk.score, risk.reasons, risk.crack_class) == (0.0, (), "low")


def test_classes_touch_and_are_called_estimates():
    assert PROBABILITY["low"][1] == PROBABILITY["some"][0]
    assert PROBABILITY["some"][1] == PROBABILITY["high"][0]
    risk = crack_risk(O1, "water", PLAIN)
    assert (risk.low_fraction, risk.high_fraction, risk.basis) == (0.10, 0.40, "estimated")


def test_residuals_count_in_the_equivalent():
    plain = crack_equivalent_wt_pct({"C": 0.45, "Mn": 0.7})
    assert crack_equivalent_wt_pct({"C": 0.45, "Mn": 0.7, "Cr": [0.1, 0.2]})[1] > plain
