from dataclasses import replace

import numpy as np
import pytest

from catalog import load_catalog
from selector.hardening.composition import middle
from selector.hardening.stock import Stock
from selector.heat.boiling import Bath
from selector.heat.drawing import from_behind, soaked
from selector.heat.grid import Section, bar_grid
from selector.heat.operator import Operator
from selector.heat.torch import torch
from selector.job.treatment import Temper
from selector.metallurgy.temper_curve import parameter_k
from selector.torch import flame_history
from selector.torch.flame_history import FlameJob, heat_and_quench
from selector.torch.hardness_map import draw, draw_along, drawn_hrc, harden, limit_factor

STEELS = load_catalog().steels
OVEN = Temper("oven", 200.0, 3600.0)


def stock(slug, condition, supply, softest=5.0):
    steel = STEELS[slug]
    composition = {e: float(v[0, 0]) for e, v in middle(steel).items()}
    return Stock(steel, composition, condition, supply, min(softest, supply))


def task(diameter, heat_c=850.0, hold_s=20.0, medium="water", source="oxy-propane"):
    return FlameJob(
        (Section(diameter, 25.0), Section(diameter, 150.0)),
        (0.0, 25.0),
        (0.0, 35.0),
        torch(source),
        Operator(heat_c, hold_s, hearth=True),
        Bath(medium),
    )


def hardened(bar, work):
    return harden(heat_and_quench(work), bar, work.bath)


def test_a_hard_end_a_transition_and_a_bar_as_bought():
    found = draw(hardened(stock("c45", "normalised", 10.0), task(16.0)))
    surface = found.surface()
    assert surface[found.along_mm < 20.0].min() > 52.0
    assert np.all(surface[found.along_mm > 50.0] == pytest.approx(10.0))
    fraction = found.surface(found.austenite_fraction)
    assert np.any((fraction > 0.0) & (fraction < 1.0)) or np.any(np.diff(fraction) < -0.3)


def test_10_mm_of_42crmo4_in_water_is_hard_to_the_centre():
    """Common practice: and it snaps unless it is drawn."""
    found = draw(
        hardened(stock("42crmo4", "annealed", 10.0), task(10.0, source="hand-propane"))
    )
    column = found.column(12.0)
    assert column[np.isfinite(column)].min() > 54.0


def test_too_short_a_heat_leaves_a_soft_middle():
    """Common practice: the skin is red, the middle never was."""
    bar = stock("42crmo4", "annealed", 10.0)
    short, long = (
        draw(hardened(bar, task(25.0, hold_s=hold, medium="oil"))) for hold in (0.0, 60.0)
    )
    at = int(np.argmin(np.abs(short.along_mm - 18.0)))
    assert short.surface()[at] > 50.0
    assert short.core()[at] < 20.0
    assert long.core()[at] > 45.0


def test_a_prehard_shank_is_not_softened_by_a_300_degree_temper():
    """Common practice: 30 HRC bar was drawn far hotter when it was made."""
    bar = hardened(stock("42crmo4", "prehard", 30.0), task(20.0, medium="oil"))
    drawn = draw(bar, Temper("furnace", 300.0, 3600.0))
    far = drawn.along_mm > 60.0
    assert np.all(np.abs(drawn.surface()[far] - 30.0) < 0.3)
    assert drawn.surface()[2] < 54.0


def test_a_prehard_bar_has_a_soft_ring_where_it_was_nearly_hot_enough():
    slow = replace(task(20.0, hold_s=150.0, medium="oil"))
    found = draw(hardened(stock("42crmo4", "prehard", 38.0, 10.0), slow))
    surface, peak = found.surface(), found.surface(found.peak_c)
    ring = int(np.argmin(surface))
    assert surface[ring] < 36.0
    assert 620.0 < peak[ring] < 780.0
    assert surface[-1] == pytest.approx(38.0, abs=0.3)


