"""The drawing of plain parts, piece by piece: scale, outline, breaks, labels, hardness."""

import re
from dataclasses import replace
from operator import attrgetter

import numpy as np
import pytest

from selector.handover.drawing.axis import axis_of, stretches
from selector.handover.drawing.canvas import Box, Canvas, Type, text_width
from selector.handover.drawing.end_features import circle_path
from selector.handover.drawing.end_view import draw_end, end_extent_mm, extent_mm, shape_path
from selector.handover.drawing.features import place_of, words_of
from selector.handover.drawing.fields import cut_paths, depth_share, surface_runs, value_at
from selector.handover.drawing.look import (
    DARK,
    LIGHT,
    PAPER,
    for_paper,
    for_screen,
    shown_size,
    slim,
)
from selector.handover.drawing.marks import Band, Field, Marks
from selector.handover.drawing.outline import (
    Side,
    draw_centre_line,
    edge_path,
    half_height,
    stretches_of,
    within,
)  # fmt: skip
from selector.handover.drawing.part_drawing import drawn, scale_words
from selector.handover.drawing.said import fillets, hard_end_mm
from selector.handover.drawing.sizes import across_words
from selector.handover.drawing.slots import Label, slots
from selector.handover.drawing.strip import HOT_BOUNDS_C
from selector.handover.drawing.tint import both
from selector.requirement.part import Feature, Part, Section
from tests.svg_text import box, spots, true_width

ROUND = Section(shape="round", size=20, length=30)
SHAFT = Part(name="pin", section=(ROUND, Section(shape="round", size=12, length=60, fillet=2)))


def side_of(part: Part, scale: float = 1.0) -> Side:
    axis = axis_of(stretches([], part.length_mm, 1e3), scale, 10.0, 3.0)
    return Side(axis, 50.0, stretches_of(part))


def test_a_short_part_is_drawn_whole_and_a_long_one_broken_where_nothing_is():
    assert stretches([30.0], 90.0, 20.0) == ((0.0, 90.0),)
    first, last = stretches([50.0], 1000.0, 10.0)
    assert first[0] == 0.0
    assert last[1] == 1000.0
    assert first[1] > 50.0
    assert first[1] + last[1] - last[0] == pytest.approx(120.0)


def test_places_are_to_scale_in_every_piece():
    axis = axis_of(((0.0, 60.0), (940.0, 1000.0)), 0.5, 10.0, 3.0)
    assert axis.x(20.0) == 20.0
    assert axis.x(990.0) - axis.x(950.0) == 20.0
    assert axis.x(500.0) == axis.x(60.0) == 40.0
    assert axis.breaks == ((40.0, 43.0),)
    assert axis.shows(60.0)
    assert not axis.shows(500.0)
    assert (axis.left, axis.right) == (10.0, 73.0)


@pytest.mark.parametrize(
    ("shape", "half", "extent"),
    [
        ({"shape": "round", "size": 12}, 6.0, (12.0, 12.0)),
        ({"shape": "square", "size": 12}, 6.0, (12.0, 12.0)),
        ({"shape": "hexagon", "size": 12}, 6.928, (12.0, 13.856)),
        ({"shape": "flat", "size": 4, "width": 30}, 15.0, (4.0, 30.0)),
        ({"shape": "flat", "size": 30, "width": 4}, 15.0, (4.0, 30.0)),
    ],
)
def test_forms_are_as_high_and_wide_as_they_are(shape, half, extent):
    section = Section(length=10, **shape)
    assert half_height(section) == pytest.approx(half, abs=1e-3)
    assert extent_mm(section) == pytest.approx(extent, abs=1e-3)
    assert end_extent_mm(Part(name="x", section=(section, ROUND))) == pytest.approx(
        (max(extent[0], 20.0), max(extent[1], 20.0)), abs=1e-3
    )
    assert shape_path(section, 0.0, 0.0, 1.0, 20.0) == ""
    assert shape_path(section, 0.0, 0.0, 1.0).endswith("Z")


def test_a_shoulder_has_its_fillet_and_a_mirror_under_the_axis():
    side = side_of(SHAFT)
    over, under = (edge_path(side, side.axis.pieces[0], sign) for sign in (1, -1))
    assert over == "M10 40 L40 40 L40 42 A2 2 0 0 0 42 44 L100 44"
    assert under == "M10 60 L40 60 L40 58 A2 2 0 0 1 42 56 L100 56"
    assert [item.words for item in fillets(side, PAPER)] == ["R2"]
    assert len(list(within(side.stretches, side.axis.pieces[0]))) == 2


def test_paper_is_drawn_at_a_scale_of_the_list_and_says_it():
    assert drawn(SHAFT, Marks(), PAPER).scale == "full size"
    assert scale_words(0.5, PAPER) == "1 : 2"
    assert scale_words(5.0, PAPER) == "5 : 1"
    assert scale_words(3.3, LIGHT) == "to scale"
    assert drawn(SHAFT, Marks(), for_paper(140.0, 10.0)).scale == "1 : 2"


