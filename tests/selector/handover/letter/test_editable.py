from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from selector.advice.output import advice_out
from selector.errors import RequirementError
from selector.handover.letter.editable import (
    changed,
    held_by,
    read_text,
    strange_figures,
    text_of,
    written_for,
)
from selector.handover.letter.figures import figures_of, marked
from selector.handover.letter.letter import HEADS_OF_WAYS, composed


@pytest.fixture(scope="module")
def letter(advice):
    out = advice_out(advice)
    return composed(advice.asked, out, out.options[0], "full", date(2025, 1, 1))


def test_a_text_reads_back_as_the_letter_it_was(letter):
    assert changed(letter, text_of(letter)) == letter
    assert strange_figures(letter, letter) == ()
    assert written_for(text_of(letter)) == letter.option


def test_a_figure_that_the_advice_no_longer_holds_is_named_and_marked(letter):
    text = text_of(letter)
    price = next(row for row in letter.table.rows if row.strong).cells[0]
    assert price in text
    other = changed(letter, text.replace(price, f"7{price}"))
    said = strange_figures(other, letter)
    assert said == (f"What the difference buys: 7{price}",)
    section = next(s for s in other.sections if s.head == "What the difference buys")
    runs = marked(section.paragraphs[0], held_by(letter, section))
    assert [run.text for run in runs if run.marked] == [f"7{price}"]
    assert "".join(run.text for run in runs) == section.paragraphs[0]


def test_words_may_change_sections_go_and_come(letter):
    text = text_of(letter).replace("Dear customer,", "Dear Ann,")
    text = text.replace("[How we check it]", "[How it is looked at]")
    text += "\n[Our thanks]\nWith thanks for the\nbar you left.\n"
    other = changed(letter, text)
    assert other.greeting == "Dear Ann,"
    assert other.sections[-1].paragraphs == ("With thanks for the bar you left.",)
    assert [s.key for s in other.sections][-1] == "own"
    assert strange_figures(other, letter) == ()


def test_without_the_head_of_the_ways_there_is_no_table(letter):
    head = HEADS_OF_WAYS[len(letter.table.heads) - 1]
    text = text_of(letter).replace(f"[{head}]", "")
    assert changed(letter, text).table is None


@pytest.mark.parametrize(
    ("text", "strange"),
    [
        ("54 HRC on EN19 (42CrMo4), 1.5 mm", []),
        ("from 50 HRC to 57 HRC", []),
        ("55 HRC", ["55 HRC"]),
        ("54 mm", ["54 mm"]),
        ("54", []),
        ("99", ["99"]),
        ("1.7225", ["1.7225"]),
        ("once in a while, about one time in four", ["one time in four"]),
        ("in 2 days", []),
        ("in 2,5 days", ["2,5 days"]),
    ],
)
def test_what_is_strange(text, strange):
    held = figures_of(["50 to 57 HRC", "54 HRC", "1.5 mm", "2 days"])
    assert [run.text for run in marked(text, held) if run.marked] == strange


@given(st.text(max_size=80))
def test_a_text_holds_its_own_figures_and_marks_lose_nothing(text):
    assert not any(run.marked for run in marked(text, figures_of([text])))
    assert "".join(run.text for run in marked(text, frozenset())) == text


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"\xff\xfe\x00", "not UTF-8 text"),
        (b"no head at all", "heads in square brackets"),
        (b"x" * 200_000, "under 100 kB"),
    ],
)
def test_a_file_that_is_no_letter_is_refused(content, said, tmp_path):
    path = tmp_path / "a.txt"
    path.write_bytes(content)
    with pytest.raises(RequirementError, match=f"--from.*{said}"):
        read_text(path)
    with pytest.raises(RequirementError, match=r"--from.*No such file"):
        read_text(tmp_path / "none.txt")


def test_what_would_steer_a_terminal_is_left_out(letter):
    other = changed(letter, "[Greeting]\nDear \x1b[31mAnn\u202e,\n")
    assert other.greeting == "Dear [31mAnn,"
