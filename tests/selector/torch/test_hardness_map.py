import numpy as np
import pytest

from selector.torch.hardness_map import HardnessMap
from selector.torch.part import stretch
from tests.dog import asked

ALONG = np.arange(1.0, 60.0, 2.0)
ACROSS = np.linspace(0.25, 12.25, 25)


def painted(bored_mm=0.0):
    """A bar that falls evenly from 50 HRC at its surface to 26 at its axis."""
    hrc = np.repeat((26.0 + 24.0 * ACROSS / ACROSS[-1])[:, None], ALONG.size, axis=1)
    hrc[bored_mm > ACROSS] = np.nan
    return HardnessMap(ACROSS, ALONG, hrc, hrc + 5.0, np.ones_like(hrc), hrc)


def test_surface_and_core_are_the_outermost_and_innermost_steel():
    for found, core in ((painted(), 26.5), (painted(6.0), 38.2)):
        assert found.surface() == pytest.approx(50.0)
        assert found.core() == pytest.approx(core, abs=0.3)
        assert found.surface(found.quenched_hrc) == pytest.approx(55.0)


def test_the_outer_fibres_lie_between_surface_and_core():
    found = painted()
    assert (found.mean() < found.surface()).all()
    assert (found.mean() > found.core()).all()
    assert found.mean() == pytest.approx(26.0 + 24.0 * 10.0 / 12.25)


def test_a_column_is_that_nearest_to_its_place():
    found = painted()
    np.testing.assert_array_equal(found.column(10.8), found.hrc[:, 5])


def test_what_is_ground_off_brings_the_face_to_the_hardness_beneath():
    part = stretch(asked({f"part.section.{n}.size": 25 for n in (0, 1)}), (0,))
    found = painted()
    assert found.ground(part, 0.0) is found
    face = found.ground(part, 2.25).surface()
    assert face == pytest.approx(26.0 + 24.0 * 10.25 / 12.25)
    np.testing.assert_array_equal(found.ground(part, 2.25).core(), found.core())
