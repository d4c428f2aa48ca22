import numpy as np
import pytest

from selector.heat.boiling import Bath, Quench
from selector.torch.course import HOLDS_S, MIDDLE_STOP, field_after, least_past_mm
from selector.torch.heating import heatings
from selector.torch.residual_heat import dip_for, water_line_mm
from selector.torch.response import dipped, library
from tests.tasks import size, task


def dip(mm, changes=None):
    part = task(changes={**size(mm), **(changes or {})})
    past_mm = least_past_mm(part) if changes else 30.0
    return dip_for(part, past_mm, (840.0, 20.0), Bath("water"))


def test_one_heat_alone_leaves_what_the_library_has():
    part = task(changes=size(12))
    field_c = heatings(part, 5.0).field_c
    for hold_s in (20.0, 80.0):
        alone = field_after(part, 5.0, MIDDLE_STOP, hold_s)
        assert alone.tolist() == field_c[MIDDLE_STOP, HOLDS_S.index(hold_s)].tolist()


def test_a_thick_end_with_hot_steel_behind_it_tempers_itself():
    """Common practice: the chisel is dipped for some seconds and the colour runs down."""
    done = dip(25)
    assert done is not None
    assert 2.0 < done.dip_s <= 32.0
    assert done.under_mm > 30.0
    assert done.colour_after_s(250.0) > 0.0


@pytest.mark.parametrize("mm", [16, 25, 32])
def test_the_end_is_cold_enough_to_have_hardened_when_it_is_taken_out(mm):
    """Under 150 °C, some way below where martensite begins. Common practice."""
    assert dip(mm).end_c[0] <= 150.0


def test_a_hotter_colour_takes_longer_or_does_not_come():
    done = dip(25)
    straw, blue = done.colour_after_s(200.0), done.colour_after_s(300.0)
    assert straw is not None
    assert blue is None or blue > straw


def test_a_thin_rod_holds_no_heat_behind_its_end():
    done = dip(4)
    assert done is None or done.colour_after_s(250.0) is None


def test_where_the_whole_part_is_hot_no_heat_lies_behind():
    assert dip(25, {"zone.0.section": [1, 2]}) is None


def test_behind_the_water_line_only_air_cools():
    """Common practice: the end is hard to about the water line, soft behind."""
    part = task(changes=size(12))
    past_mm = 30.0
    line_mm = water_line_mm(part, past_mm)
    assert part.part.zone_mm[1] < line_mm <= part.part.zone_mm[1] + 6.0
    quench = Quench(Bath("water"), 1.0, 0.2)
    whole = library(part, past_mm, quench)
    dipped_so = dipped(whole, line_mm)
    grid = whole.heatings.grid
    along = grid.along_mm[grid.cells() % grid.along_mm.size]
    under = along < line_mm
    in_bath, in_part = whole.cooled.log_time, dipped_so.cooled.log_time
    assert np.array_equal(in_part[..., under], in_bath[..., under])
    # Still air takes half a minute or more over what water does in a second or two.
    assert np.exp(in_part[..., ~under]).min() > 30.0
    assert dipped_so.under_mm == line_mm
