from selector.job.usual_depth import usual_depth_mm
from tests.dog import asked
from tests.peg import peg


def test_thin_work_is_asked_to_be_hard_right_through_and_no_deeper():
    thick, thin = peg("edge-impact"), peg("edge-impact", size=1)
    assert usual_depth_mm(thick, thick.zone[0]) == 1.0
    assert usual_depth_mm(thin, thin.zone[0]) == 0.5


def test_a_tooth_keeps_a_core_under_its_case():
    """A case of about a quarter of the module, whose tooth is 1.57 modules thick."""
    gear = peg("rolling-contact", size=40)
    small = asked({
        "part.name": "pump gear", "part.feature": [{"kind": "teeth", "at": 10, "size": 3}],
        "load": {"impact": "none", "cycles": "fatigue"},
        "part.section": [{"shape": "round", "size": 40, "length": 20}],
        "zone": [{"section": [1], "wear": "rolling-contact", "severity": "light"}],
    })  # fmt: skip
    assert 0.4 < usual_depth_mm(small, small.zone[0]) < 0.55
    assert usual_depth_mm(gear, gear.zone[0]) == 0.8


def test_teeth_whose_size_stands_in_the_name_keep_a_core_too():
    gear = {
        "part.name": "Pinion, module 1.25", "part.feature": [{"kind": "teeth", "at": 10}],
        "load": {"impact": "none", "cycles": "fatigue"},
        "part.section": [{"shape": "round", "size": 40, "length": 20}],
        "zone": [{"section": [1], "wear": "rolling-contact", "severity": "medium"}],
    }  # fmt: skip
    small, plain = asked(gear), asked({**gear, "part.name": "Pinion"})
    # A quarter of the module, in steps of 0.05 mm.
    assert usual_depth_mm(small, small.zone[0]) == 0.3
    assert usual_depth_mm(plain, plain.zone[0]) == 0.8


def test_a_track_that_is_pressed_on_is_hard_below_its_greatest_shear():
    """1500 N on a cam 20 mm wide: half a millimetre, where the shear peaks at an eighth."""
    cam = peg("sliding", "medium", size=60)
    pressed = cam.model_copy(update={"load": cam.load.model_copy(update={"contact": 4500.0})})
    assert usual_depth_mm(cam, cam.zone[0]) == 0.1
    assert 0.4 < usual_depth_mm(pressed, pressed.zone[0]) < 0.7


def test_a_heavily_loaded_cam_is_cased_as_deep_as_a_roller():
    """Cams are cased 0.8 mm deep and more: common practice."""
    cam, pin = (peg("sliding", "heavy", name=name, size=30) for name in ("Engine cam", "Pin"))
    assert usual_depth_mm(cam, cam.zone[0]) == 0.8
    assert usual_depth_mm(pin, pin.zone[0]) == 0.1


def test_a_track_is_as_deep_as_the_force_of_its_rollers_asks():
    """Needle tracks are hard 0.3 mm deep at least, from memory of bearing catalogues."""
    plain = peg("rolling-contact", "medium", size=60)

    def deep(force_n):
        load = plain.load.model_copy(update={"contact": force_n})
        pressed = plain.model_copy(update={"load": load})
        return usual_depth_mm(pressed, pressed.zone[0])

    assert deep(80.0) == 0.3 < usual_depth_mm(plain, plain.zone[0]) == 0.8 < deep(60_000.0)


def test_a_cam_under_a_light_roller_is_deeper_than_a_needle_track():
    """Cams are cased 0.8 mm deep and more, needle tracks 0.3 mm: common practice."""

    def deep(name):
        part = peg("rolling-contact", "heavy", name=name, size=60)
        load = part.load.model_copy(update={"contact": 300.0})
        return usual_depth_mm(part.model_copy(update={"load": load}), part.zone[0])

    assert [deep(name) for name in ("Cam plate", "Cam shaft, 60 mm")] == [0.8, 0.8]
    assert [deep(name) for name in ("Cam cover", "Needle race", "Pin for a cam")] == [0.3] * 3
