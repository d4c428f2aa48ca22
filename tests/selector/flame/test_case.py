import numpy as np
import pytest

from catalog import load_catalog
from selector.flame.case import CORNER, bath_of, follow, heated_for, job_of, target_c
from selector.flame.outcome import Setup
from selector.heat.conduction import Plan, conduct
from selector.heat.exchange import SURFACE_C, steady
from selector.heat.grid import round_grid
from selector.heat.section_slice import slice_grid
from selector.heat.steel_property import heating_steel
from selector.job.job import resolved
from selector.job.treatment import Temper
from tests.dog import asked, work

CATALOG = load_catalog()


def job(changes=None):
    return resolved(asked(changes), CATALOG, count=1)


def local(steel="c45", medium="warm-water", source="oxy-propane", condition=None):
    return work(steel, "local-torch", medium, source, condition)


@pytest.fixture(scope="module")
def dog():
    return job()


@pytest.fixture(scope="module")
def done(dog):
    return follow(local(), dog, Setup(past_mm=12.5), dog.leading)


def test_steels_share_their_heats_in_steps_of_ten():
    assert target_c(local("c45")) % 10 == 0
    assert target_c(local("115crv3")) < 800.0  # from Ac1, never from the carbide line
    assert 830.0 <= target_c(local("42crmo4", "oil")) <= 860.0


def test_the_bath_is_the_workshops():
    kept = [{"medium": "oil", "temperature": "60 degC", "agitation": "strong"}]
    bath = bath_of(local(medium="oil"), job({"workshop.bath": kept}))
    assert (bath.medium, bath.temperature_c, bath.agitation) == ("oil", 60.0, "strong")


def test_the_flame_goes_past_the_zone_but_not_past_the_part(dog):
    torching, part = job_of(local(), dog, Setup(past_mm=8.0))
    assert (torching.zone_mm, torching.heated_mm) == ((0.0, 30.0), (0.0, 38.0))
    torching, part = job_of(local(), dog, Setup(past_mm=1e4))
    assert torching.heated_mm[1] == part.length_mm


def test_a_slow_hand_takes_longer_to_the_bath():
    quick, slow = (
        job_of(local(), job({"workshop.skill": {"delay": d}}), Setup())[0].delay_s
        for d in (1.0, 3.0)
    )
    assert slow == 3.0 * quick


def test_one_heating_serves_all_steels_of_a_heat(dog):
    first = heated_for(local("c45", "warm-water"), dog, Setup())[2]
    assert heated_for(local("c45", "oil"), dog, Setup())[2] is first


def test_the_zone_comes_out_hard_and_drawn(done):
    assert 50.0 < done.surface_hrc <= done.fresh_hrc
    assert done.depth_mm > 2.0
    assert done.hard_mm[0] == 0.0
    assert done.hard_mm[1] > 28.0
    assert done.temper.temperature_c >= 175.0
    assert np.isfinite([done.core_hrc, *done.bow_mm, done.ring.torque_nm]).all()


def test_all_of_its_demands_are_met(done):
    assert {check.name for check in done.failed} == set()


def test_a_torch_too_small_is_a_clear_reason():
    """A torch for any size."""
    big = {"part.section.0.size": 76, "part.section.1.size": 76, "part.section.0.length": 60}
    there = job({**big, "workshop.heat": [{"source": "hand-torch"}]})
    out = follow(local(source="hand-torch"), there, Setup(), there.leading)
    assert [check.name for check in out.failed] == ["reach"]
    assert "°C after 10 minutes between firebricks" in out.failed[0].text
    assert out.hardness is None


