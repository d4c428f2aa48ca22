"""Advice, card, letter and trial say the same of the same option."""

from datetime import date
from functools import cache

import pytest

from selector.advice.output import advice_out
from selector.handover.card import card
from selector.handover.chosen import chosen
from selector.handover.letter.letter import composed
from selector.handover.letter.ways import money
from selector.trial.plan import plan
from selector.wording import shown, shown_range, times_in_100
from tests.dog import asked, only
from tests.once import advised
from tests.procedure import KILN

TODAY = date(2026, 11, 29)
STEELS = ("42crmo4", "s235")
OPTIONS = (
    ("42crmo4/annealed/local-torch.oil/oven-225c-60min", {"workshop.subcontract": True}),
    ("42crmo4/annealed/through-furnace.oil/oven-225c-60min", KILN),
    ("42crmo4/annealed/subcontract-vacuum.oil/furnace-225c-60min", KILN),
)


@cache
def sheets(number):
    """Return an option as the advice has it, its card, letter and trial."""
    name, _ = OPTIONS[number]
    wanted = asked(OPTIONS[number][1])
    found = chosen(wanted, only(*STEELS), name)
    advice = advice_out(advised(OPTIONS[number][1], *STEELS))
    record = next((o for o in advice.options if o.id == name), found.record)
    letter = composed(wanted, advice, record, "full", TODAY)
    return record, card(found, "a4", TODAY, "0"), letter, plan(found.job, found.option), found


@pytest.mark.parametrize("number", range(len(OPTIONS)))
def test_the_hardness_is_one(number):
    record, made, letter, trial, found = sheets(number)
    surface = record.hardness.surface
    span = shown_range(surface.p05, surface.p95)
    text = " ".join(p for section in letter.sections for p in section.paragraphs)
    assert found.record.hardness.surface == surface
    assert made["comes"] == shown(surface.p50)
    assert f"{shown(surface.p50)} ({span})" in text
    (checked,) = [s for s in record.procedure if s.stage == "check" and s.hardness_hrc]
    assert shown_range(*checked.hardness_hrc) == span
    assert any(s["big"] == span for g in made["groups"] for s in g["steps"])
    (read,) = [r for r in trial.readings if r.stage == "tempered"]
    assert shown_range(read.expected[0], read.expected[2]) == span


@pytest.mark.parametrize("number", range(len(OPTIONS)))
def test_price_days_chance_and_temper_are_one(number):
    record, made, letter, trial, found = sheets(number)
    assert found.record.cost == record.cost
    assert found.record.days == record.days
    cells = {row.name: row.cells[0] for row in letter.table.rows}
    assert cells["price"] == money(record) == f"{record.cost.spread.p50:.0f} EUR"
    assert cells["ready"] == f"in {record.days:g} days"
    assert cells["comes out right"] == times_in_100(record.passing_all)
    assert times_in_100(record.passing_all) in made["chances"]
    assert trial.forecast.right == record.passing_all
    assert trial.temper == record.temper
    if trial.set_up is not None:
        assert trial.set_up == record.set_up
