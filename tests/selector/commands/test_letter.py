import os
import re

import pytest

from selector.commands import cli as commands
from tests.dog import TEXT

WORKSHOP = 'name = "Invented Works"\naddress = ["1 Lane"]\n'


pytestmark = pytest.mark.usefixtures("few_steels")


@pytest.fixture
def run(cli, tmp_path):
    def of(*args: str, text: str = TEXT, workshop: str | None = None):
        (tmp_path / "part.toml").write_text(text, encoding="utf-8")
        if workshop is not None:
            (tmp_path / "workshop.toml").write_text(workshop, encoding="utf-8")
        args = [a.replace("HERE", str(tmp_path)) for a in args]
        return cli.invoke(commands, ["letter", str(tmp_path / "part.toml"), *args])

    return of


def test_a_letter_is_written_changed_and_set_again(run, tmp_path):
    first = run("--out", "HERE/a.html", "--text", "HERE/a.txt", workshop=WORKSHOP)
    assert first.exit_code == 0, first.output
    page = (tmp_path / "a.html").read_text(encoding="utf-8")
    assert "Invented Works" in page
    text = (tmp_path / "a.txt").read_text(encoding="utf-8")
    (tmp_path / "a.txt").write_text(text.replace("Dear customer", "Dear 99 EUR"), "utf-8")
    (tmp_path / "a.txt").write_text(re.sub(r"(\d+) EUR", "7777 EUR", text, count=1), "utf-8")
    again = run("--out", "HERE/b.pdf", "--from", "HERE/a.txt")
    assert again.exit_code == 0, again.output
    assert "Not a figure of the advice" in again.stderr
    assert (tmp_path / "b.pdf").read_bytes().startswith(b"%PDF")


def test_it_wants_a_file_of_a_kind_it_can_write(run):
    for args, said in (((), "--text"), (("--out", "HERE/a.odt"), ".docx")):
        shown = run(*args)
        assert shown.exit_code == 2
        assert said in shown.stderr


def test_what_cannot_be_written_or_read_is_said_before_any_advice(run, tmp_path):
    (tmp_path / "a.pdf").mkdir()
    assert run("--out", "HERE/a.pdf").exit_code == 2
    assert run("--out", "HERE/none/a.pdf").exit_code == 2
    assert run("--out", "HERE/b.pdf", "--from", "HERE/none.txt").exit_code == 2
    (tmp_path / "logo.png").write_bytes(b"no picture at all")
    logo = run("--out", "HERE/b.pdf", workshop=f'{WORKSHOP}logo = "logo.png"\n')
    assert logo.exit_code == 2
    assert "picture" in logo.stderr
    assert not (tmp_path / "b.pdf").exists()


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_that_takes_nothing_leaves_the_old_letter(run, tmp_path):
    folder = tmp_path / "shut"
    folder.mkdir()
    (folder / "a.pdf").write_bytes(b"old")
    folder.chmod(0o500)
    shown = run("--out", "HERE/shut/a.pdf")
    folder.chmod(0o700)
    assert shown.exit_code == 2
    assert (folder / "a.pdf").read_bytes() == b"old"


def test_where_nothing_is_left_there_is_no_letter(run, tmp_path):
    hard = TEXT.replace('min = "50 HRC", max = "56 HRC"', 'min = "67 HRC"')
    shown = run("--out", "HERE/a.pdf", text=hard)
    assert shown.exit_code == 1
    assert "Nothing in this workshop" in shown.stdout
    assert not (tmp_path / "a.pdf").exists()


def test_a_part_that_lives_depend_on_is_passed_on(run, tmp_path):
    shown = run("--out", "HERE/a.html", text=TEXT.replace("could hurt", "lifting"))
    assert shown.exit_code == 0
    assert "qualified" in (tmp_path / "a.html").read_text(encoding="utf-8")


def test_an_option_is_named(run, tmp_path):
    option = "c45/cold-drawn/through-torch.warm-water/oven-225c-60min"
    shown = run(option, "--out", "HERE/a.html", "--tone", "brief")
    assert shown.exit_code == 0, shown.output
    assert option in (tmp_path / "a.html").read_text(encoding="utf-8")
    assert run("c45/none/none/none", "--out", "HERE/a.pdf").exit_code == 2