def test_a_still_part_is_told_to_be_turned():
    still = job({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    out = follow(local(), still, Setup(past_mm=8.0), still.leading)
    text = next(c.text for c in out.failed if c.name == "even")
    assert text.endswith("uneven, turn it")


def test_10_mm_of_42crmo4_in_water_snaps_unless_drawn():
    """Common practice: hard to the centre, and nothing in the workshop to draw it with."""
    thin = {f"part.section.{n}.size": 10 for n in (0, 1)}
    there = job({**thin, "load.torque": "5 N m"})
    undrawn = follow(
        local("42crmo4", "water"), there, Setup(temper=Temper("none")), there.leading
    )
    assert undrawn.core_hrc > 54.0
    assert "snaps; draw it at once" in next(c.text for c in undrawn.failed if c.name == "drawn")
    drawn = follow(local("42crmo4", "water"), there, Setup(), there.leading)
    assert "drawn" not in {c.name for c in drawn.failed}


def test_a_prehard_bar_keeps_its_strength_beside_the_zone(dog):
    soft, hard = (
        follow(local("42crmo4", "oil", condition=c), dog, Setup(), dog.leading)
        for c in ("annealed", "prehard")
    )
    assert hard.ring.torque_nm > 1.3 * soft.ring.torque_nm


@pytest.mark.parametrize("shape", ["square", "hexagon"])
def test_the_corner_runs_ahead_as_on_a_true_cross_section(shape):
    """Against a computed slice under the same even flux."""
    flux = np.full(SURFACE_C.size, -3e5)
    part, bar = slice_grid(shape, 20.0), round_grid(20.0, fineness=2.0)
    ends = []
    for grid in (part, bar):
        faces = {str(face): flux for face in np.unique(grid.wall_face)}
        around_it = steady(grid, faces)
        ends.append(conduct(grid, heating_steel(), around_it, 20.0, Plan(20.0)).end_c.ravel())
    ahead = ends[0][part.cells()].max() - ends[0][part.cell(0.0, 10.0)]
    gap = ends[1][bar.cell(10.0)] - ends[1][bar.cell(0.0)]
    assert ahead == pytest.approx(CORNER[shape] * gap, rel=0.05)


def test_a_square_edge_is_hotter_than_a_round_one(dog):
    square = job({f"part.section.{n}.shape": "square" for n in (0, 1)})
    edges = [
        follow(local(), there, Setup(past_mm=12.5), there.leading).corner_c
        for there in (dog, square)
    ]
    assert edges[1] > edges[0]


def test_a_treatment_without_a_torch_cannot_be_followed(dog):
    with pytest.raises(ValueError, match=r"c45/.* has no heat source"):
        job_of(local(source=None), dog, Setup())


def test_the_bath_s_volume_and_the_true_section_go_into_the_quench():
    kept = [{"medium": "warm-water", "volume": "3 l"}]
    square = {"workshop.bath": kept, "part.section.0.shape": "square"}
    torching, _ = job_of(local(), job(square), Setup())
    assert torching.bath_volume_l == 3.0
    assert torching.outlines[0].shape == "square"
    assert torching.outlines[1] is None


def test_a_square_corner_comes_out_no_softer_than_its_side(dog):
    square = job({"part.section.0.shape": "square"})
    found = follow(local(), square, Setup(past_mm=12.5), square.leading)
    middle = int(np.argmin(np.abs(found.hardness.along_mm - 15.0)))
    assert found.corner_hrc >= found.hardness.surface(found.hardness.quenched_hrc)[middle]
    assert np.isnan(follow(local(), dog, Setup(past_mm=12.5), dog.leading).corner_hrc)


def test_the_heat_that_runs_back_leaves_the_edge_harder_than_the_body():
    struck = job({"load.impact": "hammered"})
    chisel = work("c45", "residual-heat", "warm-water", "oxy-propane")
    found = follow(chisel, struck, Setup(past_mm=25.0, hold_s=60.0), struck.leading)
    assert found.temper.means in {"residual", "none"}
    surface = found.hardness.surface()
    assert surface[1] > surface[int(np.argmin(np.abs(found.hardness.along_mm - 40.0)))]


def test_a_hole_near_the_end_makes_the_hottest_edge(dog):
    near = job({"part.feature": [{"kind": "cross-hole", "at": "6 mm", "size": "6 mm"}]})
    plain, drilled = (
        follow(local(), there, Setup(past_mm=12.5), there.leading).corner_c
        for there in (dog, near)
    )
    assert drilled > plain + 50.0
