"""Any option of any part in a full workshop has a procedure and a card that can be followed."""

import re
from datetime import date
from functools import cache

import pytest

from selector.advice.advise import Advice, advise
from selector.advice.output import advice_out
from selector.decision.option import Option
from selector.decision.output import option_out
from selector.handover.card import card, template_of
from selector.handover.chosen import Chosen
from selector.handover.sheet import sheet
from selector.procedure.lines import short_lines
from selector.record import OptionOut
from selector.requirement.workshop import Workshop
from tests.pdf_text import pages_of
from tests.whole_requirement import KNOWN, Dice, catalog_for, requirement_number

# Numbers of parts for which this workshop has many options, by routes of many kinds.
NUMBERS = (12, 17, 29, 32, 34, 36, 39)
SOURCES = ("oxy-propane", "forge", "kiln", "kitchen-oven", "hot-plate")
INSTRUMENTS = {"furnace", "thermocouple", "crayon", "infrared"}
RICH = {"high-speed", "hot-work-tool", "air-tool", "oil-tool"}
QUENCHED = {"through-torch", "local-torch", "through-furnace", "marquench", "residual-heat"}


@cache
def advised_on(number: int) -> Advice:
    """Return the advice on a numbered part in a workshop that has everything."""
    dice = Dice(number)
    shop = {
        "heat": [{"source": slug} for slug in SOURCES],
        "bath": [{"medium": slug} for slug in ("water", "oil", "plates", "hot-salt")],
        "measure": dice.some(("eye", "magnet", "crayon", "thermocouple"), 3),
        "light": dice.one(("dim", "shade", "daylight", "sun")),
        "check": dice.some(("file", "hardness-files", "glass", "tester"), 2),
        "turns_part": dice.in_ten(5),
        "held_by": dice.one(("lathe", "tongs", "wire")),
        "subcontract": True,
    }
    changes = {"workshop": Workshop.model_validate(shop), "safety_use": "none"}
    asked = requirement_number(number).model_copy(update=changes)
    return advise(asked, catalog_for(asked, number, 8))


@cache
def options(number: int) -> tuple[OptionOut, ...]:
    """Return the options of a numbered part as plain data."""
    return advice_out(advised_on(number)).options


def every():
    return [option for number in NUMBERS for option in options(number)]


def each_step():
    return [(option, step) for option in every() for step in option.procedure]


def test_options_of_many_kinds_are_looked_at():
    assert len(every()) >= 75
    assert len({option.route for option in every()}) >= 14


def test_every_step_has_an_action_a_number_and_a_way_to_tell():
    for option in every():
        assert [s.number for s in option.procedure] == list(range(1, len(option.procedure) + 1))
        for step in option.procedure:
            assert len(step.action) > 10, option.id
            assert step.check, (option.id, step.action)
            assert step.means, (option.id, step.action)
            assert step.source or step.stage == "set-up", (option.id, step.action)


FIGURES = ("temperature_c", "minutes", "within_s", "length_mm", "volume_l", "hardness_hrc")
# What stands on any bench, or comes with a bar or a firm, beside what a workshop lists.
ANY_BENCH = (
    "file", "emery", "oilstone", "clock", "chalk", "micrometer", "dial gauge", "feelers",
    "wire",
    "grinder", "fireclay", "eye", "magnet", "dealer", "firm", "send out", "certificate", "mark",
    "receipt", "spark", "stone", "lathe", "bath", "tongs", "disc", "stripper", "salt pot",
    "washing soda",
)  # fmt: skip


def test_every_step_has_a_figure_with_a_unit():
    """The unit is in its name; what is 0 is nothing to do."""
    for option, step in each_step():
        told = [figure for name in FIGURES if (figure := getattr(step, name)) is not None]
        assert told, (option.id, step.action)
        assert 0 not in told, step


def test_every_means_is_one_that_the_workshop_has():
    named = {KNOWN.heat_sources[slug].name.lower() for slug in SOURCES}
    listed = (
        "oil",
        "water",
        "salt",
        "sand",
        "plate",
        "hardness",
        "glass",
        "crayon",
        "thermocouple",
    )
    for option, step in each_step():
        means = step.means.lower()
        own = any(name in means or means in name for name in named)
        words = (*ANY_BENCH, *listed, "furnace's own instrument", "surface-grinder")
        assert own or any(word in means for word in words), (option.id, step.means)


def test_no_word_of_the_program_gets_into_a_step():
    for option, step in each_step():
        said = " ".join(filter(None, (step.action, step.check, step.otherwise, step.short)))
        assert not re.search(r"None|nan|\{|\}|_", said), (option.id, said)


def test_every_heat_has_degrees_and_a_colour_or_an_instrument():
    for option, step in each_step():
        if step.stage == "heat":
            assert step.temperature_c, (option.id, step.action)
            assert step.colour or step.read_by in INSTRUMENTS, (option.id, step.action)


