import re

from selector.requirement.vocabulary import one_of, spelled


def matches(name, text):
    return re.fullmatch(one_of([name]), text) is not None


def test_a_plain_name_is_read_with_a_hyphen_in_one_word_and_in_the_plural():
    for text in ("band saw", "band-saw", "bandsaw", "bandsaws"):
        assert matches("band saw", text)
    assert matches("hay knife", "hay knives")
    assert matches("dolly", "dollies")
    assert matches("latch", "latches")
    assert not matches("band saw", "band of a saw")


def test_braces_give_a_choice_and_dots_stand_for_any_words():
    assert spelled("{a,b,} c") == ["a c", "b c", "c"]
    assert matches("press ... tool", "press tool")
    assert matches("press ... tool", "press-brake top tools")
    assert not matches("press ... tool", "press, with a tool")
