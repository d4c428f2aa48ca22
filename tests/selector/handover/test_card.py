"""The bench card holds what the record of its option holds, and lets a stranger do the job."""

import re
from datetime import date
from functools import cache
from io import BytesIO

import pytest
from pypdf import PdfReader

from selector.advice.output import advice_out
from selector.handover.card import card, template_of
from selector.handover.chosen import chosen
from selector.handover.said_once import said_by_steps
from selector.handover.sheet import sheet
from selector.handover.step_figure import figure_of
from selector.record import StepOut
from selector.trial.plan import plan
from selector.trial.words import SURE, card_lines
from selector.wording import right_words, shown, shown_range, shown_time
from tests.dog import asked, only
from tests.once import advised
from tests.pdf_text import pages_of
from tests.procedure import KILN

TODAY = date(2026, 11, 29)
LOCAL = "42crmo4/prehard/local-torch.oil/oven-225c-60min"
STEELS = ("42crmo4", "s235")
# Least size of what is done, and of how it is checked. [pt]
DONE_PT, CHECKED_PT = 9.49, 8.49


@cache
def made(paper="a4", suffix=".pdf", name=LOCAL):
    """Return the card of one option of the dog, and what it was made of."""
    found = chosen(asked(), only(*STEELS), name)
    data = card(found, paper, TODAY, "0.0")
    return found, data, sheet(template_of(found), data, suffix, paper)


def text_of(content: bytes) -> str:
    """Return the text of a PDF, its blanks made single."""
    return " ".join(" ".join(pages_of(content)).split())


def bare(text: str) -> str:
    """Return a text without blanks, as a line may break anywhere."""
    return re.sub(r"[\s\u200b]+", "", text)


def test_a_card_is_read_back_as_another_reader_does():
    content = made()[2].content
    there = "".join(page.extract_text() for page in PdfReader(BytesIO(content)).pages)
    assert bare(text_of(content)) == bare(there)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_every_word_and_figure_of_the_record_is_on_the_card(paper):
    found, _, file = made(paper)
    text, record = bare(text_of(file.content)), found.record
    assert bare(shown(record.hardness.surface.p50)) in text
    assert bare(right_words(record.passing_all, None)) in text
    assert record.id in text
    for step in record.procedure:
        for said in (step.action, step.means, step.check, step.otherwise):
            assert said is None or bare(said) in text, said
        if step.temperature_c is not None:
            assert f"{step.temperature_c:.0f}°C" in text
        if step.hardness_hrc is not None:
            assert bare(shown_range(*step.hardness_hrc)) in text
        if step.minutes is not None and step.stage != "heat":
            assert bare(shown_time(60.0 * step.minutes)) in text
        if step.length_mm is not None:
            assert f"{step.length_mm:g}mm" in text
        if step.within_s is not None:
            assert f"in{step.within_s:g}s" in text


@pytest.mark.parametrize("suffix", [".pdf", ".html"])
def test_every_caution_of_the_option_is_on_the_card(suffix):
    found, _, file = made("a4", suffix)
    text = bare(text_of(file.content) if suffix == ".pdf" else file.content.decode())
    known = found.job.catalog.cautions
    said = said_by_steps(found.record.procedure)
    assert len(said & set(found.record.cautions)) >= 4
    for key in found.record.cautions:
        if key not in said or known[key].harm != "spoils":
            brief = bare(known[key].brief)
            assert brief in text or brief.replace("'", "&#39;") in text, key


def test_what_can_kill_stands_in_the_box_at_the_top():
    found, data, _ = made()
    known = found.job.catalog.cautions
    killing = [k for k in found.record.cautions if known[k].harm == "kills"]
    box = set(data["dangers"])
    assert killing
    at_steps = {c["text"] for g in data["groups"] for s in g["steps"] for c in s["cautions"]}
    assert all(known[k].brief in box | at_steps for k in killing)
    assert sum(known[k].brief in box for k in killing) == min(len(killing), 3)
    assert box.isdisjoint(at_steps)


