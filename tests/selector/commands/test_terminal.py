import io
import sys

import pytest
import typer
from rich.console import Console

from catalog import CatalogError
from selector.commands.terminal import (
    BAD_INPUT,
    NAMED,
    console,
    print_figure,
    print_paragraph,
    print_rows,
    print_section,
    refusing_bad_input,
)
from selector.errors import OutOfRangeError, Problem, RequirementError

FAULT = Problem("size", "more than 0", "-3", "Check it.")


@pytest.mark.parametrize(
    ("error", "line"),
    [
        (RequirementError(FAULT), "size must be more than 0; got -3. Check it."),
        (OutOfRangeError(FAULT), "size must be more than 0; got -3. Check it."),
        (CatalogError(("c45.toml: name: must be text (got 3)",)), "c45.toml: name: must be"),
    ],
)
def test_bad_input_ends_with_its_lines_and_code_two(error, line, capsys):
    with pytest.raises(typer.Exit) as ended, refusing_bad_input():
        raise error
    assert ended.value.exit_code == BAD_INPUT == 2
    said = capsys.readouterr()
    assert said.err.startswith(line)
    assert said.out == ""


def test_what_a_message_echoes_steers_no_terminal(capsys):
    step = "Check \x1b[31mthis\u202e."
    with pytest.raises(typer.Exit), refusing_bad_input():
        raise RequirementError(Problem("part.na\x9bme", "a key we know", "1", step))
    assert capsys.readouterr().err == (
        "part.na\\x9bme must be a key we know; got 1. Check \\x1b[31mthis\\u202e.\n"
    )


def test_a_slip_of_our_own_is_not_hidden():
    with pytest.raises(ZeroDivisionError, match="division"), refusing_bad_input():
        _ = 1 / 0


def test_output_that_is_no_terminal_is_plain(monkeypatch):
    written = io.StringIO()
    monkeypatch.setattr(sys, "stdout", written)
    console().print("[bold]C45[/bold] 50 HRC")
    assert written.getvalue() == "C45 50 HRC\n"


ID = "817m40/prehard/local-torch.oil/oven-225c-60min-and-a-name-longer-than-the-line"


def lines(printed, *given, width=40):
    written = io.StringIO()
    printed(*given, Console(file=written, width=width))
    return written.getvalue().splitlines()


def test_a_paragraph_hangs_from_its_first_line():
    said = lines(print_paragraph, "soft " * 30)
    assert all(len(line) <= 40 for line in said)
    assert {len(line) - len(line.lstrip()) for line in said[1:]} == {5}
    assert said[0].startswith("   soft")


def test_what_does_not_fit_beside_a_name_goes_under_the_figure():
    said = lines(print_figure, "surface", "soft " * 30)
    assert said[0].startswith("   surface    soft")
    assert {len(line) - len(line.lstrip()) for line in said[1:]} == {NAMED}


def test_an_id_stays_whole_to_be_copied():
    said = lines(print_figure, "id", ID)
    assert any(ID in line for line in said)


@pytest.mark.parametrize("text", ["[bold]", "[/]", "C[45]"])
def test_brackets_are_only_brackets(text):
    assert lines(print_figure, "id", text) == [f"   id         {text}"]
    assert lines(print_paragraph, text) == [f"   {text}"]


def test_a_section_is_its_head_its_texts_and_a_blank_line():
    said = lines(print_section, "Cautions", ["one", "two"])
    assert said == ["Cautions", "   one", "   two", ""]


def test_a_section_of_nothing_is_not_printed():
    assert lines(print_section, "Cautions", []) == []


def test_rows_stand_in_columns_and_brackets_are_only_brackets():
    written = io.StringIO()
    out = Console(file=written, width=20, force_terminal=False)
    print_rows(("place", "hardness"), [("1 mm", "57 HRC [hard]"), ("10 mm", "")], out)
    assert written.getvalue().splitlines() == [
        "   place  hardness",
        "   1 mm   57 HRC [hard]",
        "   10 mm",
        "",
    ]