def test_hardness_rises_again_between_ac1_and_ac3():
    """From the ring to the hard end the hardness only rises."""
    slow = task(20.0, hold_s=150.0, medium="oil")
    found = draw(hardened(stock("42crmo4", "prehard", 38.0, 10.0), slow))
    surface = found.surface()
    ring = int(np.argmin(surface))
    rising = surface[8 : ring + 1]
    assert np.all(np.diff(rising) < 0.6)


def test_cold_drawn_bar_loses_its_drawing_beside_the_zone():
    bar = stock("080m40", "cold-drawn", 15.0, 3.0)
    quick, slow = (draw(hardened(bar, task(20.0, hold_s=hold))) for hold in (10.0, 150.0))
    beside = [found.surface()[found.along_mm > 28.0].min() for found in (quick, slow)]
    assert 3.0 <= beside[1] < beside[0] < 15.0
    assert beside[1] < 12.0
    assert quick.surface()[-1] == pytest.approx(15.0, abs=0.2)


def test_silver_steel_held_for_seconds_is_softer_than_after_minutes():
    """The commonest cause of "the file bites": carbide has not dissolved."""
    bar = stock("115crv3", "annealed", 12.0)
    hard = [
        draw(hardened(bar, task(8.0, 785.0, hold, source="hand-propane"))).surface()[5]
        for hold in (0.0, 60.0, 600.0)
    ]
    assert hard == sorted(hard)
    assert hard[0] < 55.0
    assert hard[-1] > 63.0


def test_straw_heat_hardens_nothing():
    """The colour of the temper is not the heat to harden at."""
    found = draw(hardened(stock("c45", "normalised", 10.0), task(12.0, heat_c=230.0)))
    assert np.nanmax(found.hrc) == pytest.approx(10.0, abs=0.1)


def test_the_magnet_alone_leaves_42crmo4_short_of_its_hardness():
    """770 °C is a floor: between its lines the steel turns in part only."""
    bar = stock("42crmo4", "annealed", 10.0)
    at_magnet, right = (
        draw(hardened(bar, task(12.0, heat, medium="oil"))).surface()[8]
        for heat in (765.0, 850.0)
    )
    assert at_magnet < right - 2.0


def test_an_oven_temper_softens_the_hard_end_only():
    bar = hardened(stock("c45", "normalised", 10.0), task(16.0))
    fresh, drawn = draw(bar), draw(bar, OVEN)
    assert np.all(drawn.hrc[np.isfinite(drawn.hrc)] <= fresh.hrc[np.isfinite(fresh.hrc)] + 1e-9)
    assert drawn.surface()[5] < fresh.surface()[5] - 1.0
    assert drawn.quenched_hrc == pytest.approx(fresh.hrc, nan_ok=True)


def test_the_temper_goes_the_path_of_all_tempers():
    bar = stock("c45", "normalised", 10.0)
    at_k = np.full(2, parameter_k(OVEN.temperature_c, OVEN.time_s))
    soft, hard = drawn_hrc(bar, np.array([40.0, 58.0]), at_k)
    assert soft < hard < 58.0


@pytest.fixture(scope="module")
def chisel():
    """An end of 0.6 % carbon, hardened; the flame or the heat behind it draws it."""
    return hardened(stock("c60", "normalised", 15.0), task(10.0, 830.0))


def test_a_flame_from_the_soft_end_leaves_the_edge_hard_and_the_body_softer(chisel):
    """Differential temper: purple at the edge, blue and beyond behind it."""
    grid = chisel.cooled.grid
    drawn = from_behind(grid, torch("hand-propane"), (60.0, 90.0), (270.0, 2.0))
    found = draw_along(chisel, drawn)
    lost = draw(chisel).surface() - found.surface()
    edge, middle, behind = (
        lost[int(np.argmin(np.abs(found.along_mm - z)))] for z in (2, 10, 18)
    )
    assert 0.0 < edge < middle < behind
    assert found.surface()[2] > 55.0


