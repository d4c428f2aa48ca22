import re
from types import SimpleNamespace

import pytest

from ui import duel, figures, picture, torch_view, work
from ui.bands import Span, band


def told(html):
    return re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", html))


@pytest.mark.parametrize(("days", "text"), [(0.5, "½"), (2.0, "2"), (2.5, "2½"), (13, "13")])
def test_days_are_said_in_halves(days, text):
    assert figures.days_words(days) == text


def test_the_four_figures_are_the_first_options(advice):
    first = advice.options[0]
    text = told(figures.four(first, advice.zones, 160.0))
    assert f"{first.hardness.surface.p50:.0f} HRC" in text
    assert f"{first.cost.spread.p50:.0f} EUR" in text
    assert "your limit 160" in text
    assert figures.asked_window(advice.zones) == (50.0, 56.0)


def test_the_list_holds_every_option_once_by_route(advice):
    html = figures.listing(advice, None)
    assert html.count("<tr><td class='c-place'>") == len(advice.options)
    routes = {option.route_name for option in advice.options}
    assert html.count("<h3") == len(routes)


def test_the_cards_tell_cost_chance_days_and_why_not_first(advice):
    for way in advice.alternatives:
        text = told(figures.card_of(way, None))
        assert f"{way.cost.p50:.0f}" in text
        assert "Why not first" in text
    assert "First" in told(figures.card_of_first(advice.options[0], advice.why_first))


def test_what_kills_stands_first_and_in_its_colour(advice):
    html = figures.look_out(advice.cautions)
    assert html.count("<li") == len(advice.cautions)
    kills = [c for c in advice.cautions if c.harm == "kills"]
    assert html.count("tw-harm") == len(kills) > 0
    assert work.dangers(advice.cautions, advice.options[0]).count("<li>") > 0


def test_each_step_of_the_work_has_its_figures(advice):
    for step in advice.options[0].procedure:
        text = told(work.beneath(step))
        if step.temperature_c is not None:
            assert f"{step.temperature_c:.0f}" in text


def test_a_band_says_what_it_shows():
    svg = band(700, 950, [Span(820, 860, "serves", "840")], {"magnet": 770}, "Heat <840>")
    assert "aria-label='Heat &lt;840&gt;'" in svg
    assert "magnet" in svg


def test_a_window_is_said_with_either_end_open(advice):
    zone = advice.zones[0]
    assert picture.window(zone) == "50 to 56 HRC"
    assert picture.window(zone.model_copy(update={"high_hrc": None})) == "50 HRC or more"
    low = zone.model_copy(update={"low_hrc": None, "floor_hrc": None})
    assert picture.window(low) == "at most 56 HRC"


def test_the_disc_says_the_word_again():
    assert set(torch_view._DISCS) == {"yes", "not_needed", "yes_if", "coupon_first", "no"}


def test_lengths_have_their_range(advice):
    moved = advice.options[0].movement_mm.model_copy(
        update={"p05": 0.004, "p50": 0.02, "p95": 0.05}
    )
    assert "0.02 mm <span class='tw-ends'>under 0.01 to 0.05 mm" in duel._moved(moved)
    still = moved.model_copy(update={"p05": 0.0, "p50": 0.0, "p95": 0.0})
    assert duel._moved(still) == "not at all"


def test_the_figures_of_a_strip_are_in_the_scale_of_the_large_one(advice):
    first = advice.options[0]
    soft = first.hardness.surface.model_copy(update={"p05": -5.0, "p50": 8.0, "p95": 16.0})
    bought = first.model_copy(
        update={"hardness": first.hardness.model_copy(update={"surface": soft})}
    )
    for option, count in ((first, 2), (bought, 1)):
        html = figures.four(option, (), None)
        assert html.count("class='tw-ticks'") == count
    assert "HB" in figures.four(bought, (), None)


def test_the_list_says_its_own_currency_where_it_has_no_head(advice):
    html = figures.listing(advice, None)
    assert html.count("data-unit='EUR'") == len(advice.options)


def test_where_no_change_is_named_it_is_said_why():
    for verdict in ("yes", "not_needed"):
        assert torch_view.changed(verdict, None) == "None needed."
    assert torch_view.changed("no", None).startswith("No single change")


def test_where_it_is_hard_nowhere_that_is_said():
    assert torch_view.hard_stretch(None) == ""
    nowhere = SimpleNamespace(hard_from_mm=30.0, hard_to_mm=30.0)
    assert torch_view.hard_stretch(nowhere) == "Nowhere as hard as asked."
