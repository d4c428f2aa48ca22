import errno
import os

import pytest
from typer.testing import CliRunner

from selector.commands import cli
from tests.dog import TEXT

LOCAL = "42crmo4/annealed/local-torch.oil/oven-225c-60min"


@pytest.fixture
def part(tmp_path):
    place = tmp_path / "part.toml"
    place.write_text(TEXT, encoding="utf-8")
    return place


def run(*arguments):
    return CliRunner().invoke(cli, ["card", *(str(a) for a in arguments)])


@pytest.mark.parametrize(("suffix", "head"), [(".pdf", b"%PDF"), (".html", b"<!DOCTYPE html>")])
def test_a_card_is_written(part, tmp_path, suffix, head):
    out = tmp_path / f"card{suffix}"
    done = run(part, LOCAL, "--out", out, "--paper", "letter")
    assert done.exit_code == 0, done.output
    assert out.read_bytes().startswith(head)


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("no/such/option", "--out", "card.pdf"), "option must be"),
        ((LOCAL, "--out", "card.doc"), "--out must be a .pdf or .html file"),
        ((LOCAL, "--out", "/no/folder/card.pdf"), "--out must be a file that can be written"),
    ],
)
def test_bad_input_ends_with_its_rule(part, arguments, said):
    done = run(part, *arguments)
    assert done.exit_code == 2
    assert said in done.output


def test_a_full_disk_leaves_the_old_card(part, tmp_path, monkeypatch):
    out = tmp_path / "card.pdf"
    out.write_bytes(b"old")

    def full(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    done = run(part, LOCAL, "--out", out)
    assert done.exit_code == 2
    assert "No space left" in done.output
    assert out.read_bytes() == b"old"
