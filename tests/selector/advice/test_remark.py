import re
from dataclasses import replace

import pytest

from selector.advice.remark import remarks
from tests.once import advised

OVENS = [{"source": "oxy-propane"}, {"source": "kitchen-oven"}]
FURNACE = [{"source": "oxy-propane"}, {"source": "muffle-furnace"}, {"source": "kitchen-oven"}]
SQUARE_END = [
    {"shape": "square", "size": 16, "length": 20},
    {"shape": "round", "size": 25, "length": 60},
]
HEXAGON = [{"shape": "hexagon", "size": 16, "length": 20}, SQUARE_END[1]]
# A furnace is sooner worked out than a torch, for which each form is heated anew.
LONG, SHORT, SQUARE, SIX_SIDED = (
    {"workshop.heat": [{"source": "muffle-furnace"}], **form}
    for form in (
        {"part.section.1.length": 400},
        {"part.section.1.length": 60},
        {"part.section": SQUARE_END},
        {"part.section": HEXAGON},
    )
)
NO_WINDOW = {"zone.0.wear": "none", "zone.0.hardness": None}

CIRCLE = {"hardness/cost": 3, "cost/days": 3, "hardness/days": 1 / 3}


def said_of(changes, *steels):
    return remarks(advised(changes, *(steels or ("c45",))))


def one_says(sentences, words):
    return any(words in sentence for sentence in sentences)


@pytest.mark.parametrize(
    ("changes", "steels", "words", "expected"),
    [
        (LONG, (), "does not make it stiffer", True),
        (SHORT, (), "does not make it stiffer", False),
        ({"priorities": {"pairwise": CIRCLE}}, (), "contradict each other", True),
        ({}, (), "contradict each other", False),
        (SQUARE, (), "ISO 3315:2018", True),
        (SIX_SIDED, (), "ISO 3315:2018", True),
        ({**SQUARE, "load.torque": None}, (), "ISO 3315:2018", False),
        ({}, (), "ISO 3315:2018", False),
        ({"workshop.stock": [{"steel": "EN24T"}]}, (), "strength condition", True),
        ({"workshop.stock": [{"steel": "EN24"}]}, (), "strength condition", False),
        ({"workshop.heat": OVENS}, (), "kitchen oven stops near", True),
        ({"workshop.heat": FURNACE}, (), "kitchen oven stops near", False),
        ({}, ("42crmo4",), "Do not temper 42CrMo4 to blue", True),
        ({}, ("c45",), "to blue", False),
        ({}, ("c45",), "Do not finish to size first", True),
        (NO_WINDOW, ("c45",), "Do not finish to size first", False),
        ({"load.impact": "hammered"}, ("42crmo4",), "Practice is divided", True),
        ({"load.impact": "light"}, ("42crmo4",), "Practice is divided", False),
        ({"load.impact": "hammered"}, ("c45",), "Practice is divided", False),
    ],
)
def test_a_remark_is_made_where_it_fits_and_only_there(changes, steels, words, expected):
    changes = {"workshop.stock": [], **changes}
    shop = (*(steels or ("c45",)), *(["817m40"] if changes["workshop.stock"] else []))
    assert one_says(said_of(changes, *shop), words) is expected


def test_prehard_bar_is_offered_where_hardening_leads_and_it_would_do():
    window = {"zone.0.wear": "none", "zone.0.hardness": {"min": "27 HRC"}}
    advice = advised(window, "42crmo4", "c45")
    prehard = [o for o in advice.options if o.treatment.route.kind == "prehard"]
    hardened = [o for o in advice.options if o.treatment.hardens]
    words = "42CrMo4 pre-hardened meets every demand too"
    assert one_says(remarks(replace(advice, options=(*hardened, *prehard))), words)
    assert not one_says(remarks(replace(advice, options=(*prehard, *hardened))), words)
    assert not one_says(remarks(replace(advice, options=tuple(hardened))), words)


def test_a_temper_in_the_window_is_owned_up_to():
    window = {"min": "46 HRC", "max": "50 HRC"}
    shop = {"workshop.heat": [{"source": "oxy-propane"}], "workshop.measure": ["eye"]}
    answer = said_of({**shop, "zone.0.hardness": window, "load.impact": "light"}, "42crmo4")
    assert one_says(answer, "embrittlement window of 42CrMo4")


def test_every_remark_is_a_sentence(advice):
    for sentence in remarks(advice):
        assert sentence[0].isupper() or sentence[0].isdigit()
        assert sentence.endswith(".")


def test_figures_have_their_unit(advice):
    for sentence in remarks(advice):
        for _, unit in re.findall(r"\b(\d+\.\d+|\d{2,4}) (\S+)", sentence):
            assert re.match(r"to|HRC|°C|mm|and|a|of|times|in|\(", unit), sentence


MATE = {"material": "ring", "hardness": "40 HRC", "should_wear": "mate"}


def test_which_of_the_pair_wears_is_said():
    said = said_of({"zone.0.mate": MATE}, "42crmo4")
    assert one_says(said, "Of the pair the mate wears")
    assert not one_says(said_of({}, "42crmo4"), "Of the pair")


@pytest.mark.parametrize(("steel", "said"), [("c55", True), ("115crv3", False)])
def test_black_bar_is_said_to_need_its_skin_off(steel, said):
    assert one_says(said_of({}, steel), "skim the black skin off, 1 mm a side") == said


@pytest.mark.parametrize(("ratio", "said"), [(1.01, False), (8.0, True)])
def test_a_life_out_of_reach_is_said(ratio, said):
    assert one_says(said_of({"zone.0.life_ratio": ratio}, "42crmo4"), "No option lasts") == said


CASED = {
    "workshop.heat": [{"source": "kiln"}, {"source": "kitchen-oven"}],
    "zone.0.hardness": {"min": "57 HRC", "max": "62 HRC"},
    "part.feature": [{"kind": "teeth", "at": "5 mm"}],
}


@pytest.mark.parametrize(("depth", "said"), [(0.2, True), (1.2, False)])
def test_a_thin_case_is_not_for_a_rockwell_cone(depth, said):
    sentences = said_of({**CASED, "zone.0.depth": depth}, "16mncr5")
    assert one_says(sentences, "A Rockwell C cone reads the core") == said


@pytest.mark.parametrize(("size", "said"), [(None, True), (8.0, False)])
def test_a_case_says_what_teeth_it_is_for_unless_they_are_stated(size, said):
    teeth = {"kind": "teeth", "at": "5 mm", **({"size": size} if size else {})}
    sentences = said_of({**CASED, "part.feature": [teeth]}, "16mncr5")
    assert one_says(sentences, "at half height or more (module") == said


@pytest.mark.parametrize(("wear", "said"), [("abrasive", True), ("sliding", False)])
def test_hard_carbides_are_said_where_grit_wears(wear, said):
    shop = {"workshop.subcontract": True, "zone.0.wear": wear, "part.feature": []}
    window = {"zone.0.hardness": {"min": "57 HRC", "max": "61 HRC"}, "load.impact": "none"}
    assert (
        one_says(said_of({**shop, **window}, "x153crmov12"), "is full of hard carbides") == said
    )
