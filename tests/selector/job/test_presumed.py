import pytest

from selector.job.demand import demands
from selector.job.presumed import presumed
from tests.dog import asked


def blank(name, **changes):
    """Return a part of which nothing is said but its name and its size."""
    return asked({
        "part.name": name, "part.feature": [], "load": {"impact": "none", "cycles": "static"},
        "part.section": [{"shape": "round", "size": 12, "length": 40}],
        "zone": [{"section": [1], "wear": "none"}], **changes,
    })  # fmt: skip


@pytest.mark.parametrize(
    "name", ["Drill bush, 6 mm", "Reamer, 8 mm", "Cold chisel", "Plug gauge"]
)
def test_a_tool_that_nothing_is_said_to_wear_is_asked_to_be_hard_and_says_so(name):
    struck = {"load": {"impact": "hammered", "cycles": "static"}} if "chisel" in name else {}
    wanted = demands(blank(name, **struck))[0]
    assert wanted.low_hrc > 50
    assert wanted.reason.startswith("nothing is said to wear it")


@pytest.mark.parametrize(
    "name",
    [
        "Spacer",
        "Chisel holder",
        "Drill bush puller",
        "Tap wrench",
        "Leaf spring",
        "Shear pin",
        "Parallel key, 8 mm",
        "Parallel pin",
        "Pivot bolt of a harrow",
    ],
)
def test_what_wears_by_nothing_is_asked_as_it_says(name):
    assert presumed(blank(name)) is None


def test_a_word_on_wear_or_hardness_is_taken_as_it_is():
    wears = {"zone": [{"section": [1], "wear": "sliding"}]}
    wished = {"zone": [{"section": [1], "wear": "none", "hardness": {"min": "30 HRC"}}]}
    vital = {"safety_use": "lifting"}
    for said in (wears, wished, vital):
        assert presumed(blank("Reamer", **said)) is None


def test_a_gauge_of_which_nothing_is_said_is_a_wish_and_a_drill_bush_is_none():
    gauge, bush = (demands(blank(name))[0] for name in ("Plug gauge", "Drill bush"))
    assert gauge.floor_hrc is None
    assert bush.floor_hrc == 55


def test_a_drill_bush_said_to_wear_lightly_needs_its_hardness():
    light = {"zone": [{"section": [1], "wear": "abrasive", "severity": "light"}]}
    assert demands(blank("Drill bush", **light))[0].floor_hrc == 55
    assert demands(blank("Collar", **light))[0].floor_hrc is None


def test_only_the_working_end_is_presumed_to_wear():
    long = {
        "part.section": [{"shape": "round", "size": 12, "length": 40}] * 2,
        "zone": [{"section": [1], "wear": "none"}, {"section": [2], "wear": "none"}],
    }
    end, shank = demands(blank("Reamer", **long))
    assert end.low_hrc > 50
    assert shank.low_hrc is None
    assert "nothing is said" not in shank.reason