def test_full_size_is_full_size():
    made = drawn(SHAFT, Marks(), PAPER)
    lengths = [
        float(b) - float(a)
        for a, y, b in re.findall(
            r'x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="\2"', made.svg
        )
    ]
    assert any(length == pytest.approx(90.0, abs=0.01) for length in lengths)
    assert 'width="194mm"' in made.svg


def test_a_long_shaft_is_broken_and_keeps_its_length():
    shaft = Part(name="shaft", section=(Section(shape="round", size=10, length=900),))
    made = drawn(shaft, Marks(), PAPER)
    assert made.broken
    assert "900" in [spot.text for spot in spots(made.svg)]


def test_texts_of_the_user_are_escaped():
    hostile = SHAFT.model_copy(update={"name": '<script>"&'})
    marks = Marks(said=("<b>54</b> & more",), rest='"x" <i>')
    made = drawn(hostile, marks, PAPER)
    assert "<script" not in made.svg
    assert "<b>" not in made.svg
    assert "&lt;script&gt;&quot;&amp;" in made.svg


def test_ids_are_the_drawings_own():
    one = drawn(SHAFT, Marks(said=("a",)), PAPER).svg
    other = drawn(SHAFT, Marks(said=("b",)), PAPER).svg
    assert set(re.findall(r'id="([^"]+)"', one)).isdisjoint(re.findall(r'id="([^"]+)"', other))


def test_what_is_hard_is_hatched_on_paper_and_filled_on_a_screen():
    marks = Marks((Band(0.0, 30.0, None, 54.0, "54 HRC"),))
    assert "url(#" in drawn(SHAFT, marks, PAPER).svg
    assert "url(#" not in drawn(SHAFT, marks, LIGHT).svg
    screen = drawn(SHAFT, marks, for_screen(900, 200)).svg
    for colour in (attrgetter("ink"), lambda look: look.steps[4]):  # light and dark in one
        assert both(colour(LIGHT), colour(DARK)) in screen


def field(low: float, high: float) -> Field:
    """Return a field that falls from high to low between 39 and 40 mm."""
    along, share = np.linspace(0.0, 90.0, 91), np.linspace(0.0, 1.0, 11)
    hrc = np.where(along[None, :] < 40.0, high, low) + 0.0 * share[:, None]
    return Field(along, share, hrc, 15.0 * hrc)


def test_a_band_lies_under_the_surface_as_deep_as_it_is():
    side = side_of(SHAFT)
    marks = Marks((Band(30.0, 90.0, 1.0, 54.0),))
    assert cut_paths(side, marks, 48.0, 99.0) == (
        "M40 45 L100 45 L100 44 L40 44 Z M99 50 L100 50 L100 45 L99 45 Z"
    )
    assert cut_paths(side, marks, 0.0, 48.0) == ""
    assert hard_end_mm(side, marks) == (30.0, 90.0)


def test_the_end_view_is_as_hard_as_the_surface_beside_it():
    for hrc, step in ((49.0, 3), (54.0, 4)):
        canvas = Canvas(LIGHT, "k")
        draw_end(canvas, SHAFT, Marks(field=field(hrc, hrc)), (50.0, 50.0), 1.0)
        fills = set(re.findall(r'fill="(#\w+)"', "".join(canvas.elements)))
        assert fills - {LIGHT.soft, LIGHT.ink} == {LIGHT.steps[step]}


def test_a_field_is_cut_where_its_hardness_passes_a_bound():
    side, marks = side_of(SHAFT), Marks(field=field(17.0, 54.0))
    path = cut_paths(side, marks, 48.0, 99.0)
    xs = [float(x) for x in re.findall(r"[ML]([\d.]+) ", path)]
    assert min(xs) == 10.0
    assert max(xs) == pytest.approx(49.0, abs=0.5)
    runs = surface_runs(side, marks)
    assert runs[0][2] == 54.0
    assert runs[-1][2] == 17.0
    assert depth_share(marks, 20.0) == 1.0
    assert depth_share(marks, 80.0) == 0.0
    assert value_at(marks.field, marks.field.hrc, np.array([10.0]), np.array([0.5])) == [[54.0]]
    assert list(HOT_BOUNDS_C) == sorted(HOT_BOUNDS_C)


def test_steps_of_hardness_go_by_the_bounds():
    assert [Marks().step_of(hrc) for hrc in (10, 30, 45, 49, 52, 60)] == [0, 1, 2, 3, 4, 5]


def test_features_are_named_with_their_size():
    part = SHAFT.model_copy(update={"feature": (Feature(kind="cross-hole", size=6.35),)})
    assert words_of(part.feature[0]) == "Ø6.35 across"
    assert words_of(Feature(kind="keyway", size=5)) == "keyway 5 wide"
    assert words_of(Feature(kind="sharp-corner")) == "sharp corner"
    assert place_of(part, part.feature[0]) == 15.0
    assert shown_size(28.575) == "28.57"
    assert shown_size(12.0) == "12"
    assert [across_words(s) for s in stretches_of(SHAFT)] == ["Ø20", "Ø12"]


