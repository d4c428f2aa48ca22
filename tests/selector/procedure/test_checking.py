from dataclasses import replace

import pytest

from selector.procedure.checking import cracks, finished, hardness, truth
from tests.procedure import KILN, doing, steps_of

LOCAL = ("42crmo4", "local-torch", "oil")


def test_the_check_says_what_to_expect_and_what_is_asked():
    do = doing(*LOCAL)
    step = hardness(do)
    assert "50 HRC (48 with slack) is asked" in step.action
    assert step.hardness_hrc == do.surface_hrc
    assert "soft beyond" in step.check


def test_run_out_is_checked_where_it_is_asked():
    (step,) = truth(doing(*LOCAL, {"limit.runout": 0.1}))
    assert "0.10 mm" in step.action
    assert truth(doing(*LOCAL, {"limit.runout": None, "load.impact": "hammered"})) == []


def test_a_crack_is_looked_for_where_it_starts():
    (step,) = cracks(doing(*LOCAL, {"part.section.1.size": 20.0}))
    assert "first at shoulder, teeth" in step.action
    assert cracks(doing("c45", "as-bought", None)) == []


def test_a_struck_end_is_left_soft_and_an_edge_formed_at_last():
    struck = {"load.impact": "hammered", "part.feature": [{"kind": "edge", "at": 0.0}]}
    (step,) = finished(doing(*LOCAL, struck))
    assert "Form the edge now" in step.action
    assert "left soft" in step.action


def test_what_was_left_on_is_what_is_ground_off():
    grinder = {**KILN, "workshop.machine": ["lathe", "surface grinder"]}
    steps = steps_of("42crmo4", "through-furnace", "oil", grinder)
    (left,) = [step for step in steps if step.action.startswith("Leave ")]
    finish = steps[-1]
    assert finish.length_mm == left.length_mm > 0
    assert finish.means == left.means == "surface grinder"
    bare = steps_of("42crmo4", "through-furnace", "oil", {**KILN, "workshop.machine": []})
    assert not any(step.action.startswith("Leave ") for step in bare)
    assert bare[-1].means == "oilstone"


@pytest.mark.parametrize(
    ("steel", "medium", "softened"),
    [("c45", "water", False), ("42crmo4", "oil", False), ("115crv3", "oil", True),
     ("100mncrw4", "oil", True), ("x40crmov5-1", "air", True), ("80crv2", "oil", True)],
)  # fmt: skip
def test_rich_steel_is_softened_between_two_quenches(steel, medium, softened):
    step = hardness(doing(steel, "through-furnace", medium, KILN))
    assert ("soften it first" in step.otherwise) is softened
    assert step.otherwise.startswith("too soft, though it was hard before the temper: ")


@pytest.mark.parametrize(
    ("size", "lengths", "means"),
    [(25.0, (30.0, 150.0), "the rebound tester, the part greased and clamped"),
     (4.0, (10.0, 20.0), "a new file"), (100.0, (60.0, 80.0), "the rebound tester")],
)  # fmt: skip
def test_a_rebound_tester_wants_mass_behind_its_point(size, lengths, means):
    part = {f"part.section.{k}.size": size for k in (0, 1)}
    part |= {f"part.section.{k}.length": length for k, length in enumerate(lengths)}
    checks = {**KILN, **part, "part.feature": [], "workshop.check": ["rebound"]}
    step = hardness(doing("42crmo4", "through-furnace", "oil", checks))
    assert step.means.startswith(means)
    assert ("clamped" in step.means) is ("clamped" in means)


def test_a_piece_that_went_wrong_is_no_range_to_expect():
    do = doing("c45", "through-furnace", "water", KILN)
    narrow = hardness(do).action
    tailed = do.prediction.surface_hrc.copy()
    tailed[: len(tailed) // 10] -= 25.0
    missed = replace(do, prediction=replace(do.prediction, surface_hrc=tailed))
    said = hardness(missed).action
    assert "is what to expect" in narrow
    assert "is usual, " in said
    assert "where the heat was missed" in said
