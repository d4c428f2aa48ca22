"""Any part, any duty, any workshop: every question has an answer, and its numbers are sound.

30 whole requirements in the ordinary run; `--hypothesis-profile many` looks at 500.
"""

import hashlib
import json
import math
import os
import subprocess
import sys
from collections.abc import Iterator
from datetime import date
from functools import cache
from typing import Any

import numpy as np
import pytest

from selector.advice.advise import Advice, advise
from selector.advice.output import advice_out
from selector.decision.drawback import stands_back
from selector.flame.answer import flame_answer
from selector.flame.output import flame_out
from selector.handover.letter.letter import composed
from selector.handover.letter.made import Sender, made
from selector.handover.letter.picture import picture
from selector.need.need import need
from selector.option.temper_choice import STRUCK_LEAST_TEMPER_C
from selector.versus.versus import versus
from tests.examples import few
from tests.letter_text import allowed, strange, text_of
from tests.once import advise_whole
from tests.page_text import assert_one_page
from tests.whole_requirement import KNOWN, catalog_for, requirement_number

NUMBERS = range(few(30))
# So many with every steel of the catalogue.
WHOLE = NUMBERS[:: len(NUMBERS) // 3]
# A letter is printed for so many.
LETTERS = NUMBERS[: len(NUMBERS) // 3]
SHARES = {
    "share", "score", "score_p05", "score_p95", "passing_all", "clipped_share", "merit",
    "weight",
}  # fmt: skip
SPREAD = {"p05", "p50", "p95"}


def in_order(ends: list[float | None]) -> bool:
    """Return whether the ends of a range ascend, or all are unknown."""
    known = [end for end in ends if end is not None]
    return not known or (len(known) == 3 and ends == sorted(ends))


def faults(value: Any, place: str = "") -> Iterator[str]:
    """Yield where plain data hold a number that is none, a wrong share or range."""
    if isinstance(value, dict):
        if value.keys() >= SPREAD and not in_order([value[name] for name in sorted(SPREAD)]):
            yield f"{place}: {value}"
        for key, part in value.items():
            if key in SHARES and isinstance(part, float) and not 0 <= part <= 1:
                yield f"{place}.{key}: {part}"
            yield from faults(part, f"{place}.{key}")
    elif isinstance(value, list | tuple):
        for number, part in enumerate(value):
            yield from faults(part, f"{place}[{number}]")
    elif isinstance(value, float) and not math.isfinite(value):
        yield f"{place}: {value}"


@cache
def advice_on(number: int) -> Advice:
    """Return the advice on a numbered requirement, among a few steels."""
    asked = requirement_number(number)
    return advise_whole(asked, catalog_for(asked, number, 4))


def advice_text(number: int) -> str:
    """Return the advice on a numbered requirement as it is printed."""
    return advice_out(advice_on(number)).model_dump_json()


@pytest.mark.parametrize(
    "data",
    [
        {"share": 1.1},
        {"a": [{"cost": math.nan}]},
        {"depth": {"p05": 1.0, "p50": 3.0, "p95": 2.0}},
        {"depth": {"p05": None, "p50": 3.0, "p95": 4.0}},
    ],
    ids=str,
)
def test_a_fault_is_seen(data):
    assert len(list(faults(data))) == 1


def assert_sound(advice: Advice) -> None:
    """Look for faults in an advice, and in what it is made of."""
    out = advice_out(advice)
    assert list(faults(out.model_dump())) == []
    assert out.headline
    for option in advice.options:
        assert np.isfinite(option.scores).all()
        assert np.isfinite(option.judged.prediction.section_hrc).all()
    for item in (*out.rejected, *out.apart):
        assert len(item.text) > 10


@pytest.mark.parametrize("number", NUMBERS)
def test_any_part_is_advised_on(number):
    assert_sound(advice_on(number))


@pytest.mark.parametrize("number", WHOLE)
def test_any_part_is_advised_on_among_all_steels(number):
    answer = advise(requirement_number(number), KNOWN)
    assert_sound(answer)
    assert len({option.id for option in answer.options}) == len(answer.options)


@pytest.mark.parametrize("number", NUMBERS)
def test_the_advice_on_any_part_is_one_page(number):
    assert_one_page(advice_out(advice_on(number), 8))


@pytest.mark.parametrize("number", LETTERS)
def test_the_letter_on_any_part_is_one_page_with_its_figures(number):
    advice = advice_on(number)
    out = advice_out(advice)
    referred = advice.asked.safety_critical
    if not advice.options and not referred:
        return
    shown = None if referred else out.options[0]
    drawn = None if shown is None else picture(advice.job, advice.options[0])
    letter = composed(advice.asked, out, shown, "full", date(2025, 1, 2))
    text, pages = text_of(made(letter, Sender(), drawn).content)
    assert pages == 1
    if shown is not None:
        assert strange(text, allowed(advice.asked, out, shown)) == {}


@pytest.mark.parametrize("number", NUMBERS)
def test_no_rule_of_the_trade_is_broken_by_any_part(number):
    advice = advice_on(number)
    struck = advice.asked.load.impact == "hammered"
    for option in advice.options:
        work, temper = option.treatment, option.choice.temper
        hard = work.hardens or work.route.process == "case"
        assert not (struck and hard) or temper.temperature_c >= STRUCK_LEAST_TEMPER_C, option.id
        if temper.means == "residual":
            assert len(advice.job.hard) < len(advice.asked.part.section), option.id
    back = [stands_back(option, advice.asked) for option in advice.options]
    assert back == sorted(back)


@pytest.mark.parametrize("number", NUMBERS)
def test_what_any_part_needs_is_known(number):
    asked = requirement_number(number)
    out = need(asked, catalog_for(asked, number, 4))
    assert list(faults(out.model_dump())) == []
    assert out.headline


@pytest.mark.parametrize("number", NUMBERS[1::2])
def test_a_flame_is_answered_for_any_part(number):
    asked = requirement_number(number)
    known = catalog_for(asked, number, 1)
    out = flame_out(flame_answer(asked, known))
    assert list(faults(out.model_dump())) == []
    assert out.why


def test_two_options_of_any_part_are_compared():
    """The first and the last that were weighed, for the first parts that have two."""
    compared = 0
    for number in NUMBERS:
        advice = advice_on(number)
        tried = [item.option for item in advice.rejected if item.option is not None]
        ids = [option.id for option in (*advice.options, *tried)]
        if len(ids) > 1 and compared < len(NUMBERS) // 6:
            pair = versus(advice.asked, ids[0], ids[-1], advice.job.catalog)
            assert list(faults(pair.model_dump())) == []
            compared += 1
    assert compared == len(NUMBERS) // 6


TWICE = range(0, 12, 4)


def test_the_same_question_has_the_same_bytes_in_another_process():
    """Whatever the order in which sets are gone through there."""
    program = (
        "from tests.selector.test_any_part import advice_text, digest; "
        f"print(digest(map(advice_text, {list(TWICE)})))"
    )
    environment = {
        **os.environ,
        "PYTHONHASHSEED": "4711",
        "PYTHONPATH": os.pathsep.join(sys.path),
    }
    there = subprocess.run(  # noqa: S603
        [sys.executable, "-c", program],
        env=environment,
        capture_output=True,
        text=True,
        check=True,
    )
    assert there.stdout.strip() == digest(map(advice_text, TWICE))


def digest(texts) -> str:
    """Return a fingerprint of texts."""
    return hashlib.sha256("\n".join(texts).encode()).hexdigest()


@cache
def every():
    """Return so many requirements that each kind of thing is among them."""
    return [requirement_number(number) for number in range(300)]


@pytest.mark.parametrize(
    ("what", "words"),
    [
        (
            lambda r: [s.shape for s in r.part.section],
            {"round", "square", "hexagon", "tube", "flat"},
        ),
        (
            lambda r: [z.wear for z in r.zone],
            {"none", "sliding", "abrasive", "rolling-contact", "edge-impact"},
        ),
        (lambda r: [h.source for h in r.workshop.heat], set(KNOWN.heat_sources)),
        (lambda r: [b.medium for b in r.workshop.bath], set(KNOWN.media)),
        (lambda r: [len(r.part.section)], {1, 2, 3, 4, 5}),
        (lambda r: [r.load.impact], {"none", "light", "hammered"}),
        (lambda r: [bool(r.load.torque), r.workshop.only_stock], {True, False}),
        (lambda r: [f.kind for f in r.part.feature], {"teeth", "edge", "keyway", "cross-hole"}),
    ],
    ids=["shapes", "wear", "heat", "baths", "sections", "blows", "torque and rack", "features"],
)
def test_the_requirements_are_of_every_kind(what, words):
    assert words <= {word for requirement in every() for word in what(requirement)}


def test_a_number_stands_for_one_requirement():
    assert json.loads(requirement_number(7).model_dump_json()) == json.loads(
        every()[7].model_dump_json()
    )
