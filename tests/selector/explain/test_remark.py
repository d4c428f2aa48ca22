import re

import pytest

from selector.advice import advise
from selector.explain.remark import remarks
from tests.dog import asked, only

FEW = only("42crmo4", "c45", "605m36")


def said(changes):
    return "\n".join(remarks(advise(asked(changes), FEW)))


# (words of the remark, what brings it, what keeps it away)
BROUGHT = [
    ("does not make it stiffer", {"part.section.1.length": 600}, {"part.section.1.length": 60}),
    ("at least 39 HRC", {"part.section.1.shape": "square"}, {}),
    ("A kitchen oven stops", {}, {"workshop.heat": [{"source": "heat-treat-oven"}]}),
    ("strength condition", {"workshop.stock": [{"steel": "EN16T"}]}, {}),
]


@pytest.mark.parametrize(("words", "with_it", "without"), BROUGHT, ids=[b[0] for b in BROUGHT])
def test_a_remark_comes_with_its_reason_only(words, with_it, without):
    assert words in said(with_it)
    assert words not in said(without)


def test_figures_have_their_unit(advice):
    for sentence in remarks(advice):
        assert sentence.endswith(".")
        for _, unit in re.findall(r"\b(\d+\.\d+|\d{2,4}) (\S+)", sentence):
            assert re.match(r"to|HRC|°C|mm|and|a|\(", unit), sentence
