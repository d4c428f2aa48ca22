import io

from rich.console import Console

from selector.advice.output import advice_out
from selector.advice.record import PieceOut
from selector.commands.piece_page import print_pieces

KILN = PieceOut(
    piece="kiln", words="a pottery kiln", id="a/b/c/d", first="C45: as bought; 180 HB",
    cost=80.0, currency="EUR", passing_all=0.93, saves=12.0, more_right=0.21,
)  # fmt: skip


def printed(record):
    written = io.StringIO()
    print_pieces(record, Console(file=written, width=120))
    return written.getvalue()


def test_each_piece_has_its_row_and_what_comes_first_with_it(advice):
    text = printed(advice_out(advice).model_copy(update={"pieces": (KILN,)}))
    lines = (line.split() for line in text.splitlines())
    row = next(line for line in lines if line[:3] == ["a", "pottery", "kiln"])
    assert row[3:] == ["93", "in", "100", "+21", "80", "EUR", "12", "EUR"]
    assert "With a pottery kiln: C45: as bought; 180 HB." in text


def test_no_piece_that_helps_is_said(advice):
    assert "No piece that this workshop has not got" in printed(advice_out(advice))
