"""A run that does not go as meant ends with its own exit code and no traceback."""

import errno
import io
import json
import os
import subprocess
import sys
from importlib import metadata
from pathlib import Path

import platformdirs
import pytest
import typer
from hypothesis import given
from hypothesis import strategies as st

from catalog import user_folder
from selector.commands import cli as commands
from selector.commands import ending
from selector.commands.ending import Output, OutputError, run
from selector.commands.exit_code import CLOSED, UNFORESEEN, UNWRITTEN

ROOT = Path(__file__).parents[3]


@pytest.fixture
def ended(monkeypatch, capsys, tmp_path):
    """Return exit code and both streams of a command; its log goes to a folder of the test."""
    monkeypatch.setattr(platformdirs, "user_state_path", lambda *_, **__: tmp_path / "state")

    def end(command, stdout=None):
        monkeypatch.setattr(sys, "stdout", sys.stdout if stdout is None else stdout)
        monkeypatch.setattr(sys, "stderr", sys.stderr)
        with pytest.raises(SystemExit) as left:
            run(command)
        monkeypatch.undo()
        monkeypatch.setattr(
            platformdirs, "user_state_path", lambda *_, **__: tmp_path / "state"
        )
        return (left.value.code, *capsys.readouterr())

    return end


def slip():
    name = "\x1b[31mred"
    raise ZeroDivisionError(name)


def test_a_fault_of_ours_leaves_its_traceback_in_a_file(ended, tmp_path):
    for _ in range(2):
        code, out, err = ended(slip)
        assert code == UNFORESEEN == 70
        assert out == ""
        first, second = err.splitlines()
        assert first.endswith(r"without an answer: ZeroDivisionError: \x1b[31mred")
        assert second.endswith(f"in {tmp_path / 'state' / ending.LOG}.")
    log = (tmp_path / "state" / ending.LOG).read_text(encoding="utf-8")
    assert log.count("Traceback (most recent call last)") == 2
    assert "in slip" in log
    assert "\x1b" not in log


def test_a_fault_is_said_where_no_file_can_be_written(ended, tmp_path):
    (tmp_path / "state").write_text("a file where the folder should be", encoding="utf-8")
    refuses_to_write_it_down(ended)


def test_a_fault_is_said_on_an_account_without_a_home(ended, monkeypatch):
    monkeypatch.setattr(user_folder, "state_folder", lambda: None)
    refuses_to_write_it_down(ended)


def refuses_to_write_it_down(ended):
    code, _, err = ended(slip)
    assert code == UNFORESEEN
    assert f"It arose at {__file__}:" in err
    assert "could not be written" in err
    assert "Traceback" not in err


@pytest.mark.parametrize(
    "fault", [EOFError("torn"), RecursionError("deep"), OSError(5, "worn")]
)
def test_no_fault_of_ours_ends_as_if_no_option_were_left(ended, fault):
    """The library of the command line takes an end of input for a wish to stop: exit code 1."""
    line = typer.Typer()

    @line.command()
    def broken():
        raise fault

    code, _, err = ended(lambda: line(args=[]))
    assert code == UNFORESEEN
    assert type(fault).__name__ in err


@pytest.mark.parametrize("code", [0, 1, 2])
def test_answers_keep_their_exit_codes(ended, code):
    assert ended(lambda: sys.exit(code))[0] == code
    assert ended(sys.exit)[0] == 0


class Broken(io.StringIO):
    """A stream that takes nothing, or only as long as it is not flushed."""

    def __init__(self, number, at):
        super().__init__()
        self.number, self.at = number, at

    def write(self, text):
        if self.at == "write":
            raise OSError(self.number, os.strerror(self.number))
        return super().write(text)

    def flush(self):
        raise OSError(self.number, os.strerror(self.number))


@pytest.mark.parametrize("at", ["write", "flush"])
@pytest.mark.parametrize(
    ("number", "code", "said"),
    [
        (errno.ENOSPC, UNWRITTEN, "The output cannot be written: No space left on device.\n"),
        (errno.EPIPE, CLOSED, ""),
    ],
)
@pytest.mark.parametrize("arguments", [["routes"], ["routes", "--json"], ["--help"]], ids=str)
def test_an_output_that_takes_no_more_ends_the_run(ended, at, number, code, said, arguments):
    stream = Broken(number, at)
    assert ended(lambda: commands(args=arguments), stream) == (code, "", said)
    with pytest.raises(OutputError, match=os.strerror(number)):
        Output(stream).flush()


def test_a_closed_output_is_said_before_anything_is_computed(monkeypatch, capsys):
    monkeypatch.setattr(sys, "stdout", None)
    with pytest.raises(SystemExit) as left:
        run(slip)
    assert left.value.code == UNWRITTEN
    assert "output is closed" in capsys.readouterr().err


def printed(*arguments, encoding="utf-8", **how):
    """Return a run as a shell would start it."""
    return subprocess.run(  # noqa: S603
        [sys.executable, "-m", "selector.commands", *arguments],
        env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": encoding},
        timeout=120,
        check=False,
        **how,
    )


def test_a_reader_who_has_gone_is_said_nothing():
    reader, writer = os.pipe()
    os.close(reader)
    done = printed("routes", stdout=writer, stderr=subprocess.PIPE)
    os.close(writer)
    assert (done.returncode, done.stderr) == (CLOSED, b"")


def test_a_plain_stream_gets_plain_letters_and_data_unharmed():
    page = printed("steels", "silver", encoding="ascii", capture_output=True)
    assert (page.returncode, page.stderr) == (0, b"")
    assert page.stdout.isascii()
    assert b"115CrV3" in page.stdout
    plain, rich = (
        printed("routes", "--json", encoding=encoding, capture_output=True).stdout
        for encoding in ("ascii", "utf-8")
    )
    assert plain.isascii()
    assert not rich.isascii()
    assert json.loads(plain) == json.loads(rich)


def test_letters_a_stream_cannot_hold_have_plain_ones():
    shown = "Ø 20 – 225 °C ± 5, ½″ × 3²; é, 軸".encode("ascii", "plain")
    assert shown == b"dia  20 - 225 deg C +/- 5, 12? x 32; e, ?"


@given(st.text(st.characters(codec=None)), st.sampled_from(["ascii", "cp1252", "utf-8"]))
def test_any_text_can_be_written(text, encoding):
    written = text.encode(encoding, "plain").decode(encoding)
    kept = "".join(letter for letter in text if letter.isascii())
    assert len(written) >= len(kept)
    assert written == text or not text.isascii()


def test_the_version_is_said_and_is_that_of_the_package(monkeypatch, cli):
    done = cli.invoke(commands, ["--version"])
    assert (done.exit_code, done.stdout) == (
        0,
        f"temperwright {metadata.version('temperwright')}\n",
    )

    def missing(name):
        raise metadata.PackageNotFoundError(name)

    monkeypatch.setattr(metadata, "version", missing)
    assert cli.invoke(commands, ["--version"]).stdout == "temperwright, not installed\n"
