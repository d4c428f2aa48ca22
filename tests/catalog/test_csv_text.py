import csv

import pytest

from catalog.csv_text import csv_lines


@pytest.mark.parametrize("between", [",", ";", "\t"])
def test_cells_are_parted_by_what_the_first_line_holds_most_of(between):
    text = f"steel{between}size{between}note\nEN8{between} 30 mm {between}1,5; 2"
    assert csv_lines(text)[0] == (1, ["steel", "size", "note"])
    assert csv_lines(text)[1][1][:2] == ["EN8", "30 mm"]


def test_a_line_keeps_the_number_that_an_editor_shows():
    lines = csv_lines('a,b\r\n\r\n1,"two\r\nlines"\r\n,\r\n3,4\r\n')
    assert [number for number, _ in lines] == [1, 4, 6]


def test_nothing_has_no_lines():
    assert csv_lines("") == csv_lines(" \n,,\n") == []


def test_a_quote_that_is_not_closed_is_said():
    with pytest.raises(csv.Error):
        csv_lines('a,b\n"1,2\n')
