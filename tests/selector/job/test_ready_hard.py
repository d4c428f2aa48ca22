"""What is bought hard serves where a part can simply be cut to it."""

import pytest

from catalog import load_catalog
from selector.advice.advise import advise
from selector.job.ready_hard import is_screw, nominal_mm, ready_hard
from selector.requirement import requirement_from
from tests.dog import only, varied, work

ELEMENTS = load_catalog().steels
SCREW, DOWEL = (ELEMENTS[slug].condition[0] for slug in ("set-screw-45h", "dowel-pin"))
POINTED = [
    {"shape": "round", "size": "8 mm", "length": "4 mm"},
    {"shape": "round", "size": "8.5 mm", "length": "16 mm"},
]


def bought(slug):
    return work(slug, "buy-hard-element", None, None, condition="hard-element")


def part(name, sections, wear="sliding", kinds=()):
    zones = [
        {"section": [n + 1], "wear": wear if n == 0 else "none"} for n in range(len(sections))
    ]
    return requirement_from(
        varied(
            {
                "part.name": name, "part.section": sections, "zone": zones,
                "part.feature": [{"kind": kind, "at": "10 mm"} for kind in kinds],
                "load": {"impact": "none", "cycles": "static"},
            }
        )
    )  # fmt: skip


@pytest.mark.parametrize(("bore", "serves"), [(None, True), ("6 mm", False)])
def test_no_hole_is_bored_along_a_hard_shaft(bore, serves):
    ring = {"shape": "round", "size": "16 mm", "length": "40 mm", "bore": bore}
    gate = ready_hard(part("Roller", [ring]), bought("linear-shaft"))
    assert (gate is None) is serves


def test_a_bored_round_is_the_tube_that_gudgeon_pins_are():
    ring = {"shape": "round", "size": "14 mm", "length": "40 mm", "bore": "8 mm"}
    assert ready_hard(part("Gudgeon pin", [ring]), bought("gudgeon")) is None


@pytest.mark.parametrize("slug", ["set-screw-45h", "linear-shaft"])
def test_a_screw_comes_with_its_thread_and_its_point_and_nothing_else_does(slug):
    wanted = part("Cone point set screw", POINTED, kinds=("thread",))
    assert (ready_hard(wanted, bought(slug)) is None) is is_screw(ELEMENTS[slug].condition[0])


@pytest.mark.parametrize(
    ("size", "nominal"), [(10.0, 10.0), (8.2, 10.0), (6.5, 8.0), (3.0, 3.0), (30.0, None)]
)
def test_a_screw_may_be_given_by_the_core_of_its_thread(size, nominal):
    assert nominal_mm(SCREW, size) == nominal


@pytest.mark.parametrize(("size", "nominal"), [(10.0, 10.0), (9.0, None)])
def test_a_pin_is_bought_in_its_own_size(size, nominal):
    assert nominal_mm(DOWEL, size) == nominal


def test_a_set_screw_is_bought_and_not_turned():
    wanted = part("Cone point set screw", POINTED, "edge-impact", kinds=("thread",))
    first = advise(wanted, only("set-screw-45h", "115crv3", "42crmo4")).options[0]
    assert first.treatment.steel.slug == "set-screw-45h"
    assert first.judged.prediction.bill.items["machining"] == 0.0