def test_every_temper_has_degrees_minutes_and_times_as_judged():
    for _, step in each_step():
        if step.stage == "temper":
            assert step.temperature_c
            assert step.minutes
            assert step.times
    for option in every():
        first = next((s for s in option.procedure if s.stage == "temper"), None)
        if first is not None:
            assert first.temperature_c == option.temper.temperature_c
            assert first.times == option.temper.cycles
            if option.temper.means != "residual":
                assert first.minutes == option.temper.time_min


def test_what_is_quenched_here_is_tempered():
    for option in every():
        if option.route in QUENCHED:
            assert any(step.stage == "temper" for step in option.procedure), option.id


def test_the_heat_and_hold_are_those_that_were_judged():
    for option in every():
        if option.route in QUENCHED and option.set_up is not None:
            heat, hold = [s for s in option.procedure if s.stage == "heat"][-2:]
            assert heat.temperature_c == pytest.approx(option.set_up.heat_c, abs=2.5)
            assert hold.minutes == pytest.approx(option.set_up.hold_s / 60.0, abs=0.01)


def test_no_furnace_soak_at_an_open_flame():
    for option, step in each_step():
        eye = option.source is not None and KNOWN.heat_sources[option.source].control == "eye"
        if step.stage == "heat" and eye and option.route in QUENCHED:
            assert (step.minutes or 0.0) <= 10.0, (option.id, step.action)


def test_an_hour_at_heat_is_for_an_instrument():
    for option, step in each_step():
        # An hour buried in a tin of compound is the most that a fire is watched for.
        if step.stage in {"heat", "case"} and (step.minutes or 0.0) > 60.0:
            assert step.read_by == "furnace", (option.id, step.action)


def test_the_magnet_is_a_floor_and_never_the_target():
    for option, step in each_step():
        said = f"{step.action} {step.short}"
        if "magnet" in said and step.temperature_c:
            just = "just lets go" in said
            assert step.temperature_c > 778.0 or just or "short of" in said, (option.id, said)


def test_no_kitchen_oven_above_its_ceiling():
    ceiling_c = KNOWN.heat_sources["kitchen-oven"].ceiling_c.value
    for option, step in each_step():
        if step.means and "kitchen" in step.means.lower():
            assert step.temperature_c <= ceiling_c, (option.id, step.action)


def test_nobody_anneals_where_he_should_temper():
    for option, step in each_step():
        if step.stage not in {"bar", "order"}:
            assert "anneal" not in step.action.lower(), (option.id, step.action)


def test_heat_runs_back_only_from_mass_behind_the_zone():
    for option, step in each_step():
        if "run down" in step.action:
            assert option.route == "residual-heat"
            (dip,) = [s for s in option.procedure if s.stage == "quench"]
            assert dip.length_mm is not None, option.id


def test_rich_steel_is_tempered_more_than_once():
    for option, step in each_step():
        kind = KNOWN.steels[option.steel_slug].kind
        if step.stage == "temper" and kind in RICH and "further" not in step.action:
            assert step.times >= 2, option.id


def test_every_caution_of_an_option_stands_at_one_of_its_steps():
    for option in every():
        placed = [key for step in option.procedure for key in step.cautions]
        assert sorted(placed) == sorted(set(option.cautions)), option.id


def test_every_option_has_one_line_or_two():
    for option in every():
        lines = short_lines(option.procedure)
        assert 1 <= len(lines) <= 2, option.id
        assert all(len(line) < 220 for line in lines), lines


def bare(text: str) -> str:
    """Return a text without blanks and without marks where a long word may break."""
    return re.sub(r"[\s\u200b]+", "", text)


def one_of_each_route() -> dict[str, tuple[int, Option]]:
    """Return the best option of each route, of the last part that has one, with its number."""
    return {
        option.treatment.route.slug: (number, option)
        for number in NUMBERS
        for option in reversed(advised_on(number).options)
    }


def test_every_step_of_any_option_is_on_its_card():
    by_route = one_of_each_route()
    assert len(by_route) >= 14
    for at, (number, option) in enumerate(by_route.values()):
        advice = advised_on(number)
        record = option_out(advice.job, option, 1, advice.ranges)
        found = Chosen(advice.job, option, record, "")
        paper = "letter" if at % 2 else "a4"
        data = card(found, paper, date(2026, 11, 29), "0.0")
        pages = pages_of(sheet(template_of(found), data, ".pdf", paper).content)
        text = bare("".join(pages))
        for step in record.procedure:
            for said in (step.action, step.means, step.check):
                assert bare(said) in text, (option.id, said)
        assert len(pages) == 1, option.id
        assert record.id in text
