from selector.requirement.measuring import is_lapped, surely_measures
from tests.dog import asked


def test_what_is_lapped_and_tried_on_steel_is_a_gauge_by_any_name():
    snail = {
        "part.name": "Stepped snail", "part.feature": [], "part.finish_after": ["lap"],
        "part.section": [{"shape": "round", "size": 38, "length": 6}],
        "load": {"impact": "none", "cycles": "occasional"},
    }  # fmt: skip
    zone = {"section": [1], "wear": "sliding", "severity": "light"}

    def measures(material, **load):
        mate = {"material": material, "should_wear": "either"}
        part = {**snail, "zone": [{**zone, "mate": mate}]}
        return asked({**part, "load": {**snail["load"], **load}}).measures

    assert measures("planer knives")
    assert not measures("wax patterns")
    assert not measures("planer knives", bending="5 N m")
    assert not measures("planer knives", cycles="fatigue")


def test_an_idle_piece_ground_true_is_there_to_measure():
    """Nobody grinds a bar to 5 micrometres that turns nothing and bears nothing for looks."""

    def bar(runout="0.005 mm", finish=("toolpost-grinder",), **load):
        return asked({
            "part.name": "Bar", "part.feature": [], "part.finish_after": list(finish),
            "part.section": [{"shape": "round", "size": 25, "length": 250}],
            "zone": [{"section": [1], "wear": "sliding", "severity": "light"}],
            "limit": {"runout": runout}, "load": {"impact": "none", "cycles": "static", **load},
        })  # fmt: skip

    assert surely_measures(bar())
    assert not is_lapped(bar())
    assert is_lapped(bar(finish=("lap",)))
    assert bar().measures
    assert not bar(runout="0.05 mm").measures
    assert not bar(finish=("lathe",)).measures
    for load in ({"torque": "5 N m"}, {"axial": "900 N"}, {"cycles": "fatigue"}):
        assert not bar(**load).measures
