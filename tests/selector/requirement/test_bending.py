import pytest

from selector.requirement.bending import flat_bending_mpa, flexes, is_strip
from tests.dog import asked


def flat(thick, bending, *, width=20, length=250, **load):
    return asked({
        "part.name": "Hook", "part.feature": [],
        "part.section": [{"shape": "flat", "size": thick, "width": width, "length": length}],
        "zone": [{"section": [1], "wear": "none"}],
        "load": {"impact": "none", "cycles": "occasional", "bending": bending, **load},
    })  # fmt: skip


def flex(*args, **kwargs):
    part = flat(*args, **kwargs)
    return flexes(part.part, part.load)


def test_a_flat_bends_over_its_thickness():
    """M = 10 N m on 20 x 3 mm: 6 x 10 000 / (20 x 9) N/mm2."""
    part = flat(3, "10 N m")
    assert flat_bending_mpa(part.part, part.load, 0) == pytest.approx(333.3, abs=0.1)


def test_strip_is_thin_and_long():
    assert is_strip(flat(1.2, "1 N m").part)
    assert not is_strip(flat(2.0, "1 N m").part)
    assert not is_strip(flat(1.2, "1 N m", length=25).part)


def test_a_flat_flexes_where_soft_bar_or_for_a_thick_one_hard_bar_would_stay_bent():
    assert flex(1.2, "1.5 N m")
    assert not flex(1.2, "0.5 N m")
    assert flex(3, "20 N m")
    assert not flex(3, "10 N m")


def test_a_beam_a_struck_flat_and_one_that_bears_a_load_once_flex_not():
    assert not flex(8, "300 N m")
    assert not flex(3, "20 N m", impact="hammered")
    assert not flex(3, "20 N m", cycles="static")
    assert not flex(3, "20 N m", length=50)
