from catalog import load_catalog
from selector.heat.colour import TEMPER_COLOURS
from selector.requirement import argument
from selector.specimen.plot import OXIDE, quenched_figure, tempered_figure
from selector.specimen.quenched import quenched
from selector.specimen.tempered import tempered, thin_piece

CATALOG = load_catalog()
STEEL = CATALOG.steels["42crmo4"]


def test_a_section_shows_its_points_and_where_hardness_ends():
    section = argument.section("--section", "round 60 mm")
    found = quenched(CATALOG, STEEL, section, CATALOG.media["oil"])
    (axes,) = quenched_figure(found).axes
    line, half = axes.lines
    assert list(line.get_xdata()) == [point.from_surface_mm for point in found.points]
    assert list(line.get_ydata()) == [point.hrc.p50 for point in found.points]
    assert half.get_ydata()[0] == found.half_martensite_hrc
    assert "round 60 mm" in axes.get_title()


def test_a_curve_shows_its_window_the_wish_and_the_colours():
    found = tempered(thin_piece(CATALOG, STEEL), 3600.0, wanted_hrc=45.0)
    (axes,) = tempered_figure(found).axes
    assert list(axes.lines[0].get_ydata()) == [row.hrc.p50 for row in found.rows]
    labels = [text.get_text() for text in axes.get_legend().get_texts()]
    assert labels == ["tempered", "90 % range", "brittle", "wanted", "oxide colour"]
    coloured = [row for row in found.rows if row.colour]
    assert len(axes.collections[-1].get_offsets()) == len(coloured) > 3


def test_every_colour_that_is_named_has_a_shade():
    assert set(OXIDE) == set(TEMPER_COLOURS)


def test_a_name_with_a_dollar_sign_is_no_formula():
    dear = STEEL.model_copy(update={"name": "$\\frac$"})
    found = tempered(thin_piece(CATALOG, dear), 3600.0)
    (axes,) = tempered_figure(found).axes
    assert axes.title.get_parse_math() is False
