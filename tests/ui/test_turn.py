import pytest

from selector.versus.record import SwapOut
from ui.turn import turned, unturned


def swap(axis, now, at, ahead="first", by="cost", unit="pieces"):
    return SwapOut(
        axis=axis, by=by, unit=unit, now=now, at=at, low=1, high=500, ahead_now=ahead, text=""
    )


@pytest.mark.parametrize(
    ("place", "text"),
    [
        (swap("quantity", 1, 8), "It is the cheaper from 8 pieces on."),
        (swap("quantity", 10, 4), "It is the cheaper below 4 pieces."),
        (swap("quantity", 1, 8, "second"), "The first is the cheaper from 8 pieces on."),
        (
            swap("hourly rate", 38, 50, by="score", unit="EUR/h"),
            "It comes out ahead once your hour costs more than 50 EUR (now 38).",
        ),
        (
            swap("crack rate", 0.008, 0.27, unit="of the first"),
            (
                "It is the cheaper once the first cracks more often than 27 in 100 "
                "(now 0.8 in 100)."
            ),
        ),
        (
            swap("failure cost", None, 82400, "second", unit="EUR"),
            "The first is the cheaper once a failure in use costs more than 82400 EUR.",
        ),
        (
            swap("bar price", 0.8, 1.3),
            (
                "It is the cheaper once its bar costs more than 1.3 times that of the first "
                "(now 0.8)."
            ),
        ),
    ],
)
def test_who_takes_the_lead_and_where(place, text):
    assert turned([place], "the first", "it", "EUR") == [text]


def test_a_place_where_it_is_cheaper_and_ahead_is_said_once():
    both = [swap("quantity", 1, 8), swap("quantity", 1, 8, by="score")]
    assert turned(both, "the first", "it", "EUR") == [
        "It is the cheaper and comes out ahead from 8 pieces on."
    ]
    apart = [both[0], swap("quantity", 1, 4, by="score"), swap("quantity", 1, None)]
    assert turned(apart, "the first", "it", "EUR") == [
        "It is the cheaper from 8 pieces on.", "It comes out ahead from 4 pieces on.",
    ]  # fmt: skip


def test_what_never_turns_is_said():
    never = swap("quantity", 1, None), swap("bar price", 1, None), swap("hourly rate", 1, 2)
    said = (
        "Which is the cheaper does not hang on how many are made, nor on the price of the bars."
    )
    assert unturned(never) == said
    assert unturned([]) == ""
