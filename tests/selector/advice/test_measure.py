import pytest

from selector.advice.measure import LEAST, measures


@pytest.mark.parametrize(
    ("dimension", "name"),
    [
        ("eye_bias", "eye"),
        ("temper_bias", "oven"),
        ("bath_bias", "bath"),
        ("load", "load"),
        ("delay", "heat to heat"),
    ],
)
def test_an_uncertainty_of_the_workshop_is_named_in_the_words_of_the_user(
    advice, dimension, name
):
    gap = advice.job.shared()[dimension]
    found = measures(advice, gap, advice.options[:2])
    assert found[0].name == name
    assert found[0].explains > 0.9
    assert (found[0].step is None) == (name == "heat to heat")


def test_the_analysis_of_a_bar_is_one_thing_to_find_out(advice):
    first = advice.options[0]
    of_steel = advice.job.of_steel(first.treatment.steel.slug)
    found = measures(advice, of_steel["C"] + of_steel["Mn"], (first,))
    assert found[0].name == "analysis"
    assert found[0].explains > 0.9


def test_what_explains_next_to_nothing_is_left_out(advice):
    gap = advice.job.shared()["price_level"]
    found = measures(advice, gap, advice.options[:2])
    assert [find.name for find in found] == ["price"]
    assert all(find.explains >= LEAST for find in found)
