import pytest

from selector.procedure.quenching import file_words
from selector.trial.instrument import GLASS, HARDNESS_FILES, NEW_FILE, TESTER, instruments
from selector.trial.reading import FILED, Window, go_window, words_of


@pytest.mark.parametrize(
    ("test", "asked", "go", "says"),
    [
        (TESTER, Window(48, 59), Window(48, 59), "48 to 59 HRC"),
        (TESTER, Window(low=48), Window(low=48), "48 HRC or more"),
        (NEW_FILE, Window(48, 59), Window(48, 60), "it bites a little or just marks"),
        (NEW_FILE, Window(low=58), Window(low=60), "it skates"),
        (
            HARDNESS_FILES,
            Window(50, 56),
            Window(50, 55),
            "the 50 file slides, the 55 file bites",
        ),
        (GLASS, Window(low=50), Window(low=55), "a corner scratches it"),
        (NEW_FILE, Window(high=30), Window(high=38), "it cuts freely"),
    ],
)
def test_what_means_go(test, asked, go, says):
    assert go_window(test, asked) == go
    assert words_of(test, go)[0] == says


def test_a_window_between_two_edges_takes_the_nearest_band():
    assert go_window(GLASS, Window(40, 42)).high == 55.0


def test_a_file_that_stops_says_why():
    assert words_of(NEW_FILE, Window(48, 60))[1] == (
        "it cuts with effort, or softer: too soft; it skates: too hard"
    )


def test_short_words_of_a_file_stand_for_the_long_ones():
    middles = (25, 43, 51, 57, 62)
    for words, hrc in zip(FILED, middles, strict=True):
        assert words.split()[-1] in file_words(hrc) or words.split()[0] in file_words(hrc)


def test_a_workshop_without_tests_has_a_file():
    assert instruments(()) == (NEW_FILE,)
    assert instruments(("file", "tester")) == (TESTER, NEW_FILE)
    assert instruments(("coupon",)) == (NEW_FILE,)
