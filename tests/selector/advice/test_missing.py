import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.advice.missing import having, missing, piece_words, worths
from selector.advice.output import advice_out
from selector.advice.piece import pieces, without
from selector.advice.table import piece_table
from selector.errors import RequirementError
from tests.dog import asked, only

KNOWN = load_catalog()
# An alloy tool steel in water cracks: oil is worth something. A furnace is soon worked out.
NO_OIL = {
    "workshop.bath": [{"medium": "water"}],
    "workshop.heat": [{"source": "muffle-furnace"}],
}


def test_every_piece_that_is_missing_can_be_had_and_taken_away_again():
    whole = asked()
    for name in missing(whole.workshop, KNOWN):
        more = having(whole, name, KNOWN)
        assert name in {*pieces(more.workshop), *more.workshop.protect}
        if name in pieces(more.workshop):
            assert without(more, name).workshop == whole.workshop


def test_nothing_missing_is_there():
    shop = asked().workshop
    assert not set(missing(shop, KNOWN)) & {*pieces(shop)}


@pytest.mark.parametrize("name", ["oxy-propane", "magic"])
def test_what_it_has_or_nobody_knows_is_refused_with_what_could_be_had(name):
    with pytest.raises(RequirementError, match="kiln"):
        having(asked(), name, KNOWN)


# Such as help, such as do not, and one that is left out of every table.
TRIED = ("oil", "fast-oil", "kiln", "crayon", "tester", "subcontract", "vegetable-oil")


@pytest.fixture(scope="module")
def gains():
    advice = advise(asked(NO_OIL), only("100mncrw4"))
    assert set(TRIED) <= {*missing(advice.asked.workshop, KNOWN)}
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr("selector.advice.missing.missing", lambda *_: TRIED)
        return advice, worths(advice)


def test_a_piece_is_worth_what_comes_first_with_it(gains):
    advice, found = gains
    assert "oil" in {piece.piece for piece in found} <= {*TRIED} - {"vegetable-oil"}
    now = advice.options[0].judged.passing_all if advice.options else 0.0
    for piece in found:
        assert piece.passing_all == pytest.approx(now + piece.more_right, abs=1e-3)
        assert (piece.saves is None) == (not advice.options)
    rights = [piece.more_right for piece in found]
    assert rights == sorted(rights, reverse=True)


def test_the_value_of_a_piece_is_that_of_the_whole_advice_with_it(gains):
    _, found = gains
    oil = next(piece for piece in found if piece.piece == "oil")
    anew = advise(having(asked(NO_OIL), "oil", KNOWN), only("100mncrw4"))
    assert anew.options[0].id == oil.id
    assert anew.options[0].judged.passing_all == pytest.approx(oil.passing_all, abs=1e-4)


def test_pieces_stand_in_a_table(gains):
    advice, found = gains
    record = advice_out(advice).model_copy(update={"pieces": found})
    table = piece_table(record)
    assert table["piece"].tolist() == [piece.piece for piece in found]
    assert {"cost_eur", "saves_eur", "more_right_fraction"} <= set(table.columns)


def test_nothing_is_bought_where_lives_depend_on_it():
    assert worths(advise(asked({"safety_use": "brake"}), only("c45"))) == ()


def test_pieces_have_words():
    words = [piece_words(name, KNOWN) for name in missing(asked().workshop, KNOWN)]
    assert len(words) == len(set(words))
    assert "a pottery kiln" in words
    assert "a firm to send it to" in words
