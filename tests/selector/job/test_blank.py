"""The bar a part is cut from."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.job.blank import CUT_LOSS_MM, Blank, blank, corners_mm
from selector.job.geometry import mass_kg
from selector.requirement.part import Part, Section

SIZE = st.floats(1, 300)
SOLD = ("round", "square", "hexagon", "flat")


def section(shape="round", size=20.0, length=50.0, **more):
    return Section(shape=shape, size=size, length=length, **more)


def part(*sections, **more):
    return Part(name="x", section=sections, **more)


@given(
    st.lists(
        st.tuples(st.sampled_from(["round", "square", "hexagon"]), SIZE, SIZE),
        min_size=1,
        max_size=4,
    ),
    st.sets(st.sampled_from(SOLD)),
)
def test_the_part_fits_into_its_blank(rows, sold):
    made = part(*(section(*row) for row in rows))
    bar = blank(made, sold)
    assert bar.shape in (sold or {"round"})
    assert bar.volume_mm3 * 7.85e-6 >= mass_kg(made)
    assert bar.volume_mm3 <= min(blank(made, {shape}).volume_mm3 for shape in sold or SOLD[:1])


def test_stock_removal_makes_the_blank_thicker_on_both_sides():
    bare, more = part(section()), part(section(), stock_removal=0.5)
    assert blank(more, SOLD).size_mm - blank(bare, SOLD).size_mm == pytest.approx(1.0)


@pytest.mark.parametrize(
    ("rows", "sold", "bar"),
    [
        ([section("square", 40)], ("round", "square"), ("square", 40, None)),
        ([section("square", 40)], ("round",), ("round", 40 * math.sqrt(2), None)),
        ([section("hexagon", 20)], ("round", "hexagon"), ("hexagon", 20, None)),
        ([section("square", 40)], ("round", "flat"), ("flat", 40, 40)),
        ([section("flat", 6, width=30)], ("round", "flat"), ("flat", 6, 30)),
        ([section("flat", 6, width=8)], ("round",), ("round", 10, None)),
        # A square end that lies within its round shank, and a square head over a thin one.
        ([section(size=20), section("square", 14, length=15)], SOLD, ("round", 20, None)),
        ([section(size=10), section("square", 20, length=60)], SOLD, ("square", 20, None)),
        ([section("tube", 60, length=12, bore=20)], ("flat",), ("flat", 12, 60)),
    ],
    ids=["square", "square of round", "hexagon", "square of flat", "flat", "flat of round",
         "shank", "head", "disc of plate"],
)  # fmt: skip
def test_the_bar_is_of_the_shape_that_wastes_least(rows, sold, bar):
    shape, size, wide = bar
    got = blank(part(*rows), sold)
    assert (got.shape, got.width_mm) == (shape, wide)
    assert got.size_mm == pytest.approx(size)


def test_a_square_within_a_hexagon_and_a_hexagon_within_a_square_touch_its_sides():
    # Schoolbook: a regular hexagon of side t holds a square of side (3 - sqrt 3) t.
    side = 20 / (3 - math.sqrt(3))
    assert blank(part(section("square", 20)), ("hexagon",)).size_mm == pytest.approx(
        math.sqrt(3) * side
    )
    assert corners_mm(section("hexagon", math.sqrt(3))) == pytest.approx(2.0)


def test_the_cut_is_lost_and_bark_is_added_all_round():
    bar = blank(part(section("flat", 6, width=30)), ("flat",))
    assert bar.length_mm == 50 + CUT_LOSS_MM
    assert bar.thicker(2.0) == Blank("flat", 8.0, bar.length_mm, 32.0)
    assert bar.thicker(0.0, 10.0) == Blank("flat", 10.0, bar.length_mm, 30.0)
