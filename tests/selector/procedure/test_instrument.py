"""The tests of a workshop: what each shows of a piece that is right, and what stops."""

import numpy as np
import pytest

from selector.procedure.checking import hardness
from selector.procedure.instrument import (
    FILE_EDGES_HRC,
    FILED,
    GLASS,
    HARDNESS_FILES,
    NEW_FILE,
    TESTER,
    Window,
    asked_window,
    file_words,
    go_window,
    instrument_for,
    instruments,
    quenched_go,
    quenched_hrc,
    right_words,
    words_of,
)
from selector.procedure.quenching import tried
from tests.procedure import doing


@pytest.mark.parametrize(
    ("test", "asked", "go", "says"),
    [
        (TESTER, Window(48, 59), Window(48, 59), "it reads 48 to 59 HRC"),
        (TESTER, Window(low=48), Window(low=48), "it reads 48 HRC or more"),
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


@pytest.mark.parametrize(
    ("has", "hrc", "words"),
    [
        (["file"], 62.0, "it skates"),
        (["hardness-files"], 57.0, "the 55 file slides, the 60 file bites"),
        (["tester"], 57.0, "it reads 55 to 59 HRC"),
        (["glass"], 62.0, "a corner scratches it"),
        (["hardness-files"], 30.0, "the 40 file bites"),
        (["glass"], 40.0, "it cuts with effort"),
    ],
)
def test_where_nothing_is_asked_the_forecast_is_right(has, hrc, words):
    assert right_words(instrument_for(tuple(has), hrc), Window(), hrc) == words


def test_a_file_says_less_the_softer_the_steel():
    said = [file_words(hrc) for hrc in (64, 57, 50, 42, 25, 5)]
    assert len(set(said)) == len(said)


def test_the_words_of_a_band_are_those_of_any_hardness_in_it():
    middles = (25, 43, 51, 57, 62)
    assert [file_words(hrc) for hrc in middles] == [f"it {words}" for words in FILED]


@pytest.mark.parametrize("has", [["file"], ["tester"], ["hardness-files"], ["glass"]])
def test_before_the_temper_whatever_comes_out_hard_may_go_on(has):
    do = doing("42crmo4", "local-torch", "oil", {"workshop.check": has})
    (test,), fresh = instruments(do.shop.check), quenched_hrc(do)
    go = quenched_go(do, test)
    hard = do.prediction.surface_hrc >= asked_window(do).low
    assert np.mean(fresh[hard] >= go.low) >= 0.94
    assert tried(do).check == right_words(test, go, do.quenched_hrc)
    if test is NEW_FILE:
        assert go.low in FILE_EDGES_HRC


@pytest.mark.parametrize("has", [["file"], ["tester"], ["hardness-files"]])
def test_when_all_is_done_the_window_that_is_asked_decides(has):
    do = doing("42crmo4", "local-torch", "oil", {"workshop.check": has})
    (test,) = instruments(do.shop.check)
    says = words_of(test, go_window(test, asked_window(do)))[0]
    assert hardness(do).check.startswith(says)


def test_a_workshop_without_tests_has_a_file():
    assert instruments(()) == (NEW_FILE,)
    assert instruments(("file", "tester")) == (TESTER, NEW_FILE)
    assert instruments(("coupon",)) == (NEW_FILE,)
