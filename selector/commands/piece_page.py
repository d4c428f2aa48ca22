"""What the missing pieces of a workshop would buy, on the terminal."""

from typing import TYPE_CHECKING

from rich.markup import escape

from selector.advice.record import AdviceOut
from selector.commands.terminal import print_paragraph, print_rows
from selector.wording import in_100

if TYPE_CHECKING:
    from rich.console import Console


def print_pieces(advice: AdviceOut, out: "Console") -> None:
    """Print a table of the pieces that gain something, and what comes first with each.

    Parameters
    ----------
    advice : AdviceOut
        The advice as plain data.
    out : Console
        Where to.
    """
    out.print(f"[bold]{escape(advice.part)}[/bold]", soft_wrap=True)
    out.print(advice.headline, markup=False)
    out.print()
    if not advice.pieces:
        out.print("No piece that this workshop has not got would make it better or cheaper.")
        return
    heads = ("with", "comes out right", "more in 100", "a good part", "saves")
    print_rows(
        heads,
        [
            (
                piece.words,
                in_100(piece.passing_all),
                f"{100 * piece.more_right:+.0f}",
                f"{piece.cost:.0f} {piece.currency}",
                "" if piece.saves is None else f"{piece.saves:.0f} {piece.currency}",
            )
            for piece in advice.pieces
        ],
        out,
    )
    for piece in advice.pieces:
        print_paragraph(f"With {piece.words}: {piece.first}.", out)