def test_an_even_soak_draws_as_a_temper_of_its_time_does(chisel):
    grid = chisel.cooled.grid
    by_history = draw_along(chisel, soaked(grid, "sand", 220.0, 3.0 * 3600.0)).surface()[4]
    by_temper = draw(chisel, Temper("oven", 220.0, 3.0 * 3600.0)).surface()[4]
    assert by_history == pytest.approx(by_temper, abs=0.4)


def test_colour_that_only_touches_the_edge_draws_less_than_an_hour_at_it(chisel):
    """A flame's straw is not an oven's hour at the same heat."""
    grid = chisel.cooled.grid
    drawn = from_behind(grid, torch("hand-propane"), (60.0, 90.0), (260.0, 2.0))
    flame = draw_along(chisel, drawn).surface()[1]
    assert flame > draw(chisel, Temper("oven", 260.0, 3600.0)).surface()[1] + 0.5


def test_the_zone_hardly_moves_with_the_grid(monkeypatch):
    """Cells half the size: under 1 HRC in the zone, and its edge within a cell."""
    bar = stock("c45", "normalised", 10.0)
    coarse = draw(hardened(bar, task(25.0)))
    monkeypatch.setattr(flame_history, "bar_grid", lambda s: bar_grid(s, 2.0))
    flame_history._dipped.cache_clear()
    fine = draw(hardened(bar, task(25.0)))
    flame_history._dipped.cache_clear()
    z = np.arange(2.0, 23.0, 1.0)
    for name in ("surface", "core"):
        rows = [np.interp(z, m.along_mm, getattr(m, name)()) for m in (coarse, fine)]
        assert np.max(np.abs(rows[0] - rows[1])) < 1.0, name
    edges = [float(np.max(m.along_mm[m.surface() > 40.0])) for m in (coarse, fine)]
    assert abs(edges[0] - edges[1]) < 2.0  # a cell of the coarse grid is that long


def test_a_thick_bar_of_c45_is_hard_at_the_rim_only():
    found = draw(hardened(stock("c45", "normalised", 10.0), task(30.0, hold_s=60.0)))
    assert found.surface()[10] > found.core()[10] + 10.0


def test_the_outer_fibres_lie_between_surface_and_core():
    found = draw(hardened(stock("c45", "normalised", 10.0), task(30.0)))
    at = slice(0, 10)
    assert np.all(found.core()[at] <= found.mean()[at])
    assert np.all(found.mean()[at] <= found.surface()[at] + 0.5)


def test_the_catalogued_section_limit_overrides_the_composition():
    """Silver steel hardens through in oil up to 8 mm by the catalogue, and hardly at 14 mm."""
    bar = stock("115crv3", "annealed", 12.0)
    thin, thick = (
        draw(hardened(bar, task(d, 785.0, 120.0, "oil", "hand-propane"))).core()[5]
        for d in (6.0, 14.0)
    )
    assert thin > thick + 10.0


def test_a_larger_section_limit_hardens_deeper():
    bar = stock("115crv3", "annealed", 12.0)
    limits = bar.steel.hardened.section_limit_mm
    oil = limits["oil"]
    twice = {**limits, "oil": oil.model_copy(update={"value": 2.0 * oil.value})}
    found = [
        limit_factor(replace(bar, steel=_limited(bar.steel, x)), Bath("oil"))
        for x in (limits, twice)
    ]
    assert found[1] > 1.5 * found[0]


def test_without_a_section_limit_the_composition_decides():
    bar = stock("115crv3", "annealed", 12.0)
    assert limit_factor(replace(bar, steel=_limited(bar.steel, {})), Bath("oil")) == 1.0
    assert limit_factor(stock("c45", "normalised", 10.0), Bath("water")) == 1.0


def _limited(steel, limits):
    hardened_ = steel.hardened.model_copy(update={"section_limit_mm": limits})
    return steel.model_copy(update={"hardened": hardened_})
