"""What the visitor sees when advice cannot be had: words, and all that was there before."""

import pytest

from selector.errors import OutOfRangeError, Problem
from tests.dog import asked
from tests.form import field, said
from ui import answer, cached


def fail_with(monkeypatch, fault):
    def failing(*_args, **_kwargs):
        raise fault

    monkeypatch.setattr(cached, "advise", failing)


def change_and_ask(page):
    page.text_input(key=field(page, "part.section.1.size")).set_value("26.5 mm").run()
    page.button(key="part/advise").click().run()


def test_a_fault_of_ours_is_said_and_the_last_advice_stays(advised, monkeypatch, caplog):
    shown = advised.title[0].value
    advised.switch_page("views/part.py").run()
    fail_with(monkeypatch, ZeroDivisionError("of ours"))
    change_and_ask(advised)
    assert not advised.exception
    assert "What you typed is kept" in advised.error[0].value
    assert "of ours" in caplog.text
    assert advised.text_input(key=field(advised, "part.section.1.size")).value == "26.5 mm"
    advised.switch_page("views/choice.py").run()
    assert advised.title[0].value == shown
    assert "The part was changed since" in said(advised)


def test_what_a_model_cannot_answer_is_said_in_its_words(with_claw, monkeypatch):
    fail_with(monkeypatch, OutOfRangeError(Problem("size", "under 100", "999 mm", "Thinner.")))
    change_and_ask(with_claw)
    assert not with_claw.exception
    assert "size must be under 100; got 999 mm. Thinner." in with_claw.error[0].value


@pytest.fixture
def moved(monkeypatch):
    """What the bar has said."""
    texts = []

    class Bar:
        def __init__(self, _value, text):
            texts.append(text)

        def progress(self, value, text):
            assert 0.0 <= value <= 1.0
            texts.append(text)

        def empty(self):
            pass

    monkeypatch.setattr(answer.st, "progress", Bar)
    return texts


def test_what_is_computed_is_said_while_it_lasts(with_claw, monkeypatch, moved):
    monkeypatch.setattr(answer, "_STEP_S", 0.0)
    with_claw.text_input(key=field(with_claw, "part.section.1.size")).set_value("27 mm").run()
    with_claw.button(key="part/advise").click().run()
    assert not with_claw.exception
    assert len(set(moved)) >= 3


def test_the_bar_moves_no_oftener_than_an_eye_follows(monkeypatch, moved):
    def busy(_asked, progress):
        for step in range(400):
            progress("Weighing", step / 400)

    monkeypatch.setattr(cached, "advice", busy)
    assert answer.compute(asked())
    assert len(moved) < 10
