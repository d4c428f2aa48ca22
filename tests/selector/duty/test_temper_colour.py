import pytest

from catalog import load_catalog
from selector.duty.temper_colour import usual_temper_c
from selector.job.job import resolved
from tests.dog import GONE, asked

EDGE = {
    "part.name": "Chisel", "part.feature": [{"kind": "edge", "at": 0}],
    "zone.0.hardness": GONE, "zone.0.wear": "edge-impact", "load.impact": "hammered",
}  # fmt: skip


def temper_c(changes):
    part = asked(changes)
    return usual_temper_c(resolved(part, load_catalog(), count=1).leading, part)


def test_the_harder_the_blow_the_further_it_is_drawn():
    press = {**EDGE, "part.name": "Blanking die", "load.impact": "light"}
    swung = {**EDGE, "part.name": "Side axe", "load.impact": "light"}
    assert temper_c(press) < temper_c(swung) < temper_c(EDGE)


@pytest.mark.parametrize(
    "changes",
    [{"limit.service_temperature": 400}, {"zone.0.wear": "sliding", "load.impact": "none"}],
    ids=["hot", "slides"],
)
def test_hardness_alone_decides_what_works_hot_or_slides(changes):
    assert temper_c({**EDGE, **changes}) is None


def test_a_point_that_is_bent_is_tempered_further_than_a_blade():
    """Points of spanners are blue, knives straw to brown: common practice."""
    knocked = {**EDGE, "part.name": "Point", "load.impact": "light", "load.torque": GONE}
    knocked["part.section.0"] = {"shape": "round", "size": 3, "length": 30}
    bent = {**knocked, "load.bending": "0.3 N m"}
    blade = {**bent, "part.section.0": {"shape": "flat", "size": 3, "width": 25, "length": 30}}
    assert temper_c(bent) > temper_c(blade) == temper_c(knocked)


def test_a_thin_tip_that_is_twisted_is_blue_and_one_that_only_pushes_is_brown():
    tip = {**EDGE, "part.name": "Extractor", "part.feature": [], "load.impact": "light"}
    tip["part.section.0"] = {"shape": "square", "size": 4, "length": 22}
    assert temper_c({**tip, "load.torque": "6 N m"}) > temper_c({**tip, "load.torque": GONE})
