"""Text that steers a terminal or turns the reading round is known and made visible."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from catalog.text import is_steady, visible
from catalog.values import Text

STEERING = {
    "escape": "\x1b[31mred",
    "bell": "C45\x07",
    "delete": "C45\x7f",
    "control sequence introducer of C1": "C45\x9b31m",
    "next line of C1": "C45\x85",
    "return": "C45\rC60",
    "new line": "C45\nC60",
    "line separator": "C45\u2028C60",
    "override": "C45\u202e06C",
    "embedding": "C45\u202b",
    "isolate": "C45\u2067",
}


@pytest.mark.parametrize("text", STEERING.values(), ids=STEERING)
def test_what_steers_is_refused_as_a_name(text):
    assert not is_steady(text)
    with pytest.raises(ValidationError, match="must be one line without control characters"):
        TypeAdapter(Text).validate_python(text)


@pytest.mark.parametrize(
    "text", ["Ø 20 h6", "42CrMo4", "مفتاح", "می\u200cخواهم", "כלי\u200f", "軸", "½″"]
)
def test_every_script_is_a_name(text):
    assert is_steady(text)
    assert visible(text) == text
    assert TypeAdapter(Text).validate_python(text) == text


@given(st.text())
def test_a_message_made_visible_steers_nothing(text):
    shown = visible(text)
    assert all(is_steady(line) for line in shown.split("\n"))
    assert shown.count("\n") == text.count("\n")
    assert {c for c in shown if unicodedata.category(c) == "Cc"} <= {"\n"}


def test_the_escape_is_shown():
    assert visible("a\x1b[2J\x9b\u202e\nb") == r"a\x1b[2J\x9b\u202e" + "\nb"
