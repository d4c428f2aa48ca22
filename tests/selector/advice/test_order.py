import itertools
import re
from dataclasses import replace

import numpy as np
import pytest

from selector.advice.advise import advise
from selector.advice.order import _value_words, reasons, why_before, why_not_first
from selector.decision.drawback import stands_back
from selector.requirement.priority import CRITERIA
from tests.dog import asked, only

UNITS = {
    "hardness": r"HRC off the window|in the window",
    "strength": r"bears (twice|\d\.\d times) what you ask",
    "snap_margin": r"\d+ HRC (below where|harder and|too hard for this use:) it chips",
    "movement": r"bows (under )?\d\.\d\d mm",
    "cost": r"\d+ [A-Z]{3} a good part",
    "operator_sensitivity": r"\d HRC for a colour misread by 25 °C",
    "days": r"\d days",
    "custom": r"such parts|seldom used|nobody makes",
    "at_hand": r"in the rack|every shop|to order|hard to get",
}


@pytest.mark.parametrize("criterion", CRITERIA)
def test_a_criterion_in_words_has_value_and_unit(advice, criterion):
    for option in advice.options:
        text = _value_words(advice, option, criterion)
        assert re.search(UNITS[criterion], text), text


def test_why_one_stands_before_the_next(advice):
    for first, second in itertools.pairwise(advice.options):
        text = why_before(advice, first, second)
        assert text.endswith(".")
        assert " against " in text or "there is little between them" in text


def test_gains_and_losses_change_sides_with_the_order(advice):
    first, last = advice.options[0], advice.options[-1]
    there, back = why_before(advice, first, last), why_before(advice, last, first)
    weights = np.array([advice.weights[name] for name in CRITERIA])
    lead = weights * (first.merit.mean(axis=0) - last.merit.mean(axis=0))
    gain = CRITERIA[int(np.argmax(lead))]
    assert lead.max() > 0.004
    assert _value_words(advice, first, gain) in there.split("It gives away")[0]
    assert _value_words(advice, last, gain) in back.split("It gives away")[1]


def test_an_option_against_itself_gains_nothing(advice):
    first = advice.options[0]
    assert why_before(advice, first, first) == "there is little between them."


def test_reasons_name_hardness_and_both_ends(advice):
    for option in advice.options:
        surface, *layer, best, worst = reasons(advice, option)
        assert bool(layer) == (option.judged.prediction.layer is not None)
        assert all(text.startswith("layer ") for text in layer)
        assert re.match(r"surface \d+ (HRC|HB) \(asked \d+ HRC or more\)", surface)
        merit = option.merit.mean(axis=0)
        assert best == f"best at: {_value_words(advice, option, CRITERIA[np.argmax(merit)])}"
        assert (
            worst == f"weakest at: {_value_words(advice, option, CRITERIA[np.argmin(merit)])}"
        )


def test_a_wanted_life_is_given_as_such():
    answer = advise(asked({"zone.0.life_ratio": 2.0}), only("42crmo4"))
    text = _value_words(answer, answer.options[0], "hardness")
    assert re.fullmatch(r"\d\.\d times the wear life wanted", text)


def revalued(option, criterion, value):
    values, merit = option.judged.values.copy(), option.merit.copy()
    values[:, CRITERIA.index(criterion)] = value
    merit[:, CRITERIA.index(criterion)] = value
    return replace(option, judged=replace(option.judged, values=values), merit=merit)


@pytest.mark.parametrize(
    ("custom", "words"),
    [
        (0.0, "nobody makes"),
        (0.4, "seldom used"),
        (0.7, "less usual"),
        (1.0, "nothing between"),
    ],
)
def test_what_the_trade_is_used_to_is_a_reason(advice, custom, words):
    first = revalued(advice.options[0], "custom", 1.0)
    alike = replace(advice, options=(first, *advice.options[1:]))
    assert words in why_not_first(alike, revalued(first, "custom", custom))


def test_a_bar_that_is_hard_to_get_says_so(advice):
    first = advice.options[0]
    bar = first.treatment.condition.model_copy(update={"availability": "rare"})
    work = replace(first.treatment, condition=bar)
    rare = replace(first.judged, prediction=replace(first.judged.prediction, treatment=work))
    assert "hard to get" in why_not_first(advice, replace(first, judged=rare))


def test_hardness_off_the_window_is_said_apart_from_what_an_edge_lacks_in_carbon():
    cuts = {"zone.0.wear": "abrasive", "zone.0.hardness": {"min": "50 HRC", "max": "58 HRC"}}
    answer = advise(asked(cuts), only("42crmo4"))
    lean = answer.options[0]
    said = _value_words(answer, lean, "hardness")
    window = answer.job.leading
    middle = float(np.median(lean.judged.prediction.surface_hrc))
    off = re.search(r"(\d+) HRC off the window", said)
    short = max(window.low_hrc - middle, middle - window.high_hrc, 0.0)
    assert abs((int(off.group(1)) if off else 0) - short) <= 1.0
    assert "its edge wears as if" in said


def test_window_and_edge_are_compared_each_by_itself():
    cuts = {"zone.0.wear": "abrasive", "zone.0.hardness": {"min": "50 HRC", "max": "58 HRC"}}
    answer = advise(asked(cuts), only("42crmo4", "c60", "115crv3"))
    said = [why_before(answer, a, b) for a in answer.options for b in answer.options]
    assert any("its edge wears as if" in text for text in said)
    assert not any("in the window against in the window" in text for text in said)


def test_a_near_tie_and_what_is_seldom_used_are_said():
    struck = {"load.impact": "hammered", "zone.0.wear": "edge-impact", "part.feature": []}
    answer = advise(asked(struck), only("100mncrw4", "60wcrv8", "115crv3"))
    said = {o.treatment.steel.slug: why_not_first(answer, o) for o in answer.options[1:]}
    assert "seldom used" in said["100mncrw4"]
    first = answer.options[0]
    for option in answer.options[1:]:
        text = why_not_first(answer, option)
        assert (
            option.score <= first.score
            or stands_back(option, asked(struck))
            or re.match(
                "as good by score, (its bar less at hand|more work)|nothing between", text
            )
        )
