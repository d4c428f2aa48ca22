import pytest

from catalog import load_catalog
from selector.flame_case import follow
from selector.flame_change import HOLDS_S, arranged, first_change
from selector.flame_outcome import Setup
from selector.surroundings import surroundings
from tests.dog import asked, work

CATALOG = load_catalog()


def around(changes=None):
    return surroundings(asked(changes), CATALOG, count=1)


def local(steel="c45", medium="warm-water", source="oxy-propane"):
    return work(steel, "local-torch", medium, source)


def changed(there, treatment):
    out = arranged(treatment, there, there.leading)
    return out, first_change(treatment, there, there.leading, out)


def test_a_plain_case_takes_the_shortest_hold():
    there = around()
    out = arranged(local(), there, there.leading)
    assert out.failed == ()
    index = HOLDS_S.index(out.setup.hold_s)
    if index:
        shorter = Setup(hold_s=HOLDS_S[index - 1], past_mm=out.setup.past_mm)
        assert follow(local(), there, shorter, there.leading).failed


def test_a_deep_demand_takes_a_longer_hold():
    there = around({"zone.0.depth": "9 mm"})
    treatment = local("42crmo4", "oil")
    short = follow(treatment, there, Setup(hold_s=HOLDS_S[0]), there.leading)
    out = arranged(treatment, there, there.leading)
    assert out.setup.hold_s > HOLDS_S[0] or short.depth_mm >= 9.0
    assert out.depth_mm >= 9.0


def test_the_flame_goes_past_the_zone_to_bring_its_edge_to_heat():
    there = around()
    out = arranged(local(), there, there.leading)
    assert out.setup.past_mm > 0.0
    assert out.hard_mm[1] >= 28.0


def test_an_open_flame_is_not_held_for_longer_than_it_can():
    there = around({"zone.0.hardness": {"min": "66 HRC", "must": True}})
    out = arranged(local(), there, there.leading)
    assert out.setup.hold_s <= 60.0 * local().source.soak_max_min.value


def test_a_still_part_is_turned():
    there = around({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    out, change = changed(there, local())
    assert [check.name for check in out.failed] == ["even"]
    assert change.text.startswith("hold and turn the part in the flame")
    assert change.at_hand
    assert change.outcome.failed == ()


def test_a_small_torch_is_replaced_and_the_answer_recomputed():
    heat = [{"source": "hand-torch"}, {"source": "kitchen-oven"}]
    sizes = {"part.section.0.size": 36, "part.section.1.size": 36}
    there = around({**sizes, "workshop.heat": heat})
    out, change = changed(there, local(source="hand-torch"))
    assert [check.name for check in out.failed] == ["reach"]
    assert change.text.startswith("take an oxy-propane heating torch")
    assert not change.at_hand
    assert change.outcome.surface_hrc > 50.0


def test_a_mild_bath_gives_way_to_a_harsher_one():
    there = around({"workshop.bath": [{"medium": "oil"}]})
    out, change = changed(there, local(medium="oil"))
    assert "hard" in {check.name for check in out.failed}
    assert change.text.startswith("quench in")
    assert change.outcome.surface_hrc > out.surface_hrc + 3.0


def test_what_no_change_mends_has_none():
    there = around({"zone.0.hardness": {"min": "66 HRC", "must": True}})
    assert changed(there, local())[1] is None


def test_nothing_that_holds_it_is_one_change():
    there = around({"workshop.heat": [{"source": "hand-torch"}, {"source": "kitchen-oven"}],
                    "workshop.turns_part": False, "part.section.0.size": 8,
                    "part.section.1.size": 8, "load.torque": "2 N m"})  # fmt: skip
    out, change = changed(there, local(source="hand-torch"))
    assert [check.name for check in out.failed] == ["held"]
    assert change.text.startswith("hold it")
    assert change.outcome is out


@pytest.mark.parametrize("medium", ["oil", "warm-water"])
def test_a_change_never_repeats_what_is_done(medium):
    there = around({"workshop.turns_part": False, "workshop.held_by": "tongs"})
    _, change = changed(there, local("42crmo4", medium))
    assert change is None or medium not in change.text
