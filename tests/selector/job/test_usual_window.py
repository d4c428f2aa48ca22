import pytest

from selector.job.usual_window import usual_depth_mm, usual_spring, usual_window
from tests.dog import asked


def of(wear, severity="light", *, name="peg", impact="light", size=20):
    return asked(
        {
            "part.name": name, "part.feature": [],
            "load": {"impact": impact, "cycles": "static"},
            "part.section": [{"shape": "round", "size": size, "length": 60}],
            "zone": [{"section": [1], "wear": wear, "severity": severity}],
        }
    )  # fmt: skip


def test_light_sliding_asks_for_nothing_and_more_of_it_for_more():
    none, medium, heavy = (
        usual_window(part, part.zone[0])
        for part in (of("sliding", severity) for severity in ("light", "medium", "heavy"))
    )
    assert none is None
    assert medium.floor_hrc < heavy.floor_hrc
    assert medium.low_hrc < heavy.low_hrc


@pytest.mark.parametrize("severity", ["light", "medium"])
def test_a_hammered_face_that_rubs_works_from_45_hrc(severity):
    part = of("sliding", severity, impact="hammered")
    assert usual_window(part, part.zone[0]).floor_hrc == 45.0


def test_thin_work_is_asked_to_be_hard_right_through_and_no_deeper():
    thick, thin = of("edge-impact"), of("edge-impact", size=1)
    assert usual_depth_mm(thick, thick.zone[0]) == 1.0
    assert usual_depth_mm(thin, thin.zone[0]) == 0.5


def test_thin_springs_are_run_harder():
    assert usual_spring(1.0).low_hrc > usual_spring(4.0).low_hrc > usual_spring(8.0).low_hrc


def test_a_pin_may_be_bought_softer_than_it_is_hardened_and_teeth_may_not():
    pin = of("sliding", "medium")
    gear = pin.model_copy(update={"part": pin.part.model_copy(update={"shape_class": "gear"})})
    assert usual_window(pin, pin.zone[0]).bought_hrc < usual_window(pin, pin.zone[0]).floor_hrc
    assert usual_window(gear, gear.zone[0]).bought_hrc is None
