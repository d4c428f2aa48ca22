"""The solver against what is known without it: energy, limits, orders, another library."""

import math

import numpy as np
import pytest
import skfem as fem
from skfem.helpers import dot, grad

from selector.errors import OutOfRangeError
from selector.heat.conduction import Plan, Stop, conduct
from selector.heat.exchange import SURFACE_C, convection, mixed, steady
from selector.heat.grid import Section, bar_grid, round_grid
from selector.heat.steel_property import SteelProperty, cooling_steel, heating_steel

K_W_PER_M_K, C_J_PER_M3_K = 30.0, 4.68e6
GRID_C = np.linspace(-100.0, 1700.0, 3601)
PLAIN = SteelProperty(
    "constant",
    GRID_C,
    np.full_like(GRID_C, K_W_PER_M_K),
    np.full_like(GRID_C, C_J_PER_M3_K),
)
STEPPED = (Section(12.0, 25.0), Section(20.0, 20.0, 6.0), Section(16.0, 80.0))


def all_round(grid, curve):
    return steady(grid, {str(face): curve for face in np.unique(grid.wall_face)})


def torch(grid, flux_w_per_m2, place_mm, width_mm):
    """Return a flame about a place on the side, still air on all walls."""
    share = np.zeros((grid.wall_face.size, 2, 2))
    share[..., 0] = 1.0
    away = (grid.wall_along_mm() - place_mm) / width_mm
    share[..., 1] = np.exp(-(away**2))[:, None]
    air = convection(10.0, 20.0, 0.8)
    return mixed([air, np.full(SURFACE_C.size, -flux_w_per_m2)], share, [0.0, 1.0])


@pytest.mark.parametrize("steel", [heating_steel(), heating_steel("high-alloy")])
def test_energy_closes_through_the_peak(steel):
    grid = bar_grid(STEPPED)
    flame = torch(grid, 0.5e6, 15.0, 12.0)
    history = conduct(grid, steel, flame, 20.0, Plan(60.0))
    assert history.end_c.max() > 800.0
    assert -history.wall_heat_j.sum() == pytest.approx(history.stored_j, rel=1e-6)
    stored = steel.enthalpy_j_per_m3(history.end_c) - steel.enthalpy_j_per_m3(20.0)
    by_field = float(np.sum((grid.mesh.volume * stored)[grid.active]))
    assert by_field == pytest.approx(history.stored_j, rel=2e-4)  # the table is interpolated


def test_energy_closes_in_a_quench_with_latent_heat():
    grid = bar_grid(STEPPED)
    steel = cooling_steel(change_c=350.0, recalescence_k=130.0)
    history = conduct(grid, steel, all_round(grid, convection(3000.0, 20.0)), 850.0, Plan(30.0))
    assert -history.wall_heat_j.sum() == pytest.approx(history.stored_j, rel=1e-6)


def test_insulated_part_keeps_its_heat_and_evens_out():
    grid = bar_grid([Section(10.0, 30.0)])
    start = np.broadcast_to(np.linspace(800.0, 100.0, grid.along_mm.size), grid.active.shape)
    history = conduct(grid, PLAIN, steady(grid, {}), start, Plan(1200.0))
    mean = float(np.average(start, weights=grid.mesh.volume))
    assert history.stored_j == pytest.approx(0.0, abs=1e-6)
    assert history.end_c == pytest.approx(mean, abs=0.5)


