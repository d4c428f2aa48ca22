import io
import sys

import pytest
import typer

from catalog import CatalogError
from selector.commands.terminal import BAD_INPUT, console, refusing_bad_input
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
    told = capsys.readouterr()
    assert told.err.startswith(line)
    assert told.out == ""


def test_a_slip_of_our_own_is_not_hidden():
    with pytest.raises(ZeroDivisionError, match="division"), refusing_bad_input():
        _ = 1 / 0


def test_output_that_is_no_terminal_is_plain(monkeypatch):
    written = io.StringIO()
    monkeypatch.setattr(sys, "stdout", written)
    console().print("[bold]C45[/bold] 50 HRC")
    assert written.getvalue() == "C45 50 HRC\n"
