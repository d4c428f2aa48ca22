from dataclasses import replace

import numpy as np

from selector.advice.doing import bar_words, doing_words
from selector.advice.headline import _both, _either, headline, name
from tests.once import advised


def of(changes, *steels):
    return advised(changes, *steels, "42crmo4")


def test_an_option_in_words_names_steel_condition_bath_and_temper(advice):
    for option in advice.options:
        text, work = name(advice, option), option.treatment
        assert work.steel.spoken in text
        if work.condition.name not in {"hard-element", "prehard"}:
            assert text.startswith(f"{work.steel.spoken}, {work.condition.name}")
        temper = option.choice.temper
        by_heat = temper.means not in {"none", "residual"}
        assert (f"temper at {temper.temperature_c:.0f} °C" in text) is by_heat
        assert ("let the colour run down, quench out at" in text) is (
            temper.means == "residual"
        )
        if work.medium is not None and work.route.place == "workshop":
            assert f"in {work.medium.slug.replace('-', ' ')}" in text


def test_it_says_what_to_do_how_hard_and_how_often_it_comes_out_right(advice):
    text = headline(advice)
    # A word that begins the sentence is large there: "Pre-hardened EN24".
    said = bar_words if advice.toss_up else name
    assert said(advice, advice.options[0])[1:] in text
    assert "HRC" in text or advice.toss_up
    right = round(100 * advice.options[0].judged.passing_all)
    assert f"{min(right, 99)} " in text


def test_no_option_is_named_but_the_first_unless_two_are_level(advice):
    text = headline(replace(advice, shares=dict.fromkeys(advice.shares, 1.0)))
    for option in advice.options[1:]:
        assert name(advice, option) not in text


def test_a_poor_chance_is_said_and_the_budget_apart():
    plain = of({}, "c45")
    middle = float(np.median(plain.options[0].judged.prediction.bill.cost))
    text = headline(of({"limit.budget": middle}, "c45"))
    assert "inside the budget" in text
    assert "ome out right" in text or "omes out right" in text


def test_a_toss_up_names_both(advice):
    even = replace(advice, shares=dict.fromkeys(advice.shares, 0.5))
    assert even.toss_up
    text = headline(even)
    assert "toss-up" in text
    for option in advice.options[:2]:
        assert bar_words(advice, option) in text
        assert doing_words(advice, option) in text


def test_a_toss_up_of_two_bars_treated_alike_says_the_treatment_once(advice):
    first = advice.options[0]
    alike = replace(advice, shares={}, options=(first, first))
    assert _either(alike, first, first).count(doing_words(advice, first)) == 1
    assert _both(0.999, 0.998) == "both over 99 in 100"
    assert _both(0.9, 0.8) == "90 in 100 and 80 in 100"


def test_no_toss_up_where_one_comes_right_much_less_often(advice):
    even = dict.fromkeys(advice.shares, 0.5)

    def at(option, right):
        outcomes = np.arange(100) < 100 * right
        return replace(option, judged=replace(option.judged, right=outcomes))

    for right, level in ((0.9, True), (0.5, False)):
        pair = at(advice.options[0], 0.95), at(advice.options[1], right)
        answer = replace(advice, shares=even, options=(*pair, *advice.options[2:]))
        assert answer.toss_up is level
        assert ("toss-up" in headline(answer)) is level


def test_lives_at_stake_come_first():
    text = headline(of({"safety_use": "steering"}))
    assert text.startswith("Steering part: not a home job.")
    assert "qualified people" in text
    assert "certified bar" in text


def test_an_unknown_bar_gets_no_procedure():
    rack = {"workshop.stock": [{"steel": "unknown"}], "workshop.only_stock": True}
    text = headline(of(rack, "unknown"))
    assert "coupon" in text
    assert "°C" not in text


def test_an_unknown_bar_is_one_way_among_others_where_known_steel_comes_near():
    dear = {"workshop.stock": [{"steel": "unknown"}], "limit.budget": 25}
    answer = of(dear, "c45", "unknown")
    assert not answer.options
    assert answer.apart
    assert answer.verdict == "no_option"
    text = headline(answer)
    assert text.startswith("Nothing in this workshop meets every demand")
    assert text.endswith("harden a coupon of it first.")


def test_nothing_fits():
    text = headline(of({"zone.0.hardness": {"min": "67 HRC", "must": True}}))
    assert "Nothing in this workshop meets every demand" in text


def test_a_bought_bar_that_does_is_said_first():
    soft = {
        "zone.0.wear": "none",
        "zone.0.hardness": {"max": "40 HRC"},
        "load.torque": "10 N m",
    }
    answer = of(soft, "c45")
    text = headline(answer)
    best = answer.options[0]
    assert name(answer, best) in text
    if answer.as_bought is best:
        assert text.startswith("No hardening needed. ")
    else:
        assert "would do without hardening too" in text


BLUE = {
    "load.impact": "none",
    "zone.0.hardness": {"min": "45 HRC", "max": "49 HRC"},
    "zone.0.wear": "none",
    "workshop.heat": [{"source": "oxy-propane"}],
    "workshop.stock": [{"steel": "42CrMo4", "condition": "annealed"}],
    "workshop.only_stock": True,
}


def test_a_temper_that_embrittles_and_misses_the_window_says_so_at_once():
    text = headline(of(BLUE))
    assert "turns brittle: below 260 °C or above 370 °C" in text
    assert "where 45 to 49 HRC was aimed at" in text


def test_a_sound_temper_inside_the_window_needs_no_excuse():
    crayon = {**BLUE, "workshop.measure": ["crayon"]}
    text = headline(of(crayon))
    assert "brittle" not in text
    assert "aimed at" not in text


def of_the_rack(bar, **more):
    shop = {"workshop.stock": [bar], "workshop.only_stock": True}
    return headline(advised({**shop, **more}, "42crmo4", "c45"))


def test_the_rack_alone_is_answered_by_whether_its_best_is_good_enough():
    assert "best of your rack, and good enough" in of_the_rack({"steel": "42CrMo4"})
    said = of_the_rack({"steel": "C45", "analysis": {"C": 0.43}})
    assert "best of your rack, and not good enough to count on" in said
    assert "Nothing on this rack" in of_the_rack(
        {"steel": "C45"}, **{"zone.0.hardness": {"min": "66 HRC", "must": True}}
    )
    assert "best of your rack" not in headline(
        advised({"workshop.stock": [{"steel": "C45"}]}, "c45")
    )


def test_no_toss_up_with_what_is_set_back(advice):
    first, second = (
        replace(option, judged=replace(option.judged, right=np.ones(100, dtype=bool)))
        for option in advice.options[:2]
    )
    bar = second.treatment.condition.model_copy(update={"availability": "rare"})
    found = second.judged.prediction
    found = replace(found, treatment=replace(second.treatment, condition=bar))
    scarce = replace(second, judged=replace(second.judged, prediction=found))
    for pair, level in (((first, second), True), ((first, scarce), False)):
        even = dict.fromkeys([(one.id, two.id) for one in pair for two in pair], 0.5)
        assert replace(advice, options=pair, shares=even).toss_up is level