def test_labels_keep_clear_of_each_other_and_of_walls():
    found = slots(
        [Label(10, "a", 20), Label(12, "b", 20), Label(30, "c", 20)], (55,), (0, 60), 1
    )
    assert [(slot.row, slot.left) for slot in found] == [(0, 11), (0, -0.0)][:1] + [
        (slot.row, slot.left) for slot in found[1:]
    ]
    for number, slot in enumerate(found):
        for other in found[number + 1 :]:
            assert slot.row != other.row or slot.right < other.left or other.right < slot.left
        assert not slot.left < 55 < slot.right
    assert slots([Label(10, "wide", 100)], (), (0, 60), 1) == ()


@pytest.mark.parametrize(
    "text", ["54 HRC right through", "WMWM", "iii", "Ø6.35 across", "°C ≥ µ"]
)
def test_texts_are_reckoned_no_narrower_than_they_are(text):
    for bold in (False, True):
        true = true_width(text, 10.0, bold=bold)
        assert true <= text_width(text, 10.0, bold=bold) <= 1.6 * true


def test_a_canvas_refuses_what_is_taken():
    canvas = Canvas(PAPER, "k")
    assert canvas.try_text("first", 10.0, 10.0)
    assert not canvas.try_text("second", 11.0, 10.0)
    assert not canvas.try_text("outside", 190.0, 30.0)
    canvas.take(Box(0.0, 40.0, 100.0, 50.0))
    assert not canvas.try_text("taken", 10.0, 45.0)
    assert canvas.fitted("a long line of words", 15.0, Type()).endswith("…")
    assert canvas.fitted("short", 100.0) == "short"


def test_the_end_view_can_be_left_out():
    bare = replace(PAPER, end_view=False, sizes=False, strips=False)
    texts = [spot.text for spot in spots(drawn(SHAFT, Marks(), bare).svg)]
    assert texts == ["R2"]
    assert box(drawn(SHAFT, Marks(), bare).svg)[1] < 45.0
    assert circle_path(0.0, 0.0, 1.0).endswith("Z")


def test_a_flat_shows_its_broad_side_and_says_how_thick_it_is():
    blade = Section(shape="flat", size=4, width=40, length=120)
    part = Part(name="blade", section=(blade,))
    texts = [spot.text for spot in spots(drawn(part, Marks(), PAPER).svg)]
    assert {"40 × 4", "4 thick"} <= set(texts)
    small = replace(PAPER, width=90.0)
    assert {"40", "4 thick"} <= {spot.text for spot in spots(drawn(part, Marks(), small).svg)}
    side = Side(axis_of(((0.0, 120.0),), 1.0, 0.0, 0.0), 0.0, stretches_of(part))
    # A skin of 1 mm lies under the edges of its face, and none of its core is less soft.
    skin = Marks(bands=(Band(0.0, 120.0, 1.0, 60.0),))
    assert cut_paths(side, skin, 50.0, 70.0).startswith("M0 -19 L120 -19 L120 -20")
    # Hard to the middle of its thickness, it is hard all over.
    through = Marks(bands=(Band(0.0, 120.0, 2.0, 60.0),))
    assert cut_paths(side, through, 50.0, 70.0).startswith("M0 0 L120 0 L120 -20")


def test_a_flat_is_cut_along_the_middle_of_its_thickness():
    part = Part(name="b", section=(Section(shape="flat", size=4, width=40, length=120),))
    side = Side(axis_of(((0.0, 120.0),), 1.0, 0.0, 0.0), 0.0, stretches_of(part))
    share = np.linspace(0.0, 1.0, 11)
    hrc = np.repeat((30.0 + 30.0 * share)[:, None], 5, axis=1)
    field = Field(np.linspace(0.0, 120.0, 5), share, hrc, hrc)
    path = cut_paths(side, Marks(field=field), 45.0, 99.0)
    offs = [-float(pair.split()[1]) for pair in re.findall(r"[ML]([-\d.]+ [-\d.]+)", path)]
    # Half way from its middle to its face is 1 mm under its edge.
    assert min(offs) == pytest.approx(19.0, abs=0.05)


def test_what_a_thin_wire_is_drawn_like_stays_in_sight_between_its_lines():
    head = Section(shape="round", size=30, length=45)
    wire = Section(shape="round", size=2, length=100)
    look = replace(for_screen(360, 90), sizes=False, end_view=False, strips=False)
    svg = drawn(Part(name="pin", section=(head, wire)), Marks(rest=""), look).svg
    lines = [float(width) for width in re.findall(r'stroke-width="([\d.]+)"', svg)]
    tall = 2.0 * (look.width - 2 * look.sides * look.em) / 145
    assert 0.0 < max(width for width in lines if width != LIGHT.thin) < 0.15 * tall
    assert slim(LIGHT, 1e3) == LIGHT
    assert slim(LIGHT, 5.0).outline == pytest.approx(0.5)


def test_a_centre_line_runs_through_what_is_thick_enough_alone():
    for scale, count in ((3.0, 1), (0.3, 0)):
        canvas = Canvas(LIGHT, "k")
        draw_centre_line(canvas, side_of(SHAFT, scale))
        assert len(canvas.elements) == count
