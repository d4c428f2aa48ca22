"""What is worked out before it is asked for: one at a time, taken once, dropped when idle."""

from threading import Event

import pytest

from selector.requirement import requirement_from
from ui import cached
from ui.ahead import Ahead

PATIENCE_S = 20


def silent(_text, _fraction):
    pass


def test_what_is_at_hand_is_taken_once():
    ahead, made = Ahead(), []
    for _ in range(2):  # asked for twice, worked out once
        ahead.begin("a", lambda report: made.append(report) or 7)
    assert ahead.take("b", silent) is None
    assert ahead.take("a", silent) == 7
    assert ahead.take("a", silent) is None
    assert len(made) == 1


def test_another_lets_go_of_the_one_before():
    ahead, went_on, stopped = Ahead(), Event(), []

    def long(report):
        while True:
            try:
                report("weighing", 0.5)
            except Exception:
                stopped.append(True)
                went_on.set()
                raise

    ahead.begin("a", long)
    ahead.begin("b", lambda _report: 8)
    assert went_on.wait(PATIENCE_S)
    assert stopped
    assert ahead.take("a", silent) is None
    assert ahead.take("b", silent) == 8


def test_who_waits_is_told_how_far_it_is_and_keeps_it_from_being_dropped():
    ahead, go_on = Ahead(), Event()

    def work(report):
        report("weighing", 0.5)
        assert go_on.wait(PATIENCE_S)
        return 9

    ahead.begin("a", work)
    told = []

    def progress(text, fraction):
        told.append((text, fraction))
        if ("weighing", 0.5) in told:
            ahead.begin("b", lambda _report: 10)
            go_on.set()

    assert ahead.take("a", progress) == 9
    assert ("weighing", 0.5) in told
    assert ahead.take("b", silent) is None


def test_who_leaves_while_waiting_finds_it_when_he_is_back():
    ahead, go_on = Ahead(), Event()
    ahead.begin("a", lambda _report: go_on.wait(PATIENCE_S) and 11)

    def leave(_text, _fraction):
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        ahead.take("a", leave)
    go_on.set()
    assert ahead.take("a", silent) == 11


def test_what_fails_is_worked_out_again_by_who_asks():
    ahead = Ahead()

    def fail(_report):
        raise ValueError("no")

    ahead.begin("a", fail)
    assert ahead.take("a", silent) is None


def test_a_changed_part_is_advised_on_before_it_is_asked_for(advised, claw):
    advised.switch_page("views/part.py").run()
    key = next(box.key for box in advised.text_input if box.key.endswith("section.1.length"))
    advised.text_input(key=key).set_value("33 mm").run()
    claw["part"]["section"][0]["length"] = "33 mm"
    made = cached._ahead().take(requirement_from(claw), silent)
    assert made is not None
    assert made[1].part == "claw"


@pytest.mark.usefixtures("advised")
def test_what_was_worked_out_ahead_is_what_is_shown(claw):
    claw["part"]["section"][0]["length"] = "34 mm"
    asked = requirement_from(claw)
    cached._ahead().begin(asked, lambda _report: ("with samples", "as data"))
    assert cached.weighed(asked) == "with samples"
    assert cached.advice(asked) == "as data"