def test_the_card_is_that_of_the_advice():
    advice = advised(None, *STEELS)
    record = next(o for o in advice_out(advice).options if o.id == LOCAL)
    ours = made()[0].record
    assert ours.procedure == record.procedure
    assert ours.hardness == record.hardness
    assert ours.temper == record.temper
    assert chosen(asked(), only(*STEELS)).record.id == advice.options[0].id


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_an_ordinary_part_has_all_on_one_side(paper):
    assert len(PdfReader(BytesIO(made(paper)[2].content)).pages) == 1


def test_what_means_go_at_a_step_is_what_the_trial_says():
    found, _, file = made()
    planned = plan(found.job, found.option)
    steps = {step.stage: step for step in found.record.procedure}
    text = bare(text_of(file.content))
    told = {reading.stage: reading for reading in planned.readings}
    assert told["heat"].go in next(s.action for s in found.record.procedure if s.band_c)
    assert steps["test"].check == told["quenched"].go
    assert any((s.check or "").startswith(told["tempered"].go) for s in found.record.procedure)
    for stage in ("heat", "quenched", "tempered"):
        assert bare(told[stage].go) in text


def test_a_trial_stands_on_the_card_where_it_is_worth_one():
    found, data, _ = made()
    planned = plan(found.job, found.option)
    worth = planned.forecast.right < SURE or planned.asked_for is not None
    assert bool(data["trial"]) == worth
    unproved = {"workshop.stock": [{"steel": "42CrMo4", "evidence": "none"}]}
    doubtful = chosen(asked(unproved), only(*STEELS), LOCAL)
    data = card(doubtful, "a4", TODAY, "0.0")
    lines = list(card_lines(plan(doubtful.job, doubtful.option)))
    assert data["trial"] == lines
    assert 0 < len(lines) <= 4
    text = bare(text_of(sheet("card", data, ".pdf").content))
    assert all(bare(line) in text for line in lines)


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_what_is_done_is_read_at_arms_length(paper):
    small: dict[float, list[str]] = {}

    def look(text, _, matrix, __, size):
        if text.strip():
            small.setdefault(round(size * abs(matrix[3]), 2), []).append(text.strip())

    for page in PdfReader(BytesIO(made(paper)[2].content)).pages:
        page.extract_text(visitor_text=look)
    under = {
        most: bare(" ".join(t for size, texts in small.items() if size < most for t in texts))
        for most in (DONE_PT, CHECKED_PT)
    }
    # The foot is smaller, so a text that is would be seen.
    assert "Localcodes" in under[CHECKED_PT]
    for step in made(paper)[0].record.procedure:
        assert bare(step.action) not in under[DONE_PT]
        assert not step.check or bare(step.check) not in under[CHECKED_PT]


def test_drawing_and_steps_say_one_thing():
    found, data, _ = made()
    (hardness,) = [s for s in found.record.procedure if "beyond" in (s.check or "")]
    end = re.search(r"soft beyond (\d+) mm", hardness.check)[1]
    assert f"soft from {end}" in data["picture"]["svg"]
    assert f"{found.record.set_up.past_zone_mm:.0f} mm past" in data["picture"]["alt"]


def test_a_part_that_needs_no_hardening_has_a_card_of_a_few_lines_to_tick():
    soft = asked({"zone.0.hardness": {"min": "120 HB"}, "zone.0.wear": "none"})
    found = chosen(soft, only("s235", "42crmo4"))
    data = card(found, "a4", TODAY, "0.0")
    assert template_of(found) == "paragraph"
    assert data["paragraphs"][0] == "No heat treatment."
    text = bare(text_of(sheet("paragraph", data, ".pdf").content))
    page = sheet("paragraph", data, ".html").content.decode()
    assert page.count("<li ") == len(data["lines"]) == len(found.record.procedure)
    for step in found.record.procedure:
        assert all(bare(said) in text for said in (step.action, step.means, step.check) if said)


def test_a_part_that_lives_depend_on_is_referred():
    for name in (None, LOCAL):
        found = chosen(asked({"safety_use": "brake"}), only(*STEELS), name)
        data = card(found, "letter", TODAY, "0.0")
        text = text_of(sheet(template_of(found), data, ".pdf", "letter").content)
        assert "not a home job" in text
        assert "qualified people" in text
        assert "tick" not in data
        assert "HRC right" not in text


