import io

import pytest
from rich.console import Console

from selector.advice.output import advice_out
from selector.commands.firm_page import firm_lines, print_firm
from selector.commands.full_page import print_whole


@pytest.fixture(scope="module")
def record(advice):
    return advice_out(advice, firmly=True)


def printed(answer, page=print_firm):
    written = io.StringIO()
    page(answer, Console(file=written, width=120))
    return written.getvalue()


def test_leading_options_stand_with_their_shares_and_regrets(record):
    text = " ".join(printed(record).split())
    assert record.firm.sentence in text
    for row in record.firm.options[:3]:
        assert f"{row.place}. {record.options[row.place - 1].spoken}" in text
    assert "in three" in text


def test_each_weight_price_and_measurement_has_its_line(record):
    lines = firm_lines(record)
    bounds = [
        b for turn in record.firm.turns for b in (turn.below, turn.above) if b is not None
    ]
    assert sum("weighs" in line for line in lines) == len(bounds)
    assert sum("instead of" in line for line in lines) == sum(
        turn is not None for turn in (record.firm.dearer, record.firm.second_cheaper)
    )
    assert sum("between the first and its rival" in line for line in lines) == len(
        record.firm.measures
    )


def test_the_whole_advice_holds_the_same_lines(record):
    whole = " ".join(printed(record, print_whole).split())
    assert all(" ".join(line.split()) in whole for line in firm_lines(record))


def test_unasked_nothing_is_said(advice):
    plain = advice_out(advice)
    assert firm_lines(plain) == []
    assert "Nothing is ranked" in printed(plain)
