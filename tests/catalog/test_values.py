"""A value cannot exist without source, place and basis; ranges and curves are in order."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from catalog.values import Curve, Fact, Number, Span

ORIGIN = {"source": "own-estimate", "at": "test", "basis": "estimated", "seen": "memory"}
FINITE = st.floats(-1e6, 1e6)


@pytest.mark.parametrize("missing", ORIGIN)
def test_a_number_without_its_origin_is_refused(missing):
    origin = {key: text for key, text in ORIGIN.items() if key != missing}
    with pytest.raises(ValidationError, match=rf"{missing}\n  Field required"):
        Number(value=1.0, **origin)


@pytest.mark.parametrize(
    ("key", "wrong"), [("basis", "guessed"), ("seen", "heard"), ("source", ""), ("at", "")]
)
def test_an_origin_outside_its_words_is_refused(key, wrong):
    with pytest.raises(ValidationError, match=rf"{key}\n.*input_value='{wrong}'"):
        Number(value=1.0, **{**ORIGIN, key: wrong})


@pytest.mark.parametrize("bad", ["1.0", True, None])
def test_a_number_of_another_type_is_refused(bad):
    with pytest.raises(ValidationError, match=rf"value\n.*input_value={bad!r}"):
        Number(value=bad, **ORIGIN)


@pytest.mark.parametrize("bad", [float("nan"), float("inf")])
def test_a_number_that_is_not_finite_is_refused(bad):
    with pytest.raises(ValidationError, match=rf"value\n.*finite number.*input_value={bad}"):
        Number(value=bad, **ORIGIN)


def test_an_unknown_key_is_refused():
    with pytest.raises(ValidationError, match=r"unit\n  Extra inputs are not permitted"):
        Number(value=1.0, unit="mm", **ORIGIN)


def test_values_are_frozen():
    number = Number(value=1.0, **ORIGIN)
    with pytest.raises(ValidationError, match=r"value\n  Instance is frozen"):
        number.value = 2.0


def test_a_reversed_range_is_refused():
    with pytest.raises(ValidationError, match=r"min must not exceed max \(5 > 4\)"):
        Span(min=5, max=4, **ORIGIN)


def test_a_range_needs_an_end():
    with pytest.raises(ValidationError, match="give min, max or both"):
        Span(**ORIGIN)


@pytest.mark.parametrize(
    ("ends", "low", "high"),
    [({"min": 2}, 2, 2), ({"max": 3}, 3, 3), ({"min": 2, "max": 3}, 2, 3), ({"min": 0}, 0, 0)],
)
def test_an_open_end_takes_the_other(ends, low, high):
    loaded = Span(**ends, **ORIGIN)
    assert (loaded.low, loaded.high) == (low, high)


@given(FINITE, FINITE)
def test_the_middle_lies_between_the_ends(one, other):
    loaded = Span(min=min(one, other), max=max(one, other), **ORIGIN)
    assert loaded.low <= loaded.middle <= loaded.high


@pytest.mark.parametrize("points", [((2, 60), (1, 61)), ((1, 60), (1, 59))])
def test_a_curve_ascends(points):
    with pytest.raises(ValidationError, match=r"first coordinates must ascend \(\["):
        Curve(points=points, **ORIGIN)


def test_a_curve_has_two_points_or_more():
    with pytest.raises(ValidationError, match=r"points\n.*at least 2"):
        Curve(points=((1, 60),), **ORIGIN)


def test_a_fact_says_something():
    with pytest.raises(ValidationError, match=r"text\n.*input_value=''"):
        Fact(text="", **ORIGIN)