def test_where_nothing_serves_the_sheet_says_so_and_what_would_help():
    bare_bench = {"workshop.heat": [], "workshop.bath": [], "zone.0.hardness.must": True}
    found = chosen(asked(bare_bench), only(*STEELS))
    data = card(found, "a4", TODAY, "0.0")
    assert found.option is None
    assert template_of(found) == "paragraph"
    assert data["subtitle"] == "No work by this card"
    assert data["paragraphs"][0] == found.headline
    assert list(found.instead) == data["paragraphs"][1 : 1 + len(found.instead)]
    assert sheet("paragraph", data, ".pdf").content.startswith(b"%PDF")


def test_an_option_that_fails_says_so_at_the_top():
    harder = asked({"zone.0.hardness": {"min": "62 HRC", "max": "64 HRC", "must": True}})
    found = chosen(harder, only(*STEELS), LOCAL)
    data = card(found, "a4", TODAY, "0.0")
    assert any("needs 62 HRC" in text for text in data["fails"])
    for suffix in (".pdf", ".html"):
        content = sheet("card", data, suffix).content
        text = text_of(content) if suffix == ".pdf" else content.decode()
        assert "Does not do what is asked" in text
    assert made()[1]["fails"] == []


def test_a_furnace_card_and_a_firms_order_are_made_too():
    for name in (
        "42crmo4/annealed/through-furnace.oil/oven-225c-60min",
        "42crmo4/annealed/subcontract-vacuum.oil/furnace-225c-60min",
    ):
        found = chosen(asked(KILN), only(*STEELS), name)
        text = bare(text_of(sheet("card", card(found, "a4", TODAY, "0"), ".pdf").content))
        assert all(bare(step.action) in text for step in found.record.procedure)


def test_names_of_the_user_are_texts_and_no_more():
    hostile = '#strong[x] <script>alert(1)</script> $y$ & "q" \u05e9\u05dc\u05d5\u05dd'
    changes = {"part.name": hostile, "part.section.0.name": hostile, "zone.0.name": hostile}
    found = chosen(asked(changes), only(*STEELS), LOCAL)
    for suffix in (".pdf", ".html"):
        data = card(found, "a4", TODAY, "0.0")
        content = sheet("card", data, suffix).content
        if suffix == ".html":
            assert b"<script>" not in content
        else:
            assert bare("#strong[x] <script>alert(1)</script> $y$") in bare(text_of(content))


@pytest.mark.parametrize(
    ("fields", "said"),
    [
        ({"stage": "quench", "within_s": 2.0, "temperature_c": 50.0}, ("in 2 s", "50 °C")),
        ({"stage": "heat", "minutes": 15.0, "temperature_c": 860.0}, ("860 °C", "15 min")),
        ({"stage": "bar"}, ("", "")),
        ({"stage": "check", "length_mm": 0.3}, ("0.3 mm", "")),
        ({"stage": "check", "length_mm": 0.3048, "volume_l": 11.3562}, ("0.3 mm", "11.4 l")),
        ({"stage": "prepare", "length_mm": 0.025}, ("0.025 mm", "")),
        (
            {"stage": "heat", "means": "clock", "minutes": 10.0, "temperature_c": 860.0},
            ("10 min", "860 °C"),
        ),
        (
            {"stage": "quench", "minutes": 0.18, "length_mm": 27.0, "temperature_c": 40.0},
            ("11 s", "27 mm, 40 °C"),
        ),
        (
            {"stage": "order", "temperature_c": 200.0, "hardness_hrc": (58.0, 62.0)},
            ("58 to 62 HRC", "200 °C"),
        ),
        (
            {"stage": "temper", "temperature_c": 225.0, "band_c": (200.0, 225.0),
             "minutes": 60.0, "times": 2},
            ("225 °C", "200 to 225 °C serves, 2 × 60 min"),
        ),
    ],
)  # fmt: skip
def test_figures_stand_with_their_units(fields, said):
    assert figure_of(StepOut(action="x", **fields)) == said


def test_a_fraction_of_an_inch_stays_on_its_line():
    found, data, _ = made()
    for more in range(8):  # one of them would end the line at the stroke
        name = f"Index plunger for a dividing plate{'e' * more}, 3/8 in"
        # The head of the card has it; its steps take two thirds of the time to set.
        file = sheet(template_of(found), {**data, "title": name, "groups": []}, ".pdf")
        assert "3/8" in " ".join(pages_of(file.content))
