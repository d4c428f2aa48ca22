import pytest

from ui import charts


def test_the_points_are_the_selectors_numbers(advice):
    frame = charts.points(advice.options)
    first = advice.options[0]
    assert frame["cost"][0] == first.cost.spread.p50
    assert frame["chance"][0] == 100 * first.passing_all
    assert frame["hardness_high"][0] == first.hardness.surface.p95
    assert frame["name"][charts.NAMED] == str(charts.NAMED + 1)


@pytest.mark.parametrize("against", charts.AGAINST)
def test_a_chart_has_bars_marks_and_words_to_hover(advice, against):
    layers = charts.trade_off(advice.options[:10], advice.zones, against).to_dict()["layer"]
    marks = [layer["mark"]["type"] for layer in layers]
    assert marks.count("rule") == (1 if against == "chance" else 2)
    assert marks.count("rect") == (0 if against == "chance" else 1)
    marks = next(layer for layer in layers if layer["mark"]["type"] == "point")
    assert marks["encoding"]["y"]["field"] == against
    assert {tip["title"] for tip in marks["encoding"]["tooltip"]} >= {"Family", "Steel"}


def test_without_a_window_nothing_is_shaded(advice):
    layers = charts.trade_off(advice.options, (), "hardness").to_dict()["layer"]
    assert "rect" not in [layer["mark"]["type"] for layer in layers]


def luminance(colour):
    parts = [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    red, green, blue = (
        p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts
    )
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


@pytest.mark.parametrize("colour", charts._PALETTE)
def test_marks_stand_out_on_white(colour):
    """Graphics need a contrast of 3 to 1 (WCAG 2.2, 1.4.11)."""
    assert 1.05 / (luminance(colour) + 0.05) >= 3


def test_each_colour_has_its_own_shape():
    assert len(set(charts._SHAPES)) == len(charts._SHAPES) == len(charts._PALETTE)
