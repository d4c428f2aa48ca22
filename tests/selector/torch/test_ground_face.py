import numpy as np
import pytest

from catalog import load_catalog
from selector.flame.case import follow, heated_for
from selector.flame.outcome import Setup
from selector.job.job import resolved
from selector.torch.ground_face import flame_skin_mm, ground
from tests.dog import asked, work

CATALOG = load_catalog()
C45 = work("c45", "local-torch", "warm-water", "oxy-propane")


def done(changes=None, **how):
    job = resolved(asked(changes), CATALOG, count=1)
    return follow(C45, job, Setup(past_mm=12.5, **how), job.leading)


@pytest.fixture(scope="module")
def unground():
    return done()


def test_the_hardness_told_is_that_under_what_is_ground_off(unground):
    finished = done({"part.stock_removal": "2 mm"})
    middle = 15.0
    rows = np.flatnonzero(np.isfinite(unground.hardness.column(middle)))
    under = np.interp(
        10.5, unground.hardness.across_mm[rows], unground.hardness.column(middle)[rows]
    )
    face = ground(unground.hardness, unground.part, 2.0).surface()
    at = int(np.argmin(np.abs(unground.hardness.along_mm - middle)))
    assert face[at] == pytest.approx(under)
    assert finished.surface_hrc < unground.surface_hrc
    assert "ground off" in finished.sentence
    assert "ground off" not in unground.sentence


def test_what_is_ground_off_is_off_the_depth(unground):
    finished = done({"part.stock_removal": "2 mm"})
    assert finished.depth_mm == pytest.approx(unground.depth_mm - 2.0)


def test_a_depth_that_only_the_unground_part_has_is_a_miss(unground):
    deep = {"zone.0.depth": f"{unground.depth_mm - 0.5:.2f} mm"}
    assert "depth" not in {c.name for c in done(deep).failed}
    assert "depth" in {c.name for c in done({**deep, "part.stock_removal": "2 mm"}).failed}


def test_nothing_ground_off_changes_nothing(unground):
    assert ground(unground.hardness, unground.part, 0.0) is unground.hardness


def test_a_longer_hold_leaves_a_deeper_soft_skin():
    job = resolved(asked(), CATALOG, count=1)
    skins = []
    for hold_s in (10.0, 80.0):
        torching, _, (heated, grid) = heated_for(C45, job, Setup(hold_s=hold_s))
        skins.append(flame_skin_mm(heated, grid, torching.middle_mm))
    assert 0.0 < skins[0] < skins[1] < 0.2
