import pytest

from ui import labels
from ui.piece import e
from ui.words import first_sentence


def test_formatting_in_a_name_is_taken_literally():
    assert labels.plain("50$ *pin* :red[x]") == r"50\$ \*pin\* \:red\[x\]"


def test_markup_in_a_name_is_taken_literally():
    assert e("<b>'x'</b>") == "&lt;b&gt;&#x27;x&#x27;&lt;/b&gt;"
    assert "*" not in e("*a* `b` $c$")


def test_units_keep_their_capitals():
    assert labels.upper("colour misread by 25 °C") == "Colour misread by 25 °C"
    assert labels.lower("Warm water (60 °C)") == "warm water (60 °C)"


def test_the_first_sentence_keeps_its_figures():
    text = "Bar 1.7225, temper at 225 °C; 54 HRC. Comes out right 98 times in 100."
    assert first_sentence(text) == (
        "Bar 1.7225, temper at 225 °C; 54 HRC.", "Comes out right 98 times in 100."
    )  # fmt: skip
    assert first_sentence("One only") == ("One only", "")


def test_a_question_is_named_by_its_title():
    said = labels.titles("Ask for its paper (workshop.stock.analysis); see a.b and 0.5.")
    assert said == "Ask for its paper (“Analysis”); see a.b and 0.5."


def test_a_figure_stays_on_one_line_with_its_unit():
    assert labels.unbroken("temper at 225 °C in 2 steps") == "temper at 225\u00a0°C in 2 steps"


@pytest.mark.parametrize(
    ("given", "shown"),
    [("250 degC", "250 °C"), ("-40 degF", "-40 °F"), ("degC", "degC"), ("250 °C", "250 °C")],
)
def test_a_degree_has_its_sign(given, shown):
    assert labels.degrees(given) == shown