def test_semi_infinite_solid_under_flux():
    """2 q sqrt(t / (pi k rho c)): Carslaw and Jaeger 1959, section 2.9 (from memory)."""
    grid = round_grid(200.0, fineness=2.0)
    flux, seconds = 1.0e6, 4.0
    heat = steady(grid, {"side": np.full(SURFACE_C.size, -flux)})
    surface = grid.cell(100.0)
    history = conduct(grid, PLAIN, heat, 20.0, Plan(seconds, watch=(surface,), tolerance_k=0.5))
    depth = 0.1 - grid.across_mm[-1] * 1e-3
    spread = math.sqrt(K_W_PER_M_K / C_J_PER_M3_K * seconds)
    x = depth / (2.0 * spread)
    ierfc = math.exp(-(x**2)) / math.sqrt(math.pi) - x * math.erfc(x)
    rise = 2.0 * flux * spread / K_W_PER_M_K * ierfc
    curved = 1.0 + 0.25 * math.sqrt(math.pi) * spread / 0.1  # first term of the cylinder
    assert history.temperature_c[0, -1] - 20.0 == pytest.approx(rise * curved, rel=0.005)


@pytest.mark.parametrize("biot", [0.02, 0.1])
def test_lumped_limit(biot):
    """A bar of small Biot number cools exponentially, as one cell and as many."""
    radius, seconds = 4e-3, 60.0
    h = biot * K_W_PER_M_K / radius
    cells = round_grid(8.0), round_grid(8.0, fineness=0.0)
    many, one = (
        conduct(grid, PLAIN, all_round(grid, convection(h, 20.0)), 850.0, Plan(seconds))
        for grid in cells
    )
    slower = 1.0 / (1.0 + biot / 4.0)  # internal resistance, first order in Biot
    left = math.exp(-2.0 * h * slower / (C_J_PER_M3_K * radius) * seconds)
    weights = cells[0].mesh.volume
    mean = float(np.average(many.end_c, weights=weights))
    assert (mean - 20.0) / 830.0 == pytest.approx(left, rel=0.01)
    assert (float(one.end_c[0, 0]) - 20.0) / 830.0 == pytest.approx(left, rel=0.02)


def test_grid_error_falls_with_the_square_of_the_cell():
    def core(fineness):
        grid = round_grid(32.0, fineness=fineness)
        quench = all_round(grid, convection(5000.0, 20.0))
        end = conduct(grid, PLAIN, quench, 850.0, Plan(6.0, tolerance_k=0.005)).end_c
        return float(np.average(end, weights=grid.mesh.volume))

    usual, coarse, fine, finest = (core(f) for f in (1.0, 2.0, 4.0, 16.0))
    assert abs(coarse - finest) > 3.0 * abs(fine - finest)
    assert abs(usual - finest) < 0.3  # of 830 K


@pytest.mark.parametrize("diameter", [4.0, 16.0, 60.0])
def test_twenty_minutes_within_a_hundredth_of_fine_steps(diameter):
    """Torch for some minutes, held, quenched, tempered slowly: each phase within 1 %."""
    grid = bar_grid([Section(diameter, 60.0)])
    watch = tuple(grid.cell(r, z) for r in (0.0, diameter) for z in (0.0, 20.0, 50.0))
    flame = torch(grid, 2.2e4 * diameter**0.5, 8.0, 10.0)
    water = all_round(grid, convection(np.interp(SURFACE_C, [300, 600], [12e3, 3e3]), 20.0))
    oven = all_round(grid, convection(15.0, 200.0, 0.8))

    def phases(tolerance):
        field, out = 20.0, []
        for steel, boundary, seconds in (
            (heating_steel(), flame, 300.0),
            (cooling_steel(), water, 60.0),
            (heating_steel(), oven, 840.0),
        ):
            plan = Plan(seconds, watch=watch, tolerance_k=tolerance)
            out.append(conduct(grid, steel, boundary, field, plan))
            field = out[-1].end_c
        return out

    for usual, fine in zip(phases(2.0), phases(0.02), strict=True):
        true = [np.interp(usual.time_s, fine.time_s, row) for row in fine.temperature_c]
        span = float(np.ptp(fine.temperature_c))
        assert np.abs(usual.temperature_c - true).max() < 0.01 * max(span, 100.0)


