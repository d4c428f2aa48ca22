import pytest

from selector.errors import SelectorError
from selector.metallurgy.fitting.table import rows_of

HEADING = "hrc,steel,mo_wt"
ROW = "50.5,X,0.2"


def rows(*lines):
    return rows_of(lines, ("steel",), {"hrc": (0.0, 70.0)}, {"mo_wt": (0.0, 30.0)})


def test_rows_are_given_as_text_by_column():
    assert rows(HEADING, ROW) == [{"hrc": "50.5", "steel": "X", "mo_wt": "0.2"}]
    assert rows(HEADING, "1,X,", "2,Z,3")[0]["mo_wt"] == ""
    assert rows("hrc,steel", "50,X") == [{"hrc": "50", "steel": "X"}]
    assert rows(HEADING) == []


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        ([], r"line 1 must be a heading with steel, hrc as well; got nothing"),
        (["steel,mo_wt"], r"line 1 must be a heading with hrc as well; got steel, mo_wt"),
        ([HEADING, "hard,X,"], r"line 2, hrc .*between 0 and 70; got 'hard'"),
        ([HEADING, "nan,X,"], r"line 2, hrc .* got 'nan'"),
        ([HEADING, ROW, "71,X,"], r"line 3, hrc .* got '71'"),
        ([HEADING, ",X,"], r"line 2, hrc .* got ''"),
        ([HEADING, "50,X,ten"], r"line 2, mo_wt .*between 0 and 30; got 'ten'"),
        ([HEADING, "50, ,"], r"line 2, steel must be given; got ' '"),
        ([HEADING, "50"], r"line 2, steel must be given; got ''"),
        ([HEADING, ROW + ",1"], r"line 2 must be as long as the heading; got more cells"),
        ([HEADING, '"50"x'], r"line 2 must be a row of the table; got ',' expected after"),
    ],
    ids=[
        "empty", "column", "text", "nan", "range", "absent", "optional", "blank", "short",
        "long", "quote",
    ],
)  # fmt: skip
def test_a_fault_is_said_with_its_place_and_value(lines, said):
    with pytest.raises(SelectorError, match=said):
        rows(*lines)


def test_no_more_than_ten_faults_are_said():
    with pytest.raises(SelectorError, match=r"line 2, hrc .* got 'x'") as caught:
        rows(HEADING, *["x,X,"] * 40)
    assert len(caught.value.problems) == 10
