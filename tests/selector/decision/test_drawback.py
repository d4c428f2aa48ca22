from dataclasses import replace

import pytest

from selector.advice.advise import advise
from selector.decision.drawback import (
    SETS_BACK,
    drawbacks,
    set_back,
    spoils_mate,
    stands_back,
    unheard_of,
)
from selector.option.prediction import embrittled
from tests.dog import asked, only

MATE = {"material": "shaft", "hardness": "30 HRC", "should_wear": "part"}


def test_where_the_dear_mate_would_wear_an_option_stands_back():
    found = advise(asked({"zone.0.mate": MATE}), only("42crmo4", "c45")).options
    back = [stands_back(option, asked()) for option in found]
    assert back == [spoils_mate(option) for option in found]
    assert back == sorted(back)


@pytest.fixture(scope="module")
def option():
    return advise(asked(), only("c45")).options[0]


def test_what_is_usual_and_easily_had_is_not_set_back(option):
    assert drawbacks(option, asked()) == frozenset()
    assert set_back(option, asked()) == 0.0
    assert not unheard_of(option)


def test_what_few_sell_is_set_back_and_not_behind_all_others(option):
    bar = option.treatment.condition.model_copy(update={"availability": "rare"})
    found = option.judged.prediction
    rare = replace(found, treatment=replace(option.treatment, condition=bar))
    scarce = replace(option, judged=replace(option.judged, prediction=rare))
    assert drawbacks(scarce, asked()) == {"rare"}
    assert set_back(scarce, asked()) == SETS_BACK["rare"]
    assert not stands_back(scarce, asked())


@pytest.mark.parametrize(("wear", "name", "behind"), [
    ("edge-impact", "rusts", False), ("sliding", "rusts fast", True),
])  # fmt: skip
def test_what_rusts_is_set_back_and_behind_all_others_where_it_takes_a_fit(wear, name, behind):
    slim = {"part.section.0.size": "12 mm", "part.section.1.size": "12 mm"}
    wear = {"zone.0.wear": wear, "load.torque": "10 N m", "limit.corrosion": "mild"}
    wet = asked({**slim, **wear})
    found = advise(wet, only("42crmo4", "c45")).options
    assert found
    assert all(name in drawbacks(option, wet) for option in found)
    assert all(stands_back(option, wet) is behind for option in found)


@pytest.mark.parametrize(("impact", "behind"), [("none", False), ("light", True)])
def test_what_takes_blows_stands_back_where_its_temper_turns_it_brittle(impact, behind):
    blue = {
        "load.impact": impact, "zone.0.wear": "none",
        "zone.0.hardness": {"min": "45 HRC", "max": "49 HRC"},
        "workshop.heat": [{"source": "oxy-propane"}],
    }  # fmt: skip
    options = advise(asked(blue), only("42crmo4")).options
    brittle = [o for o in options if embrittled(o.treatment, o.choice.temper)]
    assert brittle
    for option in brittle:
        assert ("brittle" in drawbacks(option, asked(blue))) is behind