def test_finite_elements_agree():
    """A cylinder quenched on all sides, by scikit-fem on the plane of radius and length."""
    h, seconds, steps = 4000.0, 4.0, 800
    r = 0.016 * np.sin(np.linspace(0.0, math.pi / 2, 33))
    z = 0.02 - 0.02 * np.sin(np.linspace(0.0, math.pi / 2, 33)[::-1])
    mesh = fem.MeshQuad.init_tensor(r, np.unique(np.concatenate([z, 0.04 - z])))
    basis = fem.Basis(mesh, fem.ElementQuad2())
    outer = mesh.facets_satisfying(
        lambda x: (x[0] > 0.016 - 1e-9) | (x[1] < 1e-9) | (x[1] > 0.04 - 1e-9)
    )
    wall = fem.FacetBasis(mesh, fem.ElementQuad2(), facets=outer)
    stiff = fem.BilinearForm(lambda u, v, w: K_W_PER_M_K * w.x[0] * dot(grad(u), grad(v)))
    mass = fem.BilinearForm(lambda u, v, w: C_J_PER_M3_K * w.x[0] * u * v)
    robin = fem.BilinearForm(lambda u, v, w: h * w.x[0] * u * v)
    a = stiff.assemble(basis) + robin.assemble(wall)
    m = mass.assemble(basis)
    step = seconds / steps
    from scipy.sparse.linalg import splu  # noqa: PLC0415

    left = splu((m + 0.5 * step * a).tocsc())  # Crank and Nicolson, after four damped steps
    damp = splu((m + step / 4.0 * a).tocsc())
    u = np.full(m.shape[0], 830.0)
    for _ in range(8):
        u = damp.solve(m @ u)
    for _ in range(steps - 2):
        u = left.solve(m @ u - 0.5 * step * (a @ u))

    grid = bar_grid([Section(32.0, 40.0)], fineness=2.0)
    around = all_round(grid, convection(h, 20.0))
    field = conduct(grid, PLAIN, around, 850.0, Plan(seconds, tolerance_k=0.2)).end_c
    for radius, along in ((0.0, 20.0), (15.0, 20.0), (0.0, 2.0), (15.0, 2.0), (8.0, 10.0)):
        row, column = divmod(grid.cell(radius, along), grid.along_mm.size)
        place = np.array([[grid.across_mm[row]], [grid.along_mm[column]]]) * 1e-3
        other = float((basis.probes(place) @ u)[0]) + 20.0
        assert field[row, column] == pytest.approx(other, abs=0.003 * 830.0)


def test_heating_stops_at_a_temperature():
    grid = bar_grid([Section(10.0, 60.0)])
    tip = grid.cell(5.0, 0.0)
    flame = torch(grid, 0.4e6, 5.0, 10.0)
    plan = Plan(300.0, watch=(tip,), stop=Stop(tip, 800.0))
    history = conduct(grid, heating_steel(), flame, 20.0, plan)
    assert history.stopped
    assert history.temperature_c[0, -1] == pytest.approx(800.0, abs=0.6)
    assert history.time_s[-1] < 300.0


def test_a_history_without_a_cell_waits_for_the_last_of_those_watched():
    grid = bar_grid([Section(10.0, 30.0), Section(30.0, 30.0)])
    thin, thick = grid.cell(0.0, 5.0), grid.cell(0.0, 45.0)
    air = all_round(grid, convection(200.0, 20.0))
    ends = [
        conduct(grid, cooling_steel(), air, 850.0, Plan(3600.0, watch=(thin, thick), stop=stop))
        for stop in (Stop(None, 480.0, "falling"), Stop(thick, 480.0, "falling"))
    ]
    np.testing.assert_array_equal(ends[0].time_s, ends[1].time_s)
    assert ends[0].temperature_c[:, -1].max() == pytest.approx(480.0, abs=0.6)
    assert ends[0].temperature_c[0, -1] < 400.0


