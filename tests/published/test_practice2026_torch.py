"""Torch owners and tool smiths (common practice, no source): times, sizes, colours, draws."""

import numpy as np
import pytest

from selector.heat.colour import temper_colour, temper_colour_named
from selector.heat.grid import Section, bar_grid
from selector.heat.tempering_heat import soaked
from selector.heat.torch import torch
from selector.job.tempers import _TIME_S
from selector.metallurgy.tempering import equivalent_time
from selector.requirement.part import Section as PartSection
from selector.torch.heating import heatings
from selector.torch.history import between
from selector.torch.part import PATIENCE_S, Stretch, Torching
from tests.tasks import is_reached


def heat_s(name, diameter_mm, heat_c=800.0):
    """How long a torch on a hearth takes to bring a bar's end to heat, infinite if never."""
    sections = (Section(diameter_mm, 25.0), Section(diameter_mm, 80.0))
    shapes = tuple(
        PartSection(shape="round", size=diameter_mm, length=section.length_mm)
        for section in sections
    )
    end = Stretch(sections, shapes, (0.0, 25.0), diameter_mm, turned_round=False)
    task = Torching(
        end, torch(name), "low-alloy", turns=True, hearth=True, patience_s=PATIENCE_S["flame"]
    )
    found = heatings(task, 5.0)
    if not is_reached(found, heat_c):
        return np.inf
    flame = float(found.effective_log(np.zeros(1), np.array([heat_c]))[0])
    return between(found, found.to_stop_s, heat_c, flame)


@pytest.mark.parametrize(
    ("name", "diameter_mm", "low_s", "high_s"),
    [
        pytest.param("hand-propane", 8.0, 20.0, 180.0, id="hand torch, 8 mm: a minute or two"),
        pytest.param("oxy-propane", 25.0, 20.0, 120.0, id="heating nozzle, 25 mm: a minute"),
        pytest.param("oxy-acetylene", 12.0, 10.0, 60.0, id="welding nozzle, 12 mm: seconds"),
    ],
)
def test_time_to_bring_an_end_to_heat(name, diameter_mm, low_s, high_s):
    assert low_s <= heat_s(name, diameter_mm) <= high_s


def test_a_hand_torch_on_a_hearth_heats_about_12_mm_quickly_and_40_mm_never():
    assert heat_s("hand-propane", 12.0) < 240.0
    assert np.isinf(heat_s("hand-propane", 40.0))


@pytest.mark.parametrize(
    ("name", "printed_c"),
    [("pale yellow", "210"), ("blue", "300")],
    ids=["light straw about 210 °C", "blue about 300 °C"],
)
def test_temper_colours_read_what_the_trade_says(name, printed_c):
    said = float(printed_c)
    assert abs(temper_colour_named(name).temperature_c - said) < 5.0
    assert temper_colour(said).name == name


def test_a_furnace_temper_is_an_hour_and_slow_indirect_heating_a_good_quarter():
    assert _TIME_S["furnace"] == 3600.0
    assert 900.0 <= _TIME_S["plate"] <= 1800.0


@pytest.mark.parametrize("diameter_mm", [6.0, 10.0, 14.0])
def test_on_a_plate_a_small_part_has_its_colour_in_a_good_quarter_of_an_hour(diameter_mm):
    found = soaked(bar_grid([Section(diameter_mm, 50.0)]), "plate", 250.0, 1200.0)
    assert found.arrived_s < 1200.0


def test_an_hour_in_the_furnace_counts_for_most_of_an_hour():
    found = soaked(bar_grid([Section(12.0, 50.0)]), "furnace", 400.0, 3600.0)
    spent = equivalent_time(found.temperature_c, found.time_s, 400.0)
    assert spent.min() > 0.75 * 3600.0
