from selector.heat.boiling import Bath
from selector.torch.heating import HOLDS_S, MIDDLE_STOP, field_after, heatings, least_past_mm
from selector.torch.residual_heat import dip_for
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
