import pytest

from selector.duty.named_duty import duty_of
from selector.job.borne import CERTIFIED_HRC, prising, springing, turning
from selector.job.demand import demands
from tests.dog import asked


def lever(name, bending="60 N m", wear="sliding", *, thick=5, **load):
    return asked({
        "part.name": name, "part.feature": [],
        "part.section": [
            {"shape": "flat", "size": thick, "width": 22, "length": 40},
            {"shape": "round", "size": 16, "length": 200},
        ],
        "zone": [{"section": [1], "wear": wear}, {"section": [2], "wear": "none"}],
        "load": {"impact": "none", "cycles": "occasional", "bending": bending, **load},
    })  # fmt: skip


@pytest.mark.parametrize("name", ["Tyre lever", "Pry bar", "Trim remover", "Paint-tin opener"])
def test_a_lever_that_prises_springs_back_where_its_load_would_bend_it_for_good(name):
    """60 N m on 22 x 5 mm is 650 MPa, on 16 mm round 150 MPa."""
    end, shank = demands(lever(name, bending="50 N m"))
    assert (end.low_hrc, end.high_hrc, end.floor_hrc) == (44, 54, 38)
    assert "spring back" in end.reason
    assert shank.low_hrc is None


@pytest.mark.parametrize("name", ["Gear lever", "Stand for a tyre lever", "Level, 200 mm"])
def test_what_prises_nothing_is_asked_by_its_load_alone(name):
    part = lever(name, bending="50 N m")
    assert prising(part, part.zone[0]) is None


def test_a_hook_that_pulls_is_pre_hardened_at_least():
    jaw = lever("Bearing puller jaw")
    assert prising(jaw, jaw.zone[0]).usual.floor_hrc == 26
    light = lever("Bearing puller jaw", bending="5 N m")
    assert prising(light, light.zone[0]) is None


def test_a_lever_whose_load_is_not_said_springs_at_its_working_end():
    part = lever("Tyre lever", bending=None)
    assert prising(part, part.zone[0]) is not None
    assert prising(part, part.zone[1]) is None


def test_a_lever_that_wears_as_well_has_the_window_of_its_wear():
    part = lever("Pry bar", wear="edge-impact", impact="light")
    assert prising(part, part.zone[0]) is None
    assert demands(part)[0].depth_mm > 0


def test_a_spring_says_whether_its_name_or_its_load_makes_it_one():
    named, bent = lever("Leaf spring"), lever("Hook", thick=4)
    assert "a spring of" in springing(named, named.zone[0]).reason
    assert "spring temper" in springing(bent, bent.zone[0]).reason
    assert springing(bent, bent.zone[1]) is None


def test_a_driving_square_may_be_as_hard_as_another_end_and_a_blade_may_not():
    square = asked({
        "part.name": "Adapter", "part.feature": [],
        "part.section": [
            {"shape": "square", "size": 10, "length": 12},
            {"shape": "round", "size": 16, "length": 60},
        ],
        "zone": [{"section": [1], "wear": "none"}],
    })  # fmt: skip
    blade = asked({
        "part.name": "Screwdriver", "part.feature": [],
        "part.section": [
            {"shape": "flat", "size": 1, "width": 8, "length": 12},
            {"shape": "round", "size": 8, "length": 60},
        ],
        "zone": [{"section": [1], "wear": "none"}],
        "load": {"torque": "6 N m", "impact": "none", "cycles": "occasional"},
    })  # fmt: skip
    assert turning(square, square.zone[0]).carried
    assert not turning(blade, blade.zone[0]).carried
    vital = square.model_copy(update={"safety_use": "steering"})
    assert turning(vital, vital.zone[0]).usual.high_hrc == CERTIFIED_HRC


def test_a_collet_springs_where_it_works_and_its_tail_is_asked_nothing():
    collet = asked({
        "part.name": "Split collet", "part.feature": [],
        "part.section": [
            {"shape": "tube", "size": 20, "bore": 10, "length": 30},
            {"shape": "tube", "size": 16, "bore": 10, "length": 40},
        ],
        "zone": [
            {"section": [1], "wear": "sliding", "severity": "light"},
            {"section": [2], "wear": "none"},
        ],
        "load": {"impact": "none", "cycles": "occasional"},
    })  # fmt: skip
    grip, tail = demands(collet)
    assert (grip.low_hrc, grip.high_hrc) == (43, 54)
    assert "springing" in grip.reason
    assert duty_of(grip, collet) == "tool"
    assert tail.low_hrc is None
    block = lever("Collet block", bending=None)
    assert springing(block, block.zone[0]) is None