def test_flame_too_small_ends_with_its_time():
    grid = bar_grid([Section(40.0, 60.0)])
    tip = grid.cell(20.0, 0.0)
    plan = Plan(60.0, watch=(tip,), stop=Stop(tip, 800.0))
    history = conduct(grid, heating_steel(), torch(grid, 2e4, 5.0, 10.0), 20.0, plan)
    assert not history.stopped
    assert history.time_s[-1] == 60.0


def test_branches_from_one_heating_do_not_disturb_each_other():
    grid = bar_grid([Section(10.0, 60.0)])
    heated = conduct(grid, heating_steel(), torch(grid, 0.4e6, 5.0, 10.0), 20.0, Plan(20.0))
    before = heated.end_c.copy()
    first, _, again = (
        conduct(
            grid, cooling_steel(), all_round(grid, convection(h, 20.0)), heated.end_c, Plan(5.0)
        )
        for h in (500.0, 9000.0, 500.0)
    )
    assert np.array_equal(heated.end_c, before)
    assert np.array_equal(first.temperature_c, again.temperature_c)


def test_history_is_read_between_its_steps():
    grid = round_grid(10.0)
    quench = all_round(grid, convection(2000.0, 20.0))
    history = conduct(grid, PLAIN, quench, 850.0, Plan(5.0))
    assert history.at(0.0) == pytest.approx(850.0)
    assert np.all(np.diff([history.at(t)[0] for t in (0.5, 1.0, 2.0, 4.0)]) < 0.0)


@pytest.mark.parametrize(
    ("start", "plan", "message"),
    [
        (math.nan, Plan(5.0), "start must be between -100 and 1700 °C; got nan °C"),
        (2500.0, Plan(5.0), "start must be between -100 and 1700 °C; got 2500 °C"),
        (850.0, Plan(0.0), "seconds_s must be above 0 and at most a day; got 0 s"),
        (850.0, Plan(math.nan), "seconds_s must be above 0 and at most a day; got nan s"),
        (850.0, Plan(5.0, tolerance_k=0.0), "tolerance_k must be above 0 K; got 0 K"),
    ],
)
def test_what_cannot_be_stepped_is_refused(start, plan, message):
    grid = round_grid(10.0)
    with pytest.raises(OutOfRangeError, match=message):
        conduct(grid, PLAIN, all_round(grid, convection(10.0, 20.0)), start, plan)


def test_surroundings_of_another_grid_are_refused():
    other = steady(bar_grid([Section(10.0, 20.0)]), {})
    with pytest.raises(
        OutOfRangeError, match=r"boundary must be made for this grid of 1 walls"
    ):
        conduct(round_grid(10.0), PLAIN, other, 850.0, Plan(1.0))


def test_steps_without_end_are_refused(monkeypatch):
    from selector.heat import conduction  # noqa: PLC0415

    bar, plan = round_grid(10.0), Plan(60.0, tolerance_k=0.05)
    air = all_round(bar, convection(500.0, 20.0))
    steps = conduct(bar, PLAIN, air, 850.0, plan).time_s.size
    monkeypatch.setattr(conduction, "MOST_WRITTEN", 0)
    monkeypatch.setattr(conduction, "RECORDS", steps // 2)
    with pytest.raises(OutOfRangeError, match=r"sizes of the part .*; got no end in \d+ steps"):
        conduct(bar, PLAIN, air, 850.0, plan)


def test_that_it_prepares_is_said_once(monkeypatch, caplog):
    from selector.heat import conduction, kernel  # noqa: PLC0415

    grid = round_grid(8.0)
    air = all_round(grid, convection(50.0, 20.0))
    said = {}
    for compiled in (True, False):
        monkeypatch.setattr(kernel, "is_compiled", lambda computed=compiled: computed)
        conduction._announce_compiling.cache_clear()
        caplog.clear()
        for _ in range(2):
            conduct(grid, PLAIN, air, 500.0, Plan(1.0))
        said[compiled] = caplog.messages
    assert said[True] == []
    assert len(said[False]) == 1
    assert "once" in said[False][0]
