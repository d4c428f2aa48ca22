import math
from pathlib import Path

from selector.handover.harmless import harmless


def test_what_steers_is_written_as_its_escape():
    assert harmless({"a\x07": ("\x1b[31m", Path("x"), [1, 2.5, None, True])}) == {
        "a\\x07": ["\\x1b[31m", "x", [1, 2.5, None, True]]
    }


def test_a_number_that_is_none_is_left_out():
    assert harmless([math.nan, math.inf, 3.0]) == [None, None, 3.0]


def test_half_a_letter_is_no_letter():
    assert harmless("a\ud800b") == "a?b"
