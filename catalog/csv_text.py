"""The lines of a CSV text, as a spreadsheet of any country writes it."""

import csv
import io

_SEPARATORS = ",;\t"


def csv_lines(text: str) -> list[tuple[int, list[str]]]:
    """Return the lines that hold something, each with its number and its cells.

    Parameters
    ----------
    text : str
        Comma, semicolon or tab between the cells: whichever the first line holds most of.

    Returns
    -------
    list of tuple of int and list of str
        Counted from 1 as an editor shows them, a cell of several lines by its last; blanks
        round a cell taken off. A quote that is not closed raises csv.Error.
    """
    head = text.partition("\n")[0]
    between = max(_SEPARATORS, key=head.count)
    reader = csv.reader(io.StringIO(text), delimiter=between, strict=True)
    lines = [(reader.line_num, [cell.strip() for cell in cells]) for cells in reader]
    return [(number, cells) for number, cells in lines if any(cells)]
