"""Traps of the trade: what is asked back, left alone, or told as undecided."""

import pytest

from selector.errors import RequirementError
from tests.dog import EVERY_KIND, GONE
from tests.traps import CHISEL, ask, cautions, said


def test_what_decides_is_asked_for_and_not_assumed():
    bare = {"safety_use": GONE, "workshop.heat": GONE, "part.section": GONE}
    with pytest.raises(RequirementError, match="safety_use must be given; got nothing") as told:
        ask(bare)
    assert {problem.field for problem in told.value.problems} == {
        "safety_use", "part.section", "workshop.heat",
    }  # fmt: skip


def test_a_torque_without_a_unit_is_asked_back():
    with pytest.raises(RequirementError, match=r"load.torque .* unit; got 90.* N m, lb ft"):
        ask({"load.torque": 90})


def test_an_unknown_bar_gets_a_coupon_plan():
    found = ask({"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True})
    assert found.verdict == "coupon_first"
    assert len(found.coupon) > 3
    assert "unknown-steel-coupon" in cautions(found)


@pytest.mark.parametrize(
    "changes",
    [
        {"zone.0.wear": "none", "load.bending": "20 N m"},
        {"zone.0.severity": "light", "part.section.0.length": 30},
        {
            "part.section": [{"shape": "flat", "size": 6, "width": 6, "length": 25}],
            "zone.0.wear": "none",
            "load.impact": "light",
        },
    ],
    ids=["stay", "lightly used bush", "key"],
)
def test_what_needs_no_hardening_is_left_as_bought(changes):
    found = ask(changes, steels=EVERY_KIND)
    assert found.verdict == "leave_as_bought"
    assert found.as_bought == found.options[0].id
    assert found.headline.startswith("No hardening needed. ")


def test_divided_practice_is_shown_with_what_decides():
    found = ask(CHISEL, steels=("42crmo4", "817m40"))
    assert said(found.remarks, "Practice is divided", "others go above 400 °C", "decides")
    found = ask(CHISEL, steels=("c45", "c60"))
    assert not said(found.remarks, "Practice is divided")


@pytest.mark.parametrize(
    ("points", "other", "tied"),
    [({"days": 1}, "115crv3", True), ({"cost": 1}, "60wcrv8", False)],
    ids=["all take a day", "one is much the cheaper"],
)
def test_a_toss_up_is_called_one(points, other, tied):
    asked = {"priorities.points": points, "load.torque": "20 N m"}
    found = ask(asked, steels=("c45", other), route="through-torch")
    first, second = found.options
    share = next(pair.share for pair in found.pairwise if pair.first == first.id)
    assert found.toss_up == (share < 0.60) == tied
    assert ("toss-up" in found.headline) == tied
    assert (second.steel in found.headline) == tied
    # Where all are alike in what counts, no order is made up.
    assert bool(found.other_methods) != tied


def test_other_methods_are_heard():
    found = ask(steels=("c45", "115crv3", "100mncrw4"))
    assert len(found.other_methods) >= 2
    for heard in found.other_methods:
        assert set(heard.order) == {option.id for option in found.options}
        assert heard.agrees_on_first == (heard.order[0] == found.options[0].id)
